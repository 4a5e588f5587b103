"""Reads datasets.json and writes results as JSON. Runs on Debian's /usr/bin/python3."""
import json
import pathlib

REFERENCE = pathlib.Path(__file__).resolve().parent.parent
DATASETS = json.loads((REFERENCE / "datasets.json").read_text())


def plain(value):
    if isinstance(value, dict):
        return {name: plain(part) for name, part in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain(part) for part in value]
    return None if value is None else float(value)


def text(value, indent=0):
    if not isinstance(value, dict):
        return json.dumps(value)
    pad = " " * (indent + 2)
    parts = [f"{pad}{json.dumps(name)}: {text(part, indent + 2)}" for name, part in value.items()]
    return "{\n" + ",\n".join(parts) + "\n" + " " * indent + "}"


def write_json(value, name):
    (REFERENCE / name).write_text(text(plain(value)) + "\n")
