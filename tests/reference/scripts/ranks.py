"""The rank tests and intervals of ranks.R again: SciPy, statsmodels and listing. Run: /usr/bin/python3 ranks.py"""
import itertools
import json

import numpy as np
from scipy import stats
from statsmodels.stats.nonparametric import rank_compare_2indep

from data import DATASETS, REFERENCE, write_json

GROUPS = json.loads((REFERENCE / "groups.json").read_text())
SETS = {name: np.array(values, float) for name, values in {**DATASETS, **GROUPS}.items()}
PAIRS = ["ties/outliers", "triple/pair", "skewed/triple", "odd/offset", "ties1/ties2", "ties2/ties3", "small1/small2",
         "small2/small3", "offset1/offset2", "skewed1/skewed2", "skewed3/skewed4"]
LARGE = [p for p in PAIRS if p not in ("triple/pair", "skewed/triple", "small1/small2", "small2/small3", "offset1/offset2")]
OVERLAP = ["ties1/ties2", "ties2/ties3", "small1/small2", "offset1/offset2", "skewed1/skewed2", "skewed3/skewed4"]
CENTRES = {"pair": 412.5, "triple": 2.5, "ties": 9, "offset": 10000000.3, "skewed": 0.5, "outliers": 20, "odd": 56}
LARGER = ["ties", "offset", "skewed", "outliers", "odd"]
SIDES = ["two-sided", "less", "greater"]


def named(f, pairs=PAIRS):
    return {p: f(*(SETS[s] for s in p.split("/"))) for p in pairs}


def tails(distribution, value):
    """Less, greater and twice the smaller, from counts of the statistic's values."""
    total = sum(distribution.values())
    less = sum(n for v, n in distribution.items() if v <= value) / total
    greater = sum(n for v, n in distribution.items() if v >= value) / total
    return [less, greater, min(1, 2 * min(less, greater))]


def choices(scores, count):
    """How often each sum of that many of the scores occurs: whole numbers, one score after another."""
    ways = [{0: 1}] + [{} for _ in range(count)]
    for score in scores:
        for k in range(count, 0, -1):
            for total, n in ways[k - 1].items():
                ways[k][total + score] = ways[k].get(total + score, 0) + n
    return ways[count]


def mann_whitney(x, y):
    normal = [stats.mannwhitneyu(x, y, alternative=s, method="asymptotic", use_continuity=c).pvalue
              for c in (True, False) for s in SIDES]
    u = stats.mannwhitneyu(x, y).statistic
    ranks = [int(r) for r in 2 * stats.rankdata(np.concatenate([x, y]))]
    offset = len(x) * (len(x) + 1)
    return [u, *tails(choices(ranks, len(x)), 2 * u + offset), *normal]


def signed_rank(x, mu, method):
    d = x - mu
    if method == "wilcox":
        d = d[d != 0]
    ranks = [int(r) for r in 2 * stats.rankdata(abs(d))]
    v = sum(r for r, e in zip(ranks, d) if e > 0)
    sums = {0: 1}
    for r, e in zip(ranks, d):
        if e != 0:
            entered = dict(sums)
            for total, n in sums.items():
                entered[total + r] = entered.get(total + r, 0) + n
            sums = entered
    normal = [stats.wilcoxon(d, zero_method=method, alternative=s, mode="approx").pvalue for s in SIDES]
    return [v / 2, *tails(sums, v), *normal]


def signed_rank_continuity(x, mu):
    d = x - mu
    return [stats.wilcoxon(d, correction=True, alternative=s, mode="approx").pvalue for s in SIDES]


def brunner_munzel(x, y):
    r = rank_compare_2indep(x, y)
    low, high = r.conf_int(alpha=0.1)
    return [r.prob1, r.statistic, r.df, r.pvalue, max(0, low), min(1, high)]


def brunner_munzel_less(x, y):
    r = rank_compare_2indep(x, y)
    t, p = r.test_prob_superior(0.6, alternative="smaller")
    return [t, p, min(1, r.prob1 + stats.t.ppf(0.9, r.df) * np.sqrt(r.var_prob))]


