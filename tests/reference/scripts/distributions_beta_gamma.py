#!/usr/bin/python3
"""Gamma, chi-square, beta, F and binomial: density, tails and quantiles by mpmath.

Run: /usr/bin/python3 distributions_beta_gamma.py > ../distributions-beta-gamma.json    (a few minutes)

Tails come from series of positive terms (DLMF 8.11.4 and 8.17.8), summed with as many digits as the answer needs; the
larger tail is one less the smaller. SciPy only gives the places near which quantiles are looked for. Every argument is
a double, given in full; every value has 25 digits.
"""

import functools
import json
import sys

from mpmath import mp, mpf
from scipy import stats

TAILS = [1e-300, 1e-100, 1e-30, 1e-12, 1e-6, 1e-3, 0.025, 0.1, 0.3, 0.5]
DIGITS = 40


def text(value):
    return mp.nstr(value, 25, min_fixed=0, max_fixed=0)


def series(first, ratio):
    """Sum of positive terms, from the first and the function n -> term n+1 over term n."""
    term = total = first
    n = 0
    limit = mpf(2) ** (-mp.prec - 5)
    while True:
        r = ratio(n)
        term *= r
        total += term
        n += 1
        if term < total * limit and r < 1:
            return total


@functools.cache
def log_gamma(z, digits):
    """log gamma at the working precision, which is part of the key."""
    assert digits == mp.dps
    return mp.loggamma(z)


class Gamma:
    """Shape a, scale 1."""

    def __init__(self, a):
        self.a = self.middle = mpf(a)

    def density_in_log(self, x):
        return mp.exp(self.a * mp.log(x) - x - log_gamma(self.a, mp.dps))

    def tails(self, x):
        def lower():
            return self.density_in_log(x) * series(1 / self.a, lambda n: x / (self.a + n + 1))

        with mp.workdps(DIGITS + 20):
            low = lower()
        if low < mpf("0.9"):
            return +low, 1 - low
        with mp.workdps(DIGITS + 330):
            up = 1 - lower()
        return +low, +up

    def guess(self, p, upper):
        law = stats.gamma(float(self.a))
        return law.isf(p) if upper else law.ppf(p)


class Beta:
    """Shapes a, b, in the odds x/(1 - x)."""

    def __init__(self, a, b):
        self.a, self.b = mpf(a), mpf(b)
        self.middle = self.a / self.b

    def density_in_log(self, odds):
        a, b = self.a, self.b
        log_beta = log_gamma(a, mp.dps) + log_gamma(b, mp.dps) - log_gamma(a + b, mp.dps)
        return mp.exp(a * mp.log(odds) - (a + b) * mp.log1p(odds) - log_beta)

    def tails(self, odds):
        a, b = self.a, self.b

        def lower():
            x = odds / (1 + odds)
            return self.density_in_log(odds) * series(1 / a, lambda n: x * (a + b + n) / (a + 1 + n))

        def upper():
            y = 1 / (1 + odds)
            return self.density_in_log(odds) * series(1 / b, lambda n: y * (a + b + n) / (b + 1 + n))

        direct, swapped = (lower, upper) if odds <= 1 else (upper, lower)
        with mp.workdps(DIGITS + 20):
            near = direct()
        if near > mpf("0.9"):
            if min(a, b) > 1000:
                with mp.workdps(DIGITS + 20):
                    far = swapped()
            else:
                with mp.workdps(DIGITS + 330):
                    far = 1 - direct()
        else:
            far = 1 - near
        return (+near, +far) if odds <= 1 else (+far, +near)

    def guess(self, p, upper):
        law = stats.f(2 * float(self.a), 2 * float(self.b))
        f = law.isf(p) if upper else law.ppf(p)
        back = law.sf(f) if upper else law.cdf(f)
        if 0 < f < 1e305 and 0.5 * p < back < 2 * p:
            return f * float(self.a) / float(self.b)
        # Where SciPy fails: the leading power of the tail if it is a slow one, else doubling from the mean.
        a, b = (self.b, self.a) if upper else (self.a, self.b)
        if a <= b:
            log_beta = log_gamma(a, mp.dps) + log_gamma(b, mp.dps) - log_gamma(a + b, mp.dps)
            return mp.exp((mp.log(p * a) + log_beta) / a * (-1 if upper else 1))
        odds = self.a / self.b
        while self.tails(odds)[upper] > p:
            odds *= 2 if upper else mpf(1) / 2
        return odds


