#!/usr/bin/python3
"""Noncentral t and studentized range: tails and quantiles as mpmath's high-precision integrals.

Run: /usr/bin/python3 distributions_integrals.py > ../distributions-integrals.json    (some minutes)

Noncentral t: the mean of the normal tail over the density of s = chi/sqrt(df), by Gauss-Legendre panels
over log s with 30 digits. Studentized range: the classical double integral, by Gauss-Legendre panels over log s and z
with 30 digits; for two means it is Student's t, which is checked. In both the two tails are integrated apart and must sum
to 1. R's and SciPy's values stand beside for comparison.
"""

import json
import subprocess
import sys

from mpmath import mp, mpf
from scipy import stats

mp.dps = 30


def text(value):
    return mp.nstr(value, 20, min_fixed=0, max_fixed=0)


def below(z):
    return mp.erfc(-z / mp.sqrt(2)) / 2


def phi(z):
    return mp.exp(-z * z / 2) / mp.sqrt(2 * mp.pi)


def chi_density(df):
    log_k = mp.log(2) + df / 2 * mp.log(df / 2) - mp.loggamma(df / 2)
    return lambda s: mp.exp(log_k + (df - 1) * mp.log(s) - df * s * s / 2)


class Rule:
    """Gauss-Legendre nodes on [-1, 1]."""

    def __init__(self, count):
        self.nodes = []
        for i in range(count):
            x = mp.cos(mp.pi * (mpf(i) + mpf(3) / 4) / (count + mpf(1) / 2))
            for _ in range(12):
                p0, p1 = mpf(1), x
                for n in range(2, count + 1):
                    p0, p1 = p1, ((2 * n - 1) * x * p1 - (n - 1) * p0) / n
                dp = count * (x * p1 - p0) / (x * x - 1)
                x -= p1 / dp
            self.nodes.append((x, 2 / ((1 - x * x) * dp * dp)))

    def integrate(self, f, a, b, panels):
        total = mpf(0)
        width = (b - a) / panels
        for i in range(panels):
            middle = a + (i + mpf(1) / 2) * width
            for x, w in self.nodes:
                total += w * f(middle + x * width / 2)
        return total * width / 2


RULE = Rule(24)


def noncentral_tails(t, df, delta):
    density = chi_density(df)
    sigma = 1 / mp.sqrt(2 * df)
    # In log s, from where s^df is below the digits wanted to where exp(-df s^2/2) is.
    low = -mpf(95) / df - 12 * sigma
    high = mp.log(1 + 60 * sigma) + 1 / df
    panels = int(min(600, max(30, 6 * (high - low) * mp.sqrt(2 * df + 4))))
    # The normal tail turns over within some 14 / |delta| of log s about log(delta / t): panels of their own there.
    edges = [low, high]
    if delta / t > 0:
        turn, reach = mp.log(delta / t), 14 / abs(delta)
        edges = [low] + sorted(e for e in (turn - reach, turn + reach) if low < e < high) + [high]

    def tail(sign):
        def part(u):
            return mp.exp(u) * density(mp.exp(u)) * below(sign * (t * mp.exp(u) - delta))

        return sum(RULE.integrate(part, a, b, 40 if b - a <= 29 / abs(delta) else panels) for a, b in zip(edges, edges[1:]))

    return tail(1), tail(-1)


class Range:
    """Range of k normal values: sums on fixed panels in z, the largest value, with their normal tails kept."""

    def __init__(self, k, widest):
        self.k = k
        self.points = []
        low, high = mpf(-10), max(mpf(10), widest / 2 + 10)
        panels = int(mp.ceil((high - low) / (4 if k <= 5 else 2)))
        width = (high - low) / panels
        for i in range(panels):
            for x, weight in RULE.nodes:
                z = low + (i + mpf(1) / 2) * width + x * width / 2
                self.points.append((z, weight * phi(z) * k * width / 2, below(z), below(-z)))

    def tails(self, w):
        n = self.k - 1
        lower = upper = mpf(0)
        for z, weight, a, above in self.points:
            b = below(z - w)
            c = 1 - b - above if z < w else below(w - z) - above
            c = a - b if z < 0 else c
            lower += weight * c**n
            upper += weight * (b * sum(a ** (n - 1 - j) * c**j for j in range(n)) if n < 12 else a**n - c**n)
        return lower, upper


