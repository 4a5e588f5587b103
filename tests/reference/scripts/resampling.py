"""The bootstraps of resampling.R again by SciPy, and exact permutation tests. Run: /usr/bin/python3 resampling.py"""
import numpy as np
from scipy import stats

from data import DATASETS, write_json

B = 99_999
X, Y = (np.array(DATASETS[name], float) for name in ("skewed", "outliers"))
LSAT = np.array([576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594], float)
GPA = np.array([3.39, 3.3, 2.81, 3.03, 3.44, 3.07, 3.0, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96])


def ends(data, statistic, **how):
    result = []
    for method in ("percentile", "basic", "BCa"):
        found = stats.bootstrap(data, statistic, n_resamples=B, method=method, random_state=7, batch=10_000, **how)
        if not result:
            result.append(found.standard_error)
        result += found.confidence_interval
    return result


def ratio(f):
    return lambda x, y, axis: f(x, axis=axis) / f(y, axis=axis)


def correlation(x, y, axis):
    x = x - x.mean(axis=axis, keepdims=True)
    y = y - y.mean(axis=axis, keepdims=True)
    return (x * y).sum(axis=axis) / np.sqrt((x * x).sum(axis=axis) * (y * y).sum(axis=axis))


def from_resamples(acceleration, observed, confidence):
    """BCa ends from resamples that anybody can make: i²·7919 modulo 1009, i from 1 to 999, over 10."""
    values = np.sort([i * i * 7919 % 1009 / 10 for i in range(1, 1000)])
    bias = stats.norm.ppf((np.sum(values < observed) + np.sum(values <= observed)) / (2 * len(values)))
    z = stats.norm.isf((1 - confidence) / 2)
    ranks = [(len(values) + 1) * stats.norm.cdf(bias + (bias + s * z) / (1 - acceleration * (bias + s * z))) for s in (-1, 1)]
    return list(np.interp(ranks, np.arange(1, len(values) + 1), values))


def exact(a, b, alternative):
    x, y = np.array(DATASETS[a], float), np.array(DATASETS[b], float)
    mean = lambda x, y, axis: x.mean(axis=axis) - y.mean(axis=axis)
    if alternative == "two-sided":
        f = lambda x, y, axis: np.round(np.abs(mean(x, y, axis)), 9)
        return stats.permutation_test((x, y), f, n_resamples=np.inf, vectorized=True, alternative="greater").pvalue
    f = lambda x, y, axis: np.round(mean(x, y, axis), 9)
    return stats.permutation_test((x, y), f, n_resamples=np.inf, vectorized=True, alternative=alternative).pvalue


PAIRS = [("ties", "triple"), ("triple", "pair"), ("skewed", "triple"), ("odd", "pair"), ("ties", "offset")]
write_json({
    "mean_sd_percentile_basic_bca": ends((X,), np.mean),
    "ratio_of_means_sd_percentile_basic_bca": ends((X, Y), ratio(np.mean)),
    "ratio_of_medians_sd_percentile_basic_bca": ends((X, Y), ratio(np.median)),
    "correlation_sd_percentile_basic_bca": ends((LSAT, GPA), correlation, paired=True),
    "bca_of_given_resamples": {
        "0_50_0.95": from_resamples(0, 50, 0.95),
        "0.1_40_0.9": from_resamples(0.1, 40, 0.9),
        "-0.05_62.3_0.95": from_resamples(-0.05, 62.3, 0.95),
    },
    "permutation_less_greater_two_sided": {
        f"{a}/{b}": [exact(a, b, "less"), exact(a, b, "greater"), exact(a, b, "two-sided")] for a, b in PAIRS
    },
}, "resampling-scipy.json")
