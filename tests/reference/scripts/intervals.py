"""The intervals of intervals.R again, by SciPy and statsmodels or by other routes. Run: /usr/bin/python3 intervals.py"""
import math

import numpy as np
from scipy import optimize, stats
from statsmodels.stats.proportion import proportion_confint

from data import DATASETS, write_json

SETS = {name: np.array(x, float) for name, x in DATASETS.items()}
PAIRS = [("ties", "outliers"), ("triple", "pair"), ("skewed", "triple"), ("odd", "offset")]


def t_quantile(p, df):
    """SciPy 1.10 has t quantiles to nine digits; these are polished on its distribution function, which has fourteen."""
    t = stats.t.ppf(p, df)
    for _ in range(3):
        t += (stats.t.sf(t, df) - (1 - p)) / stats.t.pdf(t, df)
    return t


def trimmed(x, fraction, level):
    """The error comes out of SciPy's trimmed test against a sample that doesn't spread."""
    far = np.full(9, x.max() + 1)
    t = stats.ttest_ind(x, far, equal_var=False, trim=fraction)[0]
    mean = stats.trim_mean(x, fraction)
    error = (mean - far[0]) / t
    h = len(x) - 2 * int(fraction * len(x))
    reach = t_quantile((1 + level) / 2, h - 1) * error
    return [mean, error, mean - reach, mean + reach]


def spread(x, level):
    ss = ((x - x.mean()) ** 2).sum()
    return [ss / stats.chi2.isf((1 - level) / 2, len(x) - 1), ss / stats.chi2.ppf((1 - level) / 2, len(x) - 1)]


def prediction(x, level):
    reach = t_quantile((1 + level) / 2, len(x) - 1) * x.std(ddof=1) * math.sqrt(1 + 1 / len(x))
    return [x.mean(), x.mean() - reach, x.mean() + reach]


def tail(n, p, below):
    """P(X < below) for a binomial X, in exact integers and one rounding."""
    return sum(math.comb(n, k) * p**k * (1 - p) ** (n - k) for k in range(below))


def limits(x, p, level):
    n, share = len(x), (1 - level) / 2
    lower = max((r for r in range(1, n + 1) if tail(n, p, r) <= share), default=0)
    upper = min((r for r in range(1, n + 1) if 1 - tail(n, p, r) <= share * (1 + 1e-12)), default=0)
    return lower, upper


def exact(x, p, level):
    lower, upper = limits(x, p, level)
    if not (lower and upper):
        return None
    s = np.sort(x)
    return [s[lower - 1], s[upper - 1], tail(len(x), p, upper) - tail(len(x), p, lower)]


def interpolated(x, p, level):
    """Nyblom's interpolation, for any quantile."""
    lower, upper = limits(x, p, level)
    if not (lower and upper):
        return None

    def end(s, r, p):
        n, share = len(s), (1 - level) / 2
        inner, outer = tail(n, p, r + 1), tail(n, p, r)
        weight = 1 / (1 + r * (1 - p) * (inner - share) / ((n - r) * p * (share - outer))) if r < n else 0
        return (1 - weight) * s[r - 1] + weight * s[min(r, n - 1)]

    return [end(np.sort(x), lower, p), -end(np.sort(-x), len(x) + 1 - upper, 1 - p)]


def fieller(x, y, level, equal):
    n, m = len(x), len(y)
    a, b = x.var(ddof=1) / n, y.var(ddof=1) / m
    ratio = x.mean() / y.mean()
    if equal:
        df = n + m - 2
        pooled = ((n - 1) * x.var(ddof=1) + (m - 1) * y.var(ddof=1)) / df
        a, b = pooled / n, pooled / m
    else:
        df = (a + ratio**2 * b) ** 2 / (a**2 / (n - 1) + (ratio**2 * b) ** 2 / (m - 1))
    t = t_quantile((1 + level) / 2, df)
    q = [y.mean() ** 2 - t * t * b, -2 * x.mean() * y.mean(), x.mean() ** 2 - t * t * a]
    if q[0] <= 0:
        return None
    root = math.sqrt(q[1] ** 2 - 4 * q[0] * q[2])
    return [ratio, df, (-q[1] - root) / (2 * q[0]), (-q[1] + root) / (2 * q[0])]


def medians(x, y, level):
    def variance(x):
        n = len(x)
        d = max(1, round((n + 1) / 2 - math.sqrt(n)))
        s = np.log(np.sort(x))
        return ((s[n - d] - s[d - 1]) / (2 * stats.norm.isf(tail(n, 0.5, d)))) ** 2

    reach = stats.norm.isf((1 - level) / 2) * math.sqrt(variance(x) + variance(y))
    ratio = np.median(x) / np.median(y)
    return [ratio, ratio * math.exp(-reach), ratio * math.exp(reach)]


