"""The tests of several_groups.R again, by SciPy and statsmodels. Run: /usr/bin/python3 several_groups.py"""
import itertools
import json

import numpy as np
import statsmodels.api as sm
from scipy import stats
from statsmodels.stats.multicomp import pairwise_tukeyhsd
from statsmodels.stats.multitest import multipletests
from statsmodels.stats.oneway import anova_oneway

from data import REFERENCE, write_json

GROUPS = json.loads((REFERENCE / "groups.json").read_text())


def each_set(f):
    # Less the first value of each set: no statistic here changes, and the mean of a large offset keeps its digits.
    sets = {}
    for name in ["ties", "small", "offset", "skewed"]:
        x = [np.array(v) for key, v in GROUPS.items() if key[:-1] == name]
        sets[name] = f([v - x[0][0] for v in x])
    return sets


def pairs(x):
    return list(itertools.combinations(range(len(x)), 2))


def anova(x):
    y = np.concatenate(x)
    design = np.repeat(np.eye(len(x)), [len(v) for v in x], axis=0)
    fit = sm.OLS(y, design).fit()
    between = fit.centered_tss - fit.ssr
    a, b = len(x) - 1, len(y) - len(x)
    f = between / a / (fit.ssr / b)
    return [between, fit.ssr, f, a, b, stats.f.sf(f, a, b)]


def welch(x):
    r = anova_oneway(x, use_var="unequal", welch_correction=True)
    return [r.statistic, *r.df, r.pvalue]


def tukey(x):
    names = np.repeat(np.arange(len(x)), [len(v) for v in x])
    r = pairwise_tukeyhsd(np.concatenate(x), names, 0.1)
    rows = []
    for d, p, (low, high) in zip(r.meandiffs, r.pvalues, r.confint):
        rows += [-d, p, -high, -low]
    return rows


def games_howell(x):
    rows = []
    for i, j in pairs(x):
        a, b = (np.var(x[k], ddof=1) / len(x[k]) for k in (i, j))
        d = x[i].mean() - x[j].mean()
        df = (a + b) ** 2 / (a**2 / (len(x[i]) - 1) + b**2 / (len(x[j]) - 1))
        s = np.sqrt((a + b) / 2)
        reach = stats.studentized_range.ppf(0.9, len(x), df) * s
        rows += [d, df, abs(d) / s, stats.studentized_range.sf(abs(d) / s, len(x), df), d - reach, d + reach]
    return rows


def dunn(x):
    ranks = np.split(stats.rankdata(np.concatenate(x)), np.cumsum([len(v) for v in x])[:-1])
    n = sum(map(len, x))
    variance = stats.tiecorrect(np.concatenate(ranks)) * n * (n + 1) / 12
    d = np.array([ranks[i].mean() - ranks[j].mean() for i, j in pairs(x)])
    s = np.array([np.sqrt(variance * (1 / len(x[i]) + 1 / len(x[j]))) for i, j in pairs(x)])
    p = 2 * stats.norm.sf(abs(d / s))
    reach = stats.norm.isf(0.1 / (len(x) * (len(x) - 1))) * s
    holm, bh = (multipletests(p, method=m)[1] for m in ("holm", "fdr_bh"))
    return np.column_stack([d, d / s, holm, bh, d - reach, d + reach]).ravel().tolist()


write_json({
    "anova_ss_ss_f_df_df_p": each_set(anova),
    "welch_f_df_df_p": each_set(welch),
    "tukey_d_p_low_high_90": each_set(tukey),
    "games_howell_d_df_q_p_low_high_90": each_set(games_howell),
    "dunn_d_z_holm_bh_low_high_90": each_set(dunn),
}, "several-groups-scipy.json")
