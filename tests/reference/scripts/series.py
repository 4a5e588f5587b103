#!/usr/bin/python3
"""Integrals of invented traces in exact rational arithmetic, and by NumPy's trapezoid beside it.

Writes series.json. The traces are made from whole numbers by a rule that any language can repeat, so that only the
results are kept. Needs NumPy 1.24.
"""
import json
from fractions import Fraction
from pathlib import Path

import numpy as np

MASK = (1 << 64) - 1


def z(stream, i):
    """SplitMix64, counted: output i (from 0) of a stream."""
    x = ((stream << 40) + (i + 1) * 0x9E3779B97F4A7C15) & MASK
    x = ((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9) & MASK
    x = ((x ^ (x >> 27)) * 0x94D049BB133111EB) & MASK
    return x ^ (x >> 31)


def picoamperes(i):
    """50 of 1000 samples at about 5 mA, the others at about 2 uA."""
    return (5_000_000_000 if i % 1000 < 50 else 2_000_000) + (z(41, i) >> 44)


def trapezoid(t, x):
    return sum(((b - a) * (u + v) / 2 for a, b, u, v in zip(t, t[1:], x, x[1:])), Fraction(0))


def held(t, x):
    return sum(((b - a) * u for a, b, u in zip(t, t[1:], x)), Fraction(0))


def case(t, x, exact_times):
    """From doubles as they are: t and x lists of floats; the times exact where they stand for whole steps."""
    ts = exact_times or [Fraction(a) for a in t]
    xs = [Fraction(a) for a in x]
    last = (len(x) - 1) // 2 * 2
    halving = trapezoid(ts[: last + 1], xs[: last + 1]) - trapezoid(ts[: last + 1 : 2], xs[: last + 1 : 2])
    return {
        "count": len(x),
        "trapezoid": repr(float(trapezoid(ts, xs))),
        "held": repr(float(held(ts, xs))),
        "halving": repr(float(halving)),
        "numpy": repr(float(np.trapz(np.array(x), np.array(t)))),
    }


def even(n, value, step=1e-5):
    """Even steps: i * step in exact arithmetic on the double that the step is."""
    x = [value(i) for i in range(n)]
    return case([i * step for i in range(n)], x, [i * Fraction(step) for i in range(n)])


def uneven(n):
    """Times in whole microseconds, 10 us apart and up to 8 us late, held as doubles in seconds."""
    t = [(10 * i + (z(51, i) >> 61)) / 1e6 for i in range(n)]
    return case(t, [picoamperes(i) / 1e12 for i in range(n)], None)


def product(n):
    """Power from a voltage near 3.3 V; each product is rounded to a double first, as the library does."""
    volts = lambda i: (3_300_000 - (z(42, i) >> 48)) / 1e6
    return even(n, lambda i: volts(i) * (picoamperes(i) / 1e12))


out = {
    "decimal": even(20_001, lambda i: picoamperes(i) / 1e12),
    "decimal-even-count": even(20_002, lambda i: picoamperes(i) / 1e12),
    "product": product(20_001),
    "uneven": uneven(20_001),
    "uneven-even-count": uneven(20_002),
    # Two hundred powers of two, signs mixed: plain sums keep nothing of the small ones.
    "wild": even(
        5_003, lambda i: (1 if z(61, i) >> 63 else -1) * float(z(62, i) >> 11) * 2.0 ** (int(z(63, i) % 200) - 100)
    ),
}
path = Path(__file__).parent.parent / "series.json"
path.write_text(json.dumps(out, indent=1) + "\n")
