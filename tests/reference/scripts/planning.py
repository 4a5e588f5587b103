"""The powers and sample sizes of planning.R again, by SciPy. Run: /usr/bin/python3 planning.py

Welch's test goes another way here: over the F ratio of the variances, with a noncentral t for each."""
import numpy as np
from scipy import integrate, optimize, stats

from data import REFERENCE, write_json
import json

R = json.loads((REFERENCE / "planning-r.json").read_text())


def t_power(df, ncp, alpha, sides):
    q = stats.t.isf(alpha / sides, df)
    return stats.nct.sf(q, df, ncp) + (stats.nct.cdf(-q, df, ncp) if sides == 2 else 0)


def least(f, wanted, n=2):
    while f(n) < wanted:
        n += 1
    return n


def over(name, inputs, f):
    """The same inputs as R had, each row's first ones, with results of our own after them."""
    return {key: [*row[:inputs], *np.atleast_1d(f(*row[:inputs]))] for key, row in R[name].items()}


def by_ratio(n1, n2, s1, s2, significance, given):
    v1, v2 = s1**2 / n1, s2**2 / n2

    def at(x):
        f = np.exp(x)
        b = (n1 + n2 - 2) / ((n1 - 1) * f + n2 - 1)
        w1, w2 = v1 * f * b, v2 * b
        df = (w1 + w2) ** 2 / (w1**2 / (n1 - 1) + w2**2 / (n2 - 1))
        q = stats.t.isf(significance, df) * np.sqrt((w1 + w2) / (v1 + v2))
        return f * stats.f.pdf(f, n1 - 1, n2 - 1) * given(q)

    return integrate.quad(at, -25, 25, points=[0], limit=1000, epsabs=1e-12, epsrel=1e-10)[0]


def welch(n1, n2, d, s1, s2):
    df, ncp = n1 + n2 - 2, d / np.sqrt(s1**2 / n1 + s2**2 / n2)
    return by_ratio(n1, n2, s1, s2, 0.025, lambda q: stats.nct.sf(q, df, ncp) + stats.nct.cdf(-q, df, ncp))


def owen(df, margin, d, q):
    top = min(margin / q, stats.chi.isf(1e-17, df) / np.sqrt(df))
    root = np.sqrt(df)

    def at(s):
        room = margin - q * s
        return root * stats.chi.pdf(s * root, df) * (stats.norm.cdf(room - d) - stats.norm.cdf(-room - d))

    return integrate.quad(at, 0, top, epsabs=1e-14, epsrel=1e-11, limit=500)[0]


def tost(n, margin, d):
    return owen(n - 1, margin * np.sqrt(n), d * np.sqrt(n), stats.t.isf(0.05, n - 1))


def welch_tost(n1, n2, margin, s1, s2, d):
    se = np.sqrt(s1**2 / n1 + s2**2 / n2)
    return by_ratio(n1, n2, s1, s2, 0.05, lambda q: owen(n1 + n2 - 2, margin / se, d / se, q))


def half(n, confidence):
    return stats.t.isf((1 - confidence) / 2, n - 1) / np.sqrt(n)


def assured(n, ratio, confidence):
    return stats.chi2.cdf((n - 1) * (ratio / half(n, confidence)) ** 2, n - 1)


def assured_count(spread, width, confidence, assurance):
    n = least(lambda n: assured(n, width / spread, confidence), assurance)
    return n, assured(n, width / spread, confidence)


write_json({
    "one_sample_n_effect_alpha_sides_power": over(
        "one_sample_n_effect_alpha_sides_power", 4, lambda n, d, a, s: t_power(n - 1, d * np.sqrt(n), a, s)),
    "pooled_n_n_effect_alpha_sides_power": over(
        "pooled_n_n_effect_alpha_sides_power", 5, lambda n, m, d, a, s: t_power(n + m - 2, d / np.sqrt(1 / n + 1 / m), a, s)),
    "one_sample_effect_power_count": over(
        "one_sample_effect_power_count", 2, lambda d, p: least(lambda n: t_power(n - 1, d * np.sqrt(n), 0.05, 2), p)),
    "pooled_effect_power_count": over(
        "pooled_effect_power_count", 2, lambda d, p: least(lambda n: t_power(2 * n - 2, d * np.sqrt(n / 2), 0.05, 2), p)),
    "pooled_n_power_effect": over(
        "pooled_n_power_effect", 2, lambda n, p: optimize.brentq(
            lambda d: t_power(2 * n - 2, d * np.sqrt(n / 2), 0.05, 2) - p, 0.01, 20, xtol=1e-14, rtol=1e-14)),
    "welch_n_n_difference_sd_sd_power": over("welch_n_n_difference_sd_sd_power", 5, welch),
    "tost_n_margin_difference_power": over("tost_n_margin_difference_power", 3, tost),
    "tost_margin_difference_power_count": over(
        "tost_margin_difference_power_count", 3, lambda m, d, p: least(lambda n: tost(n, m, d), p)),
    "welch_tost_n_n_margin_sd_sd_difference_power": over("welch_tost_n_n_margin_sd_sd_difference_power", 6, welch_tost),
    "mean_spread_halfwidth_confidence_count": over(
        "mean_spread_halfwidth_confidence_count", 3, lambda s, w, c: least(lambda n: -half(n, c) * s, -w)),
    "mean_spread_halfwidth_confidence_assurance_count_attained": over(
        "mean_spread_halfwidth_confidence_assurance_count_attained", 4, assured_count),
}, "planning-scipy.json")