def quantile(law, p, upper):
    """Newton's method in the logarithm on log(tail), damped; None where a double can't hold it."""
    p = mpf(p)
    x = mpf(law.guess(float(p), upper))
    if x == 0:
        x = mp.exp((mp.log(p) + log_gamma(law.a + 1, mp.dps)) / law.a)
    if not mpf("1e-305") < x < mpf("1e305"):
        return None
    low, high = mpf("1e-320"), mpf("1e320")
    for _ in range(400):
        tail = law.tails(x)[upper]
        if (tail > p) == upper:
            low = x
        else:
            high = x
        following = mpf(0)
        if tail > mpf(10) ** -310:
            step = mp.log(tail / p) * tail / law.density_in_log(x) * (1 if upper else -1)
            following = x * mp.exp(max(min(step, 20), -20))
            if abs(step) < mpf(10) ** -30:
                return following
        if not low < following < high:
            # Newton's method has left the bracket: halve it on the logarithmic scale, towards the middle of the law.
            following = mp.sqrt((max(low, law.middle) if upper else low) * (high if upper else min(high, law.middle)))
        x = following
        if not mpf("1e-305") < x < mpf("1e305"):
            return None
    raise ArithmeticError(f"no quantile at {p}")


def gamma_cases():
    out = []
    for a in [0.05, 0.3, 0.5, 1, 2.5, 7, 30, 59.5, 60.5, 300, 2900, 5000, 1e6, 5e7]:
        for upper in (False, True):
            for p in TAILS:
                law = Gamma(a)
                x = quantile(law, p, upper)
                if x is None:
                    continue
                low, up = law.tails(mpf(float(x)))
                out.append(
                    {
                        "shape": a,
                        "x": float(x),
                        "density": text(law.density_in_log(mpf(float(x))) / mpf(float(x))),
                        "lowerTail": text(low),
                        "upperTail": text(up),
                        "probability": p,
                        "isUpper": upper,
                        "quantile": text(x),
                    }
                )
        print("gamma", a, file=sys.stderr)
    return out


def beta_cases(pairs, tails):
    out = []
    for a, b in pairs:
        law = Beta(a, b)
        for upper in (False, True):
            for p in tails:
                odds = quantile(law, p, upper)
                if odds is None:
                    continue
                # F with 2a and 2b degrees of freedom: f = odds b/a.
                f = float(odds * law.b / law.a)
                f_odds = mpf(f) * law.a / law.b
                entry = {
                    "a": a,
                    "b": b,
                    "f": f,
                    "density": text(law.density_in_log(f_odds) / f),
                    "probability": p,
                    "isUpper": upper,
                    "quantile": text(odds * law.b / law.a),
                    "betaQuantile": text(odds / (1 + odds)),
                }
                entry["lowerTail"], entry["upperTail"] = map(text, law.tails(f_odds))
                x = float(odds / (1 + odds))
                if x < 1:
                    x_odds = mpf(x) / (1 - mpf(x))
                    entry["x"] = x
                    entry["betaDensity"] = text(law.density_in_log(x_odds) / (mpf(x) * (1 - mpf(x))))
                    entry["betaLowerTail"], entry["betaUpperTail"] = map(text, law.tails(x_odds))
                out.append(entry)
        print("beta", a, b, file=sys.stderr)
    return out


def binomial_cases():
    out = []
    for n, p, counts in [
        (1, 0.3, [0]),
        (10, 0.5, [0, 3, 5, 9]),
        (12, 0.1, [0, 1, 2, 11]),
        (50, 0.02, [0, 1, 5, 30]),
        (299, 0.99, [280, 290, 298]),
        (1000, 0.5, [60, 400, 499, 500, 501, 700, 950]),
        (10**8, 1e-8, [0, 1, 5, 60]),
        (10**8, 0.25, [24_850_000, 25_000_000, 25_010_000, 25_150_000]),
    ]:
        for k in counts:
            law = Beta(k + 1, n - k)
            q = mpf(p)
            upper, lower = law.tails(q / (1 - q))
            mass = mp.exp(
                mp.loggamma(n + 1) - mp.loggamma(k + 1) - mp.loggamma(n - k + 1) + k * mp.log(q) + (n - k) * mp.log1p(-q)
            )
            out.append(
                {
                    "trials": n,
                    "probability": p,
                    "successes": k,
                    "mass": text(mass),
                    "lowerTail": text(lower),
                    "upperTail": text(upper),
                }
            )
    return out


def main():
    mp.dps = DIGITS
    small = [0.05, 0.5, 1, 2.5, 20, 70, 2000]
    pairs = [(a, b) for a in small for b in small]
    far = [(0.05, 5e7), (5e7, 0.05), (0.5, 1e6), (1e6, 2), (30, 5e7), (5e7, 55), (100, 1e6), (1e5, 300)]
    json.dump(
        {
            "gamma": gamma_cases(),
            "beta": beta_cases(pairs, TAILS) + beta_cases(far, TAILS) + beta_cases([(5e7, 5e7)], [1e-300, 1e-12, 0.3]),
            "binomial": binomial_cases(),
        },
        sys.stdout,
        indent=0,
    )
    print()


if __name__ == "__main__":
    main()