def superiority(x, y):
    r = rank_compare_2indep(x, y)
    p, se = r.prob1, np.sqrt(r.var_prob)
    logit = np.log(p / (1 - p))
    reach = stats.t.ppf(0.95, r.df) * se / (p * (1 - p))
    return [p, se, *(1 / (1 + np.exp(-(logit + s * reach))) for s in (-1, 1))]


def kruskal(name):
    h, p = stats.kruskal(*(v for key, v in GROUPS.items() if key[:-1] == name))
    return [h, sum(key[:-1] == name for key in GROUPS) - 1, p]


def least_rank(distribution, tail):
    """The innermost rank with no more than the tail beyond it."""
    total, below, rank = sum(distribution.values()), 0, 0
    while below + distribution.get(rank, 0) <= tail * total:
        below += distribution.get(rank, 0)
        rank += 1
    return rank


def from_rank(pairs, rank):
    pairs = np.sort(pairs)
    return [np.median(pairs), pairs[rank - 1], pairs[-rank]]


def walsh(x):
    return np.array([(a + b) / 2 for a, b in itertools.combinations_with_replacement(x, 2)])


def signed_rank_counts(n):
    sums = {0: 1}
    for r in range(1, n + 1):
        entered = dict(sums)
        for total, count in sums.items():
            entered[total + r] = entered.get(total + r, 0) + count
        sums = entered
    return sums


def mann_whitney_counts(m, n):
    return {s - m * (m + 1) // 2: c for s, c in choices(range(1, m + n + 1), m).items()}


def not_rejected(pairs, p_value):
    """The hull of the null values that a test keeps at 10 %: asked between all neighbouring pairs and beyond the ends."""
    ends = np.unique(pairs)
    kept = [(a, b) for a, b in zip(ends, ends[1:]) if p_value((a + b) / 2) >= 0.1]
    return [kept[0][0], kept[-1][1]]


def signed_rank_p(x, mu):
    d = x - mu
    ranks = stats.rankdata(abs(d))
    distance = abs(ranks[d > 0].sum() - ranks.sum() / 2)
    return 2 * stats.norm.sf((distance - 0.5) / np.sqrt((ranks**2).sum() / 4))


write_json({
    "mann_whitney_u_exact_less_greater_two_normal_corrected_two_less_greater_plain": named(mann_whitney),
    "mann_whitney_shifted_1": named(lambda x, y: mann_whitney(x - 1, y)),
    "signed_rank_left_out_v_exact_less_greater_two_normal_two_less_greater":
        {s: signed_rank(SETS[s], mu, "wilcox") for s, mu in CENTRES.items()},
    "signed_rank_ranked_first": {s: signed_rank(SETS[s], mu, "pratt") for s, mu in CENTRES.items()},
    "signed_rank_continuity_two_less_greater": {s: signed_rank_continuity(SETS[s], mu) for s, mu in CENTRES.items()},
    "brunner_munzel_p_t_df_p_low_high_90": named(brunner_munzel, OVERLAP),
    "brunner_munzel_less_than_60_t_p_high_90": named(brunner_munzel_less, OVERLAP),
    "superiority_p_se_low_high_90": named(superiority, OVERLAP),
    "kruskal_wallis_h_df_p": {s: kruskal(s) for s in ["ties", "small", "offset", "skewed"]},
    "location_exact_90": {s: from_rank(walsh(SETS[s]), least_rank(signed_rank_counts(len(SETS[s])), 0.05)) for s in LARGER},
    "shift_exact_90": named(lambda x, y: from_rank(np.subtract.outer(x, y).ravel(),
                                                  least_rank(mann_whitney_counts(len(x), len(y)), 0.05)), LARGE),
    "location_normal_90": {s: not_rejected(walsh(SETS[s]), lambda mu: signed_rank_p(SETS[s], mu)) for s in LARGER},
    "shift_normal_90": named(lambda x, y: not_rejected(np.subtract.outer(x, y).ravel(), lambda d: stats.mannwhitneyu(
        x - d, y, method="asymptotic").pvalue), LARGE),
}, "ranks-scipy.json")
