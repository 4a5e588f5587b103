"""Quantiles of the mean given only the cells of its readings, on a dense grid.

The likelihood of normal values read in steps, integrated over the spread with the weight dσ/√(σ² + 0.01) in steps
(elster-2000 for the idea), every mean as likely as another. Midpoint sums in sinh-stretched means and in ln σ;
steps.R sums the same by another rule in other coordinates. Run: /usr/bin/python3 steps.py
"""
import numpy as np
from scipy.special import ndtr

from data import write_json

CASES = {
    "rounded 0 0 1": ("Rounded", [0, 0, 1]),
    "rounded 0 0 0": ("Rounded", [0, 0, 0]),
    "rounded 0 1": ("Rounded", [0, 1]),
    "rounded 0 0 0 0 1": ("Rounded", [0, 0, 0, 0, 1]),
    "rounded 0 1 1 2 3": ("Rounded", [0, 1, 1, 2, 3]),
    "rounded, two and eight": ("Rounded", [0] * 2 + [1] * 8),
    "rounded, one, eight and one": ("Rounded", [0] + [1] * 8 + [2]),
    "rounded, thirty": ("Rounded", [0] * 2 + [1] * 9 + [2] * 12 + [3] * 6 + [4]),
    "random start 0 0 1": ("RandomStart", [0, 0, 1]),
    "random start 0 0 0 0 0": ("RandomStart", [0] * 5),
    "random start 0 1 1 2 2": ("RandomStart", [0, 1, 1, 2, 2]),
    "random start, three and seven": ("RandomStart", [0] * 3 + [1] * 7),
}
LEVELS = [0.025, 0.1586552539314570, 0.8413447460685430, 0.975]


def chance(kind, distance, spread):
    if kind == "Rounded":
        a, b = (distance - 0.5) / spread, (distance + 0.5) / spread
        return np.where(b < 0, ndtr(b) - ndtr(a), ndtr(-a) - ndtr(-b))
    g = lambda z: z * ndtr(z) + np.exp(-z * z / 2) / np.sqrt(2 * np.pi)
    d = -abs(distance)
    return np.maximum(0, spread * (g((d + 1) / spread) - 2 * g(d / spread) + g((d - 1) / spread)))


def quantiles(kind, readings, points=3000):
    places, counts = np.unique(readings, return_counts=True)
    n = len(readings)
    width = max(np.std(readings, ddof=1), 0.3) / np.sqrt(n)
    ends = 14 if n <= 3 else 6
    z = (np.arange(points) + 0.5) / points * 2 * ends - ends
    mean = np.mean(readings) + width * np.sinh(z)
    density = np.zeros(points)
    for log_spread in np.arange(np.log(1e-3), np.log(1e6 if n <= 3 else 1e3), 0.02):
        spread = np.exp(log_spread)
        log = sum(c * np.log(np.maximum(chance(kind, p - mean, spread), 1e-300)) for p, c in zip(places, counts))
        density += np.exp(log) * spread / np.sqrt(spread**2 + 0.01)
    mass = density * np.cosh(z)
    edges = np.mean(readings) + width * np.sinh(np.linspace(-ends, ends, points + 1))
    below = np.concatenate([[0], np.cumsum(mass)]) / mass.sum()
    return [float(np.interp(level, below, edges)) for level in LEVELS]


if __name__ == "__main__":
    write_json({"quantiles": {name: quantiles(*case) for name, case in CASES.items()}}, "steps-scipy.json")
