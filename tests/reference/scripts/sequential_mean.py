"""How often the interval holds that SequentialMean gives in the end, and how many values it takes.

Normal values with spread 1; the wanted half-width is 1.96/sqrt(wanted count). Three things are tabled for each rule: how
often the plain t interval at the end holds the mean, how often the wider of it and the wanted half-width does, and the
mean number of values. Also writes the decisions for one short list of values, which the test compares with.

    python3 sequential_mean.py > ../sequential-mean.json
"""

import json

import numpy as np
from scipy import stats

LONGEST = 400
STUDIES = 20_000


def half_widths(values):
    n = np.arange(1, values.shape[1] + 1)
    half = np.full(values.shape, np.inf)
    mean = np.cumsum(values, axis=1) / n
    squares = np.cumsum(values**2, axis=1) - n * mean**2
    t = stats.t.ppf(0.975, n[1:] - 1)
    half[:, 1:] = t * np.sqrt(np.maximum(squares[:, 1:], 0) / (n[1:] - 1) / n[1:])
    return n, mean, half


def coverage(wanted_count, minimum, confirming, rng):
    wanted = 1.96 / np.sqrt(wanted_count)
    n, mean, half = half_widths(rng.standard_normal((STUDIES, LONGEST)))
    reached = (half <= wanted) & (n >= minimum)
    at = np.minimum(reached.argmax(axis=1) + confirming, LONGEST - 1)
    rows = np.arange(STUDIES)
    off = np.abs(mean[rows, at])
    return {
        "wantedCount": wanted_count,
        "minimum": minimum,
        "confirming": confirming,
        "plain": round(float((off <= half[rows, at]).mean()), 4),
        "claimed": round(float((off <= np.maximum(half[rows, at], wanted)).mean()), 4),
        "values": round(float((at + 1).mean()), 1),
    }


def decisions(values, wanted):
    half = [
        float(stats.t.ppf(0.975, n - 1) * np.std(values[:n], ddof=1) / np.sqrt(n)) for n in range(2, len(values) + 1)
    ]
    reached = [n for n, width in enumerate(half, start=2) if width <= wanted and n >= 10]
    return {
        "values": values,
        "halfWidth": wanted,
        "reachedAt": reached[0],
        "halfWidths": half,
    }


rng = np.random.default_rng(2026)
table = [
    coverage(count, minimum, confirming, rng)
    for minimum in (5, 10)
    for confirming in (0, 4)
    for count in (3, 6, 10, 15, 20, 30, 50, 100)
]
short = [round(float(v), 3) for v in 2.4 + 0.02 * np.random.default_rng(7).standard_normal(30)]
print(json.dumps({"simulated": table, "decisions": decisions(short, 0.009)}, indent=2))
