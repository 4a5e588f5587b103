"""Trend, order and effect sizes of order.R again: SciPy, statsmodels and listing. Run: /usr/bin/python3 order.py"""
import json
import math

import mpmath
import numpy as np
from scipy import stats
from statsmodels.sandbox.stats.runs import runstest_1samp
from statsmodels.stats.diagnostic import acorr_ljungbox
from statsmodels.tsa.stattools import acf

from data import DATASETS, REFERENCE, write_json

GROUPS = json.loads((REFERENCE / "groups.json").read_text())
SETS = {name: np.array(values, float) for name, values in {**DATASETS, **GROUPS}.items()}
SERIES = {name: np.array(values, float)
          for name, values in {**DATASETS, **json.loads((REFERENCE / "trends.json").read_text())}.items()}
LONGER = {name: x for name, x in SERIES.items() if len(x) > 3}
PAIRS = ["ties/outliers", "triple/small2", "ties1/ties2", "ties2/ties3", "small1/small2", "offset1/offset2",
         "skewed1/skewed2", "skewed3/skewed4"]
TOST_PAIRS = [PAIRS[i] for i in (0, 2, 3, 5, 6, 7)]


def named(f, pairs=PAIRS):
    return {p: f(*(SETS[s] for s in p.split("/"))) for p in pairs}


def kendall_counts(groups):
    """How often each S occurs over all orders of tied groups: value by value, placed among those before of other groups."""
    counts, seen = {0: 1}, 0
    for size in groups:
        # The group's members among the values before: a Mann-Whitney count, concordant less discordant.
        ways = [{0: 1}] + [{} for _ in range(size)]
        for position in range(1, seen + size + 1):
            for k in range(size, 0, -1):
                for total, n in ways[k - 1].items():
                    ways[k][total + position] = ways[k].get(total + position, 0) + n
        shift = size * (size + 1) // 2
        merged = {}
        for s, n in counts.items():
            for total, w in ways[size].items():
                value = s + 2 * (total - shift) - seen * size
                merged[value] = merged.get(value, 0) + n * w
        counts, seen = merged, seen + size
    return counts


def mann_kendall(x):
    n, t = len(x), np.arange(len(x))
    s = sum(np.sign(x[j] - x[i]) for i in range(n) for j in range(i + 1, n))
    groups = np.unique(x, return_counts=True)[1]
    sd = math.sqrt((n * (n - 1) * (2 * n + 5) - sum(g * (g - 1) * (2 * g + 5) for g in groups)) / 18)

    def sides(correction):
        z = (s - np.sign(s) * correction) / sd
        return [min(1, 2 * stats.norm.sf(abs(z))), stats.norm.cdf((s + correction) / sd), stats.norm.sf((s - correction) / sd)]

    tau = stats.kendalltau(t, x)[0]
    if len(groups) == n:
        exact = [stats.kendalltau(t, x, method="exact")[1]]
    else:
        exact = []
    return [s, tau, *sides(1), *sides(0), *exact]


def mann_kendall_exact(x):
    n = len(x)
    s = sum(int(np.sign(x[j] - x[i])) for i in range(n) for j in range(i + 1, n))
    counts = kendall_counts([int(g) for g in np.unique(x, return_counts=True)[1]])
    total = sum(counts.values())
    less = sum(c for v, c in counts.items() if v <= s) / total
    greater = sum(c for v, c in counts.items() if v >= s) / total
    return [less, greater, min(1, 2 * min(less, greater))]


def run_counts(above, below):
    """How often each number of runs occurs over all orders, built up one value at a time."""
    states = {(0, 0, None): {0: 1}}
    for _ in range(above + below):
        grown = {}
        for (a, b, last), counts in states.items():
            for kind in (True, False):
                key = (a + kind, b + (not kind), kind)
                if key[0] > above or key[1] > below:
                    continue
                into = grown.setdefault(key, {})
                for runs, n in counts.items():
                    into[runs + (kind != last)] = into.get(runs + (kind != last), 0) + n
        states = grown
    merged = {}
    for counts in states.values():
        for runs, n in counts.items():
            merged[runs] = merged.get(runs, 0) + n
    return merged


def runs(x, leave_out):
    m = np.median(x)
    if leave_out:
        x = x[x != m]
    above = x >= m
    r = 1 + int((above[1:] != above[:-1]).sum())
    a, b = int(above.sum()), int((~above).sum())
    counts = run_counts(a, b)
    total = sum(counts.values())
    low = sum(c for v, c in counts.items() if v <= r) / total
    high = sum(c for v, c in counts.items() if v >= r) / total
    expected = sum(v * c for v, c in counts.items()) / total
    if len(counts) > 1:
        z, p = runstest_1samp(above.astype(float), cutoff=0.5, correction=False)
    else:
        z, p = 0, 1
    return [r, a, b, expected, z, low, high, min(1, 2 * min(low, high)), p]