def two_sided(n, content, confidence):
    """Over the standard deviation instead of the mean: given s, the mean must lie within a distance that holds the content."""
    node, weight = np.polynomial.legendre.leggauss(60)

    def within(k, s):
        low, high = np.zeros_like(s), k * s + 10
        for _ in range(60):
            middle = (low + high) / 2
            holds = stats.norm.cdf(middle + k * s) - stats.norm.cdf(middle - k * s) > content
            low, high = np.where(holds, middle, low), np.where(holds, high, middle)
        return 1 - 2 * stats.norm.sf(low * math.sqrt(n))

    def holds(k):
        start = stats.norm.isf((1 - content) / 2) / k
        end = max(start * 1.01, stats.chi.isf(1e-17, n - 1) / math.sqrt(n - 1))
        # The distance starts as the root of s - start, so the variable is that root.
        total, ends = 0, np.linspace(0, math.sqrt(end - start), 9)
        for left, right in zip(ends, ends[1:]):
            v = (left + right) / 2 + (right - left) / 2 * node
            s = start + v * v
            density = stats.chi.pdf(s * math.sqrt(n - 1), n - 1) * math.sqrt(n - 1)
            total += (right - left) / 2 * (weight * 2 * v * within(k, s) * density).sum()
        return total

    return optimize.brentq(lambda k: holds(k) - confidence, 0.9 * stats.norm.isf((1 - content) / 2), 400, xtol=1e-11)


def one_sided(n, content, confidence):
    z = stats.norm.ppf(content)
    node, weight = np.polynomial.legendre.leggauss(60)
    # Finer towards 0, where the probability changes fast for large factors.
    ends = stats.chi.isf(1e-17, n - 1) / math.sqrt(n - 1) * np.concatenate([[0], np.logspace(-6, 0, 25)])

    def holds(k):
        total = 0
        for left, right in zip(ends, ends[1:]):
            s = (left + right) / 2 + (right - left) / 2 * node
            density = stats.chi.pdf(s * math.sqrt(n - 1), n - 1) * math.sqrt(n - 1)
            total += (right - left) / 2 * (weight * stats.norm.cdf(math.sqrt(n) * (k * s - z)) * density).sum()
        return total

    return optimize.brentq(lambda k: holds(k) - confidence, 0.01, 400, xtol=1e-12)


def named(f):
    return {"/".join(pair): f(SETS[pair[0]], SETS[pair[1]]) for pair in PAIRS}


COUNTS = {"0/7": (0, 7), "3/10": (3, 10), "90/100": (90, 100), "5/5": (5, 5)}
write_json({
    "trimmed_20_value_error_low_high_90": {name: trimmed(x, 0.2, 0.9) for name, x in SETS.items()},
    "variance_low_high_90": {name: spread(x, 0.9) for name, x in SETS.items()},
    "prediction_90": {name: prediction(x, 0.9) for name, x in SETS.items()},
    "median_exact_90": {name: exact(x, 0.5, 0.9) for name, x in SETS.items()},
    "quantile_75_exact_80": {name: exact(x, 0.75, 0.8) for name, x in SETS.items()},
    "median_interpolated_90": {name: interpolated(x, 0.5, 0.9) for name, x in SETS.items()},
    "quantile_75_interpolated_80": {name: interpolated(x, 0.75, 0.8) for name, x in SETS.items()},
    "fieller_separate_ratio_df_low_high_90": named(lambda x, y: fieller(x, y, 0.9, False)),
    "fieller_equal_ratio_df_low_high_90": named(lambda x, y: fieller(x, y, 0.9, True)),
    "medians_ratio_low_high_90": named(lambda x, y: medians(x, y, 0.9)),
    "wilson_90": {name: list(proportion_confint(*c, 0.1, "wilson")) for name, c in COUNTS.items()},
    "clopper_pearson_90": {name: list(proportion_confint(*c, 0.1, "beta")) for name, c in COUNTS.items()},
    "factors": {
        "two_sided": [two_sided(n, p, c) for c in (0.95, 0.99) for p in (0.9, 0.99) for n in (2, 3, 6, 15, 43, 200)],
        "one_sided": [one_sided(n, p, c) for c in (0.95, 0.99) for p in (0.9, 0.99) for n in (2, 3, 6, 15, 43, 200)],
    },
}, "intervals-scipy.json")
