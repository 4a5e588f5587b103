"""The tests of normality.R again, by mpmath, SciPy and statsmodels. Run: /usr/bin/python3 normality.py"""
import mpmath
import numpy as np
from mpmath import mp, mpf
from scipy import stats
from statsmodels.stats.diagnostic import normal_ad

from data import DATASETS, write_json

mp.dps = 30
SETS = {name: np.array(values, float) for name, values in DATASETS.items()}
for name, n in {"eleven": 11, "twelve": 12, "hundred": 100, "most": 5000}.items():
    SETS[name] = np.array([(i * i * 7919 % 10007) / 100 for i in range(1, n + 1)])


def each(f, least):
    # Less the median, which no statistic here feels: an offset costs no digits.
    return {name: f(x - np.sort(x)[len(x) // 2]) for name, x in SETS.items() if len(x) >= least}


def poly(x, *c):
    return sum(mpf(str(a)) * x**k for k, a in enumerate(c))


def royston(x):
    """W and p of Royston (1995) in 30 digits; SciPy's own routine works in single precision."""
    x = sorted(mpf(v) for v in x)
    n = len(x)
    m = [mpf(stats.norm.ppf((i - 0.375) / (n + 0.25))) for i in range(1, n + 1)]
    if n <= 100:
        m = [mpmath.sqrt(2) * mpmath.erfinv(2 * (i - mpf("0.375")) / (n + mpf("0.25")) - 1) for i in range(1, n + 1)]
    c = mpmath.fsum(v * v for v in m)
    u = 1 / mpmath.sqrt(n)
    if n == 3:
        a = [-mpmath.sqrt(mpf(1) / 2), mpf(0), mpmath.sqrt(mpf(1) / 2)]
    else:
        last = m[-1] / mpmath.sqrt(c) + poly(u, 0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056)
        next_ = m[-2] / mpmath.sqrt(c) + poly(u, 0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633)
        if n <= 5:
            phi = (c - 2 * m[-1] ** 2) / (1 - 2 * last**2)
            a = [v / mpmath.sqrt(phi) for v in m]
        else:
            phi = (c - 2 * m[-1] ** 2 - 2 * m[-2] ** 2) / (1 - 2 * last**2 - 2 * next_**2)
            a = [v / mpmath.sqrt(phi) for v in m]
            a[1], a[-2] = -next_, next_
        a[0], a[-1] = -last, last
    mean = mpmath.fsum(x) / n
    w = mpmath.fdot(a, x) ** 2 / (mpmath.fdot(a, a) * mpmath.fsum((v - mean) ** 2 for v in x))
    if n == 3:
        return [w, max(0, 6 / mp.pi * (mpmath.asin(mpmath.sqrt(w)) - mpmath.asin(mpmath.sqrt(mpf(3) / 4))))]
    if n <= 11:
        y = -mpmath.log(poly(n, -2.273, 0.459) - mpmath.log(1 - w))
        z = (y - poly(n, 0.544, -0.39978, 0.025054, -0.0006714)) / mpmath.exp(poly(n, 1.3822, -0.77857, 0.062767, -0.0020322))
    else:
        k = mpmath.log(n)
        z = (mpmath.log(1 - w) - poly(k, -1.5861, -0.31082, -0.083751, 0.0038915)) / mpmath.exp(
            poly(k, -0.4803, -0.082676, 0.0030302))
    return [w, mpmath.ncdf(-z)]


def critical(n, tail):
    t = stats.t.isf(tail, n - 2)
    return (n - 1) * t / np.sqrt(n * (n - 2 + t * t))


def grubbs(x):
    n, rows = len(x), []
    for side, tails in ((abs(x - x.mean()), 2), (x, 1), (-x, 1)):
        k = int(np.argmax(side))
        rest = np.delete(x, k)
        t = abs(x[k] - rest.mean()) / np.sqrt(rest.var(ddof=1) * n / (n - 1))
        g = abs(x[k] - x.mean()) / x.std(ddof=1)
        rows += [k, g, critical(n, 0.05 / (tails * n)), min(1, tails * n * stats.t.sf(t, n - 2))]
    return rows


def esd(x):
    rows, found = [], 0
    for i in (1, 2, 3):
        z = abs(stats.zscore(x, ddof=1))
        limit = critical(len(x), 0.1 / (2 * len(x)))
        found = i if z.max() > limit else found
        rows += [z.max(), limit]
        x = np.delete(x, np.argmax(z))
    return [found, *rows]


def median_rule(x):
    d = stats.median_abs_deviation(x, scale="normal")
    return [np.median(x), d, *np.flatnonzero(abs(x - np.median(x)) / d > 3.5)]


write_json({
    "shapiro_w_p": each(royston, 3),
    "shapiro_w_p_single": each(lambda x: list(stats.shapiro(x)), 3),
    "anderson_a_p": each(lambda x: list(normal_ad(x)), 8),
    "grubbs_two_greater_less_index_g_critical_p": each(grubbs, 3),
    "esd_3_found_r_lambda": each(esd, 8),
    "median_rule_median_deviation_indices": {name: median_rule(x) for name, x in SETS.items() if len(x) >= 3},
}, "normality-scipy.json")
