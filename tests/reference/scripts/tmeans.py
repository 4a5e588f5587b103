"""The means, ratios and t tests of tmeans.R again, by SciPy and statsmodels. Run: /usr/bin/python3 tmeans.py"""
import numpy as np
from scipy import stats
from statsmodels.stats.weightstats import CompareMeans, DescrStatsW

from data import DATASETS, write_json

PAIRS = [("ties", "outliers"), ("triple", "pair"), ("skewed", "triple"), ("odd", "offset")]


def mean_of(x):
    error = stats.sem(x)
    return [np.mean(x), error, *stats.t.interval(0.9, len(x) - 1, np.mean(x), error)]


def named(f):
    return {"/".join(pair): f(np.array(DATASETS[pair[0]], float), np.array(DATASETS[pair[1]], float)) for pair in PAIRS}


def test(x, y, variances):
    means = CompareMeans(DescrStatsW(x), DescrStatsW(y))
    t, p, df = means.ttest_ind(usevar=variances)
    return [x.mean() - y.mean(), t, df, p, *means.tconfint_diff(0.1, usevar=variances)]


def ratio(x, y):
    difference, _, df, _, low, high = test(np.log(x), np.log(y), "unequal")
    return [np.exp(difference), df, np.exp(low), np.exp(high)]


write_json({
    "mean_error_low_high_90": {name: mean_of(np.array(x, float)) for name, x in DATASETS.items()},
    "ratio_df_low_high_90": named(ratio),
    "welch_difference_t_df_p_low_high_90": named(lambda x, y: test(x, y, "unequal")),
    "pooled_difference_t_df_p_low_high_90": named(lambda x, y: test(x, y, "pooled")),
}, "tmeans-scipy.json")
