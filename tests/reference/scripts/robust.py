"""Location, scale and shape of the data sets: SciPy, NumPy and statsmodels. Run: /usr/bin/python3 robust.py"""
import itertools

import numpy as np
from scipy import integrate, optimize, stats
from scipy.stats import mstats
from statsmodels.robust import scale as robust_scale

from data import DATASETS, write_json

METHODS = ["inverted_cdf", "averaged_inverted_cdf", "closest_observation", "interpolated_inverted_cdf", "hazen", "weibull",
           "linear", "median_unbiased", "normal_unbiased"]
PROBABILITIES = [0, 0.1, 0.25, 1 / 3, 0.5, 0.9, 1]


def sn_raw(x):
    n = len(x)
    inner = [sorted(abs(a - b) for b in x)[n // 2] for a in x]
    return sorted(inner)[(n + 1) // 2 - 1]


def qn_raw(x):
    h = len(x) // 2 + 1
    return sorted(abs(a - b) for a, b in itertools.combinations(x, 2))[h * (h - 1) // 2 - 1]


def proposal_2(x):
    """Huber's proposal 2, the fixed point of Algorithm A with the exact factor, iterated from far above."""
    inside = integrate.quad(lambda z: z * z * stats.norm.pdf(z), 0, 1.5, epsabs=1e-15)[0]
    share = 2 * inside + 2.25 * 2 * stats.norm.sf(1.5)
    location, scale = np.mean(x), 3 * np.std(x)
    for _ in range(5000):
        pulled = np.clip(x, location - 1.5 * scale, location + 1.5 * scale)
        location, scale = pulled.mean(), pulled.std(ddof=1) / np.sqrt(share)
    return [location, scale]


def huber(x):
    """Where values pulled in at 1.5 scaled median absolute deviations have their mean, by bracketing."""
    reach = 1.5 * robust_scale.mad(x)
    return optimize.brentq(lambda m: np.clip(x - m, -reach, reach).sum(), x.min(), x.max(), xtol=1e-300, rtol=9e-16)


def biweight(x):
    """One-step biweight location (6 raw median absolute deviations) and midvariance (9)."""
    m = np.median(x)
    mad = np.median(np.abs(x - m))
    u = np.clip((x - m) / (6 * mad), -1, 1)
    location = m + np.sum((x - m) * (1 - u**2) ** 2) / np.sum((1 - u**2) ** 2)
    v = (x - m) / (9 * mad)
    y, v = (x - m)[abs(v) < 1], v[abs(v) < 1]
    return [location, len(x) * np.sum(y**2 * (1 - v**2) ** 4) / np.sum((1 - v**2) * (1 - 5 * v**2)) ** 2]


def adjusted(f, x, least):
    return f(x, bias=False) if len(x) >= least else None


def describe(x):
    x = np.array(x, float)
    g = int(0.2 * len(x))
    winsorized = np.asarray(mstats.winsorize(x, limits=(g / len(x), g / len(x))))
    hd = [0.1, 0.5, 0.75]
    return {
        "mean": np.mean(x), "variance": np.var(x, ddof=1), "median": np.median(x),
        "mad": robust_scale.mad(x), "iqr": stats.iqr(x), "geometric": stats.gmean(x), "harmonic": stats.hmean(x),
        "trimmed_10": stats.trim_mean(x, 0.1), "trimmed_25": stats.trim_mean(x, 0.25),
        "winsorized_20": [winsorized.mean(), winsorized.var(ddof=1)],
        "skewness": stats.skew(x), "kurtosis": stats.kurtosis(x),
        "skewness_adjusted": adjusted(stats.skew, x, 3), "kurtosis_adjusted": adjusted(stats.kurtosis, x, 4),
        "hodges_lehmann": np.median([(a + b) / 2 for a, b in itertools.combinations_with_replacement(x, 2)]),
        "huber": huber(x), "biweight": biweight(x), "algorithm_a_exact": proposal_2(x), "sn_raw": sn_raw(x), "qn_raw": qn_raw(x), "variation": stats.variation(x, ddof=1),
        "ranks": list(stats.rankdata(x)), "ranks_min": list(stats.rankdata(x, "min")),
        "ranks_max": list(stats.rankdata(x, "max")), "ranks_first": list(stats.rankdata(x, "ordinal")),
        "ranks_dense": list(stats.rankdata(x, "dense")),
        "quantiles": [q for m in METHODS for q in np.quantile(x, PROBABILITIES, method=m)],
        "harrell_davis": list(np.asarray(mstats.hdquantiles(x, hd))),
        "harrell_davis_error": list(np.asarray(mstats.hdquantiles_sd(x, hd))),
    }


write_json({name: describe(x) for name, x in DATASETS.items()}, "robust-scipy.json")