def studentized_tails(q, k, df):
    density = chi_density(df)
    sigma = 1 / mp.sqrt(2 * df)
    low = -mpf(50) / df - 10 * sigma
    high = mp.log(1 + 11 * sigma) + mpf(1) / 2 / df
    inner = Range(k, q * mp.exp(min(high, 10 * sigma)))
    panels = int(mp.ceil((high - low) * max(1, mp.sqrt(2 * df + q * q / 2) / 4)))
    lower = upper = mpf(0)
    width = (high - low) / panels
    for i in range(panels):
        middle = low + (i + mpf(1) / 2) * width
        for x, weight in RULE.nodes:
            s = mp.exp(middle + x * width / 2)
            share = weight * s * density(s)
            if share < mpf(10) ** -60:
                continue
            one, other = inner.tails(q * s)
            lower += share * one
            upper += share * other
    lower, upper = lower * width / 2, upper * width / 2
    assert abs(lower + upper - 1) < mpf(10) ** -16, (q, k, df, lower + upper - 1)
    return lower, upper


def r(expression):
    out = subprocess.run(["Rscript", "-e", f"cat(sprintf('%.17g', {expression}))"], capture_output=True, text=True)
    return float(out.stdout)


def main():
    noncentral = []
    for df in [0.5, 1, 3, 9.5, 42, 1000, 1e6]:
        for delta in [0.5, -2, 8, 60]:
            law = stats.nct(df, delta)
            spread = mp.sqrt(1 + delta * delta / (2 * df))
            for z in [-10, -4, -1, 0.3, 2, 5]:
                t = float(delta + z * spread)
                lower, upper = noncentral_tails(mpf(t), mpf(df), mpf(delta))
                assert abs(lower + upper - 1) < mpf(10) ** -18, (t, df, delta, lower + upper - 1)
                noncentral.append(
                    {
                        "df": df,
                        "delta": delta,
                        "t": t,
                        "lowerTail": text(lower),
                        "upperTail": text(upper),
                        "scipyLowerTail": float(law.cdf(t)),
                    }
                )
        print("noncentral", df, file=sys.stderr)
    studentized = []
    for k, df, q in [
        (2, 5, 3.5), (2, 2, 8.0), (3, 2, 8.25), (3, 10, 3.875), (3, 10, 1.0), (3, 120, 3.375), (4, 16, 4.0), (4, 20, 5.0),
        (5, 20, 4.25), (5, 20, 12.0), (10, 10, 5.625), (10, 60, 4.625), (20, 30, 6.5), (6, 3.5, 12.0), (3, 1e4, 9.0),
        (50, 40, 7.0), (4, 1e6, 3.625),
    ]:
        lower, upper = studentized_tails(mpf(q), k, mpf(df))
        studentized.append(
            {
                "means": k,
                "df": df,
                "q": q,
                "lowerTail": text(lower),
                "upperTail": text(upper),
                "rUpperTail": r(f"ptukey({q!r}, {k}, {df!r}, lower.tail=FALSE)"),
            }
        )
        if k == 2:
            student = mp.betainc(mpf(df) / 2, mpf(1) / 2, 0, df / (df + mpf(q) ** 2 / 2), regularized=True)
            assert abs(upper / student - 1) < mpf(10) ** -16
        print("studentized", k, df, q, file=sys.stderr)
    json.dump({"noncentralT": noncentral, "studentizedRange": studentized}, sys.stdout, indent=0)
    print()


if __name__ == "__main__":
    main()
