#!/usr/bin/python3
"""Makes the invented traces, and times NumPy and SciPy on them.

  series.py codes DIR N       raw int16 codes: DIR/current.i16, DIR/voltage.i16
  series.py text FILE ROWS    a text trace, "time [s],current [A]"
  series.py time DIR [FILE]   times charge and energy of the codes as double, float32 and int16; and reading the text
Prints task, engine, median seconds and a result, by tabs. Needs NumPy, SciPy and pandas (Debian's packages do).
"""
import sys
import time
from statistics import median

import numpy as np

STEP, AMPERE, VOLT = 1e-5, 2.0**-22, 2.0**-12


def z(stream, i):
    """SplitMix64, counted: output i (from 0) of a stream."""
    with np.errstate(over="ignore"):
        x = (np.uint64(stream) << np.uint64(40)) + (np.asarray(i, np.uint64) + np.uint64(1)) * np.uint64(0x9E3779B97F4A7C15)
        x = (x ^ (x >> np.uint64(30))) * np.uint64(0xBF58476D1CE4E5B9)
        x = (x ^ (x >> np.uint64(27))) * np.uint64(0x94D049BB133111EB)
        return x ^ (x >> np.uint64(31))


def write_codes(folder, n, piece=4_000_000):
    """50 of 1000 samples at about 20000 steps, the others at about 40; the voltage at about 13500."""
    with open(f"{folder}/current.i16", "wb") as current, open(f"{folder}/voltage.i16", "wb") as voltage:
        for a in range(0, n, piece):
            i = np.arange(a, min(n, a + piece))
            base = np.where(i % 1000 < 50, 20000, 40)
            (base + (z(31, i) >> np.uint64(58)).astype(np.int64) - 32).astype("<i2").tofile(current)
            (13500 + (z(32, i) >> np.uint64(59)).astype(np.int64) - 16).astype("<i2").tofile(voltage)


def write_text(path, rows, piece=200_000):
    with open(path, "w", newline="\n") as out:
        out.write("time [s],current [A]\n")
        for a in range(0, rows, piece):
            i = np.arange(a, min(rows, a + piece))
            pico = np.where(i % 1000 < 50, 5_000_000_000, 2_000_000) + (z(41, i) >> np.uint64(44)).astype(np.int64)
            out.write(
                "".join(
                    "%d.%06d,0.%012d\n" % (k // 100000, k % 100000 * 10, p) for k, p in zip(i.tolist(), pico.tolist())
                )
            )


def bench(task, engine, work, repeats=9):
    result = work()
    seconds = []
    for _ in range(repeats):
        start = time.perf_counter()
        result = work()
        seconds.append(time.perf_counter() - start)
    print(task, engine, "%.4g" % median(seconds), result, sep="\t", flush=True)


def ends(x):
    return (float(x[0]) + float(x[-1])) / 2


def time_codes(folder):
    current, voltage = (np.fromfile(f"{folder}/{name}.i16", "<i2") for name in ("current", "voltage"))
    i, v = current * AMPERE, voltage * VOLT
    bench("charge double", "numpy sum", lambda: repr((i.sum() - ends(i)) * STEP))
    bench("charge double", "numpy trapz", lambda: repr(np.trapz(i, dx=STEP)), 5)
    bench("energy double", "numpy dot", lambda: repr((np.dot(v, i) - (v[0] * i[0] + v[-1] * i[-1]) / 2) * STEP))
    bench("energy double", "numpy trapz", lambda: repr(np.trapz(v * i, dx=STEP)), 5)
    i, v = i.astype(np.float32), v.astype(np.float32)
    bench("charge float32", "numpy sum in double", lambda: repr((i.sum(dtype=np.float64) - ends(i)) * STEP))
    bench("charge float32", "numpy trapz", lambda: repr(float(np.trapz(i, dx=STEP))), 5)
    bench("charge int16", "numpy sum in int64", lambda: repr((current.sum(dtype=np.int64) - ends(current)) * AMPERE * STEP))


def time_text(path):
    import pandas

    def trapezoid(t, i):
        return "%d %.17g" % (len(t), np.trapz(i, t))

    def read():
        frame = pandas.read_csv(path, engine="c")
        return trapezoid(frame.iloc[:, 0].values, frame.iloc[:, 1].values)

    bench("text", "pandas C reader", read, 3)
    bench("text", "numpy loadtxt", lambda: trapezoid(*np.loadtxt(path, delimiter=",", skiprows=1, unpack=True)), 3)


if __name__ == "__main__":
    if sys.argv[1] == "codes":
        write_codes(sys.argv[2], int(sys.argv[3]))
    elif sys.argv[1] == "text":
        write_text(sys.argv[2], int(sys.argv[3]))
    else:
        time_codes(sys.argv[2])
        if len(sys.argv) > 3:
            time_text(sys.argv[3])
