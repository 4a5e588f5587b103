"""The analyses of nested.R again, from group means and sizes. Run: /usr/bin/python3 nested.py"""
import json

import numpy as np
import pandas as pd
from scipy import optimize, stats

from data import REFERENCE, write_json

DATA = json.loads((REFERENCE / "nested.json").read_text())


def analyse(name, factors):
    # Less the first value: the mean gets it back, and an offset costs no digits.
    y = np.array(DATA[name], float) - DATA[name][0]
    frame = pd.DataFrame({"y": y, "all": 0, "outer": DATA[name + "outer"]})
    frame["inner"] = [f"{o}.{i}" for o, i in zip(DATA[name + "outer"], DATA[name + "inner"])]
    frame["value"] = range(len(y))
    levels = ["all", *factors, "value"]
    n = len(y)
    means = [frame.groupby(level).y.transform("mean") for level in levels]
    sizes = [frame.groupby(level).y.transform("size") for level in levels]
    df = np.array([frame[b].nunique() - frame[a].nunique() for a, b in zip(levels, levels[1:])])
    ss = np.array([((b - a) ** 2).sum() for a, b in zip(means, means[1:])])
    ms = ss / df
    # Sum over values of the size of the inner group over that of the outer one.
    share = [[(inner / outer).sum() for inner in sizes[1:]] for outer in sizes]
    rows = len(df)
    e = np.array([[(min(share[k + 1][j], n) - share[k][j]) / df[k] if j >= k else 0 for j in range(rows)] for k in range(rows)])
    multiples = np.linalg.inv(e)
    multiples[abs(multiples) < 1e-12] = 0
    m = np.array(share[0]) / n @ multiples
    m[abs(m) < 1e-12] = 0
    variance = m @ ms
    tests = []
    for k in range(rows - 1):
        held = e[k].copy()
        held[k] = 0
        d = held @ multiples
        d[abs(d) < 1e-12] = 0
        below = d @ ms
        if below <= 0:
            tests += [None] * 3
            continue
        ddf = below**2 / ((d * ms) ** 2 / df).sum()
        tests += [ms[k] / below, ddf, stats.f.sf(ms[k] / below, df[k], ddf)]
    return {
        "ss_df": [*ss, *df],
        "components": list(multiples @ ms),
        "tests_f_df_p": tests,
        "mean_se_df": [
            np.mean(y) + DATA[name][0],
            *([np.sqrt(variance), variance**2 / ((m * ms) ** 2 / df).sum()] if variance > 0 else [None] * 2),
        ],
        "intervals_90": [end for row in multiples for end in interval(row, ms, df, 0.05)],
    }


def interval(m, ms, df, tail):
    """By sums over ordered pairs, positive multiples first; chi-square quantiles in place of F with infinite df."""
    reach = []
    for sign in (1, -1):
        c = sign * m
        fall = 1 - df / stats.chi2.isf(tail, df)
        rise = df / stats.chi2.ppf(tail, df) - 1
        total = (np.where(c > 0, fall, rise) ** 2 * (c * ms) ** 2).sum()
        for i in np.flatnonzero(c > 0):
            for k in np.flatnonzero(c < 0):
                # F of one over the other has the reciprocal quantile of the other over the one.
                f = stats.f.isf(tail, df[i], df[k])
                term = ((f - 1) ** 2 - (fall[i] * f) ** 2 - rise[k] ** 2) / f
                if sign < 0:
                    g = stats.f.ppf(tail, df[k], df[i])
                    term = ((1 - g) ** 2 - (rise[k] * g) ** 2 - fall[i] ** 2) / g
                total += term * abs(c[i] * c[k]) * ms[i] * ms[k]
            for k in np.flatnonzero(c > 0):
                if k > i:
                    a, b = df[i], df[k]
                    both = 1 - (a + b) / stats.chi2.isf(tail, a + b)
                    term = both**2 * (a + b) ** 2 / (a * b) - fall[i] ** 2 * a / b - fall[k] ** 2 * b / a
                    total += term / ((c > 0).sum() - 1) * c[i] * c[k] * ms[i] * ms[k]
        reach.append(np.sqrt(max(0, total)))
    return m @ ms - reach[0], m @ ms + reach[1]


def reml(name, factors):
    """By dense matrices: variances, criterion, the mean's standard error, and Satterthwaite's degrees of freedom of the mean
    and of each variance above 0, from the second derivatives of the likelihood."""
    y = np.array(DATA[name], float) - DATA[name][0]
    n = len(y)
    labels = {"outer": DATA[name + "outer"], "inner": list(zip(DATA[name + "outer"], DATA[name + "inner"]))}
    parts = [np.array([[float(a == b) for b in labels[f]] for a in labels[f]]) for f in factors] + [np.eye(n)]
    one = np.ones(n)

    def projection(variances):
        inverse = np.linalg.inv(sum(v * part for v, part in zip(variances, parts)))
        weight = one @ inverse @ one
        return inverse - np.outer(inverse @ one, inverse @ one) / weight, weight

    def criterion(roots):
        variances = roots**2
        if variances[-1] < 1e-9:
            return np.inf
        _, determinant = np.linalg.slogdet(sum(v * part for v, part in zip(variances, parts)))
        p, weight = projection(variances)
        return (n - 1) * np.log(2 * np.pi) + determinant + np.log(weight) + y @ p @ y

    best = None
    for start in (0.5, 1.5):
        found = np.full(len(parts), start)
        for _ in range(6):
            options = {"xatol": 1e-11, "fatol": 1e-13, "maxiter": 20000, "maxfev": 20000}
            found = optimize.minimize(criterion, found, method="Nelder-Mead", options=options).x
        best = found if best is None or criterion(found) < criterion(best) else best
    variances = best**2
    variances[variances < 1e-9] = 0
    p, weight = projection(variances)
    free = [k for k, v in enumerate(variances) if v > 0]
    py = p @ y
    bends = np.array([[2 * py @ parts[i] @ p @ parts[k] @ py - np.trace(p @ parts[i] @ p @ parts[k]) for k in free] for i in free])
    covariance = 2 * np.linalg.inv(bends)
    inverse_one = np.linalg.solve(sum(v * part for v, part in zip(variances, parts)), one)
    slope = np.array([inverse_one @ parts[k] @ inverse_one for k in free]) / weight**2
    df = [2 * variances[k] ** 2 / covariance[i, i] for i, k in enumerate(free)]
    return [*variances, criterion(np.sqrt(variances)), weight**-0.5, 2 * weight**-2 / (slope @ covariance @ slope), *df]


SETS = ["balanced", "unbalanced", "ties", "offset", "small"]
write_json({
    "two_factors": {name: analyse(name, ["outer", "inner"]) for name in SETS},
    "one_factor": {name: analyse(name, ["inner"]) for name in SETS},
    "reml_two_factors": {name: reml(name, ["outer", "inner"]) for name in SETS},
    "reml_one_factor": {name: reml(name, ["inner"]) for name in SETS},
}, "nested-scipy.json")
