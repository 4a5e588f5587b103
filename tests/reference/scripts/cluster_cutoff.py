"""How far apart the two halves of the best split of a clean series lie, in standard deviations inside them.

Prints, for normal and even scatter and several lengths, the distance that 1 % of the series exceed while the gap at the
split is at least twice that standard deviation. The review's cutoff for two clusters, 3.5 + 41/n, is fitted to the even ones.
"""

import sys

import numpy as np

SEED = 2026
SERIES = int(sys.argv[1]) if len(sys.argv) > 1 else 20000


def distances(values):
    """The distance of the parts' means and the gap between them, in standard deviations inside, for each sorted row."""
    rows, n = values.shape
    smallest = max(3, n // 5)
    sums = np.cumsum(values, axis=1)
    squares = np.cumsum(values**2, axis=1)
    cuts = np.arange(smallest, n - smallest + 1)
    low = sums[:, cuts - 1] / cuts
    high = (sums[:, -1:] - sums[:, cuts - 1]) / (n - cuts)
    inside = squares[:, -1:] - cuts * low**2 - (n - cuts) * high**2
    best = np.argmin(inside, axis=1)
    at = np.arange(rows)
    spread = np.sqrt(inside[at, best] / (n - 2))
    gap = values[at, cuts[best]] - values[at, cuts[best] - 1]
    return (high - low)[at, best] / spread, gap / spread


random = np.random.default_rng(SEED)
for n in (8, 9, 10, 12, 15, 20, 30, 50, 100, 300):
    line = []
    for draw in (random.standard_normal, random.random):
        apart, gap = distances(np.sort(draw((SERIES, n)), axis=1))
        counted = np.where(gap >= 2, apart, 0)
        line.append(np.quantile(counted, 0.99))
    print(n, *(f"{x:.2f}" for x in line))
