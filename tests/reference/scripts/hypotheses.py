"""The tests of hypotheses.R again, by SciPy and statsmodels. Run: /usr/bin/python3 hypotheses.py"""
import json

import numpy as np
from scipy import stats
from statsmodels.stats.multitest import multipletests
from statsmodels.stats.weightstats import DescrStatsW, ttost_ind

from data import DATASETS, REFERENCE, write_json

PAIRS = [("ties", "outliers"), ("triple", "pair"), ("skewed", "triple"), ("odd", "offset")]
TRIMMED = [PAIRS[0], PAIRS[2], PAIRS[3]]
GROUPS = json.loads((REFERENCE / "groups.json").read_text())


def named(f, pairs=PAIRS):
    return {"/".join(pair): f(np.array(DATASETS[pair[0]], float), np.array(DATASETS[pair[1]], float)) for pair in pairs}


def each_set(f):
    # Less the first value of each group: the statistics don't change, and the mean of a large offset keeps its digits.
    return {
        name: f([np.array(v) - v[0] for key, v in GROUPS.items() if key[:-1] == name])
        for name in ["ties", "small", "offset", "skewed"]
    }


def one_sample(x, mu=1):
    d = DescrStatsW(x)
    t, p, df = d.ttest_mean(mu)
    return [d.mean, t, df, p, *d.tconfint_mean(0.1)]


def paired(x, y):
    n = min(len(x), len(y))
    return one_sample(x[:n] - y[:n], 0)


def yuen(x, y, trim):
    t, p = stats.ttest_ind(x, y, equal_var=False, trim=trim)
    return [t, p]


def tost(x, y, low, high, variances, transform=None):
    _, above, below = ttost_ind(x, y, low, high, usevar=variances, transform=transform)
    return [above[0], above[1], below[0], below[1]]


def f_ratio(x, y):
    a, b = len(x) - 1, len(y) - 1
    f = np.var(x, ddof=1) / np.var(y, ddof=1)
    p = 2 * min(stats.f.cdf(f, a, b), stats.f.sf(f, a, b))
    return [f, f, p, f / stats.f.isf(0.05, a, b), f / stats.f.ppf(0.05, a, b)]


def levene(x, center):
    f, p = stats.levene(*x, center=center)
    return [f, len(x) - 1, sum(map(len, x)) - len(x), p]


P_VALUES = {"plain": [0.01, 0.04, 0.03, 0.005], "ties": [0.02, 0.5, 0.02, 0.02, 0.9, 0.5, 1, 0], "one": [0.03, 0.2]}


def adjusted(method):
    return {name: list(multipletests(p, method=method)[1]) for name, p in P_VALUES.items()}


write_json({
    "one_sample_against_1_mean_t_df_p_low_high_90": {n: one_sample(np.array(x, float)) for n, x in DATASETS.items()},
    "paired_mean_t_df_p_low_high_90": named(paired),
    "yuen_20_t_p": named(lambda x, y: yuen(x, y, 0.2), TRIMMED),
    "yuen_10_t_p": named(lambda x, y: yuen(x, y, 0.1), TRIMMED),
    "tost_welch_3_lower_t_p_upper_t_p": named(lambda x, y: tost(x, y, -3, 3, "unequal")),
    "tost_pooled_3_lower_t_p_upper_t_p": named(lambda x, y: tost(x, y, -3, 3, "pooled")),
    "tost_logs_half_to_2_lower_t_p_upper_t_p": named(lambda x, y: tost(x, y, 0.5, 2, "unequal", np.log)),
    "variance_ratio_f_p_low_high_90": named(f_ratio),
    "levene_f_df_df_p": each_set(lambda x: levene(x, "mean")),
    "brown_forsythe_f_df_df_p": each_set(lambda x: levene(x, "median")),
    "adjusted_bonferroni": adjusted("bonferroni"),
    "adjusted_holm": adjusted("holm"),
    "adjusted_hochberg": adjusted("simes-hochberg"),
    "adjusted_bh": adjusted("fdr_bh"),
}, "hypotheses-scipy.json")
