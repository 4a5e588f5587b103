"""Robust lines and lines with errors in both variables: SciPy. Run: /usr/bin/python3 slopes.py"""
import itertools

import numpy as np
from scipy import odr, stats

from data import write_json

SETS = {
    "smooth": ([1.5, 2, 3.25, 4, 5.5, 6, 7.75, 9, 10, 12.5, 13], [2.1, 2.9, 4.2, 4.4, 6.9, 7.1, 9.4, 10.2, 11.8, 13.4, 14.9]),
    "ties": ([1, 1, 2, 2, 2, 3, 4, 4, 5, 6], [2, 3, 3, 5, 4, 4, 6, 7, 7, 7]),
    "wild": ([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], [2.1, 3.9, 6.2, 8.1, 55, 12.2, 13.8, 16.1, -40, 19.9, 22.3, 24]),
    "offset": ([1e6 + i for i in range(9)], [5.1, 5.3, 5.2, 5.6, 5.9, 5.7, 6.1, 6.0, 6.4]),
}
UX = [0.05, 0.1, 0.05, 0.2, 0.1, 0.15, 0.2, 0.1, 0.2, 0.1, 0.3]
UY = [0.1, 0.2, 0.1, 0.3, 0.25, 0.2, 0.4, 0.15, 0.2, 0.5, 0.2]


def siegel(x, y):
    """From the definition."""
    inner = []
    for a in range(len(x)):
        slopes = [(y[b] - y[a]) / (x[b] - x[a]) for b in range(len(x)) if x[b] != x[a]]
        inner.append(np.median(slopes))
    return np.median(inner)


def theil_sen(x, y, confidence):
    slope, intercept, low, high = stats.theilslopes(y, x, confidence, method="joint")
    slopes = sorted((y[b] - y[a]) / (x[b] - x[a]) for a, b in itertools.combinations(range(len(x)), 2) if x[a] != x[b])
    assert abs(np.median(slopes) - slope) < 1e-12
    return [slope, np.median(np.array(y) - slope * np.array(x)), low, high]


def deming(x, y, ratio):
    """The line of least distance by SciPy's orthogonal distance regression, errors by leaving points out."""
    def fit(x, y):
        data = odr.RealData(x, y, sx=1, sy=np.sqrt(ratio))
        run = odr.ODR(data, odr.unilinear, beta0=np.polyfit(x, y, 1), sstol=1e-16, partol=1e-16, maxit=500)
        return run.run().beta
    x, y = np.array(x, float), np.array(y, float)
    n = len(x)
    left_out = np.array([fit(np.delete(x, i), np.delete(y, i)) for i in range(n)])
    error = np.sqrt((n - 1) / n * ((left_out - left_out.mean(axis=0)) ** 2).sum(axis=0))
    slope, intercept = fit(x, y)
    return [slope, intercept, *error]


def york(x, y, ux, uy):
    data = odr.RealData(x, y, sx=ux, sy=uy)
    run = odr.ODR(data, odr.unilinear, beta0=np.polyfit(x, y, 1), sstol=1e-16, partol=1e-16, maxit=500).run()
    return [*run.beta, run.sum_square]


write_json({
    "data": {name: {"x": x, "y": y} for name, (x, y) in SETS.items()},
    "uncertainties": {"x": UX, "y": UY},
    "theil_sen_90": {name: theil_sen(x, y, 0.9) for name, (x, y) in SETS.items()},
    "siegel": {name: siegel(x, y) for name, (x, y) in SETS.items()},
    "siegel_scipy": {name: stats.siegelslopes(y, x)[0] for name, (x, y) in SETS.items()},
    "deming": {"smooth/1": deming(*SETS["smooth"], 1), "ties/0.25": deming(*SETS["ties"], 0.25)},
    "york_slope_intercept_chi2": york(*SETS["smooth"], UX, UY),
}, "slopes-scipy.json")