def von_neumann(x):
    x = x - x[0]
    n = len(x)
    ratio = ((x[1:] - x[:-1]) ** 2).sum() / ((x - x.mean()) ** 2).sum()
    z = (ratio - 2) / math.sqrt(4 * (n - 2) / (n * n - 1))
    return [ratio, z, 2 * stats.norm.sf(abs(z)), stats.norm.cdf(z), stats.norm.sf(z)]


def lag_one(x):
    r = acf(x - x[0], nlags=1, fft=False)[1]
    return [r, np.clip(r + (1 + 4 * r) / len(x), -1, 1)]


def ljung_box(x, lags, fitted=0):
    table = acorr_ljungbox(x - x[0], lags=[lags], model_df=fitted, return_df=True)
    return [table["lb_stat"].iloc[0], table["lb_pvalue"].iloc[0]]


def noncentral_t_cdf(t, df, delta):
    """By the mean over the chi distribution of s, 30 digits."""
    t, df, delta = map(mpmath.mpf, (t, df, delta))

    def integrand(s):
        log_density = (df / 2) * mpmath.log(df) + (df - 1) * mpmath.log(s) - df * s * s / 2 - mpmath.loggamma(df / 2) - (df / 2 - 1) * mpmath.log(2)
        return mpmath.exp(log_density) * mpmath.ncdf(t * s - delta)

    return mpmath.quad(integrand, [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3, 6, 12])


def hedges(x, y):
    mpmath.mp.dps = 30
    m, n = len(x), len(y)
    df = m + n - 2
    t = stats.ttest_ind(x - y[0], y - y[0]).statistic
    root = math.sqrt(1 / m + 1 / n)
    j = mpmath.gamma(mpmath.mpf(df) / 2) / mpmath.sqrt(mpmath.mpf(df) / 2) / mpmath.gamma((mpmath.mpf(df) - 1) / 2)

    def at(tail):
        start = t - stats.norm.ppf(tail) * math.sqrt(1 + t * t / (2 * df))
        return mpmath.findroot(lambda delta: noncentral_t_cdf(t, df, delta) - tail, (start, start + 0.1), tol=1e-28)

    return [j * t * root, at(0.95) * root, at(0.05) * root]


def tost(x, y, margin, method):
    a = stats.mannwhitneyu(x + margin, y, alternative="greater", method=method)
    b = stats.mannwhitneyu(x - margin, y, alternative="less", method=method)
    return [a.statistic, a.pvalue, b.statistic, b.pvalue]


write_json({
    "mann_kendall_s_tau_p_corrected_two_less_greater_plain_exact": {n: mann_kendall(x) for n, x in SERIES.items()},
    "mann_kendall_exact_less_greater_two": {n: mann_kendall_exact(x) for n, x in SERIES.items()},
    "runs_left_out_runs_above_below_expected_z_less_greater_two_normal": {n: runs(x, True) for n, x in SERIES.items()},
    "runs_as_above": {n: runs(x, False) for n, x in SERIES.items()},
    "von_neumann_ratio_z_two_less_greater": {n: von_neumann(x) for n, x in SERIES.items() if n != "pair"},
    "lag_one_kept_adjusted": {n: lag_one(x) for n, x in SERIES.items()},
    "ljung_box_1_q_p": {n: ljung_box(x, 1) for n, x in SERIES.items()},
    "ljung_box_3_q_p": {n: ljung_box(x, 3) for n, x in LONGER.items()},
    "ljung_box_3_less_1_q_p": {n: ljung_box(x, 3, 1) for n, x in LONGER.items()},
    "hedges_g_low_high_90": named(hedges),
    "tost_ranks_1_5_lower_u_p_upper_u_p": named(lambda x, y: tost(x, y, 1.5, "asymptotic"), TOST_PAIRS),
    "tost_ranks_exact_lower_p_upper_p": named(lambda x, y: tost(x, y, 1.53, "exact")[1::2], TOST_PAIRS[-2:]),
    "tost_rank_logs_1_7_lower_u_p_upper_u_p":
        named(lambda x, y: tost(np.log(x), np.log(y), math.log(1.7), "asymptotic"), TOST_PAIRS),
}, "order-scipy.json")
