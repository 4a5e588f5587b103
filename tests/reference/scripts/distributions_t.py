#!/usr/bin/python3
"""Normal and Student t: density, tails and quantiles by mpmath.

Run: /usr/bin/python3 distributions_t.py > ../distributions-t.json

Tails come from two series of positive terms (DLMF 8.17.8), summed with as many digits as the answer needs, so that no
continued fraction, asymptotic expansion or library routine is trusted: for t^2 <= df the probability between 0 and t,
taken from 1/2 with 420 digits; beyond it the tail itself. A spot check against mpmath's own betainc stands at the end.
Every argument is a double, given in full; every value has 25 digits.
"""

import functools
import json
import sys

from mpmath import mp, mpf

DFS = ["0.1", "0.3", "0.5", "1", "1.5", "2", "3", "4.7", "10", "30", "100", "1000", "1e4", "1e6", "1e8"]
TAILS = [
    "1e-300", "1e-200", "1e-100", "1e-50", "1e-31", "1e-20", "1e-14", "1e-10", "1e-7", "1e-5", "1e-3", "0.01", "0.025",
    "0.05", "0.1", "0.2", "0.25", "0.3", "0.4", "0.45", "0.49", "0.499", "0.499999", "0.4999999999",
]
LARGEST = mpf(sys.float_info.max)


@functools.cache
def log_constant(df, digits):
    assert digits == mp.dps
    return mp.loggamma((df + 1) / 2) - mp.loggamma(df / 2) - mp.log(mp.pi * df) / 2


def density(t, df):
    return mp.exp(log_constant(df, mp.dps) - (df + 1) / 2 * mp.log1p(t * t / df))


def rising_series(numerator, denominator, x):
    term = total = mpf(1)
    n = 0
    while term > total * mpf(2) ** (-mp.prec - 5):
        term *= x * (numerator + n) / (denominator + n)
        total += term
        n += 1
    return total


def upper_tail(t, df):
    """P(T > t) for t >= 0."""
    if t * t <= df:
        with mp.workdps(420):
            y = t * t / (df + t * t)
            inner = t * density(t, df) * rising_series((df + 1) / 2, mpf(3) / 2, y)
            tail = mpf(1) / 2 - inner
        return +tail
    x = df / (df + t * t)
    return t * density(t, df) / df * rising_series((df + 1) / 2, df / 2 + 1, x)


def upper_quantile(p, df):
    """t with P(T > t) = p, by Newton's method in log t on log(tail); the tail is concave there."""
    t = mpf(1) if df < 100 else max(mpf(1) / 2 - p, mp.sqrt(-2 * mp.log(p)) - 1)
    for _ in range(300):
        tail = upper_tail(t, df)
        if tail < mpf(10) ** -360:
            # Too far for the digits carried.
            t *= mpf("0.7")
            continue
        hazard = t * density(t, df)
        if p > mpf("0.25"):
            centre = mpf(1) / 2 - tail
            step = mp.log((mpf(1) / 2 - p) / centre) * centre / hazard
        else:
            step = mp.log(tail / p) * tail / hazard
        # From the left Newton's method may go far beyond: damped.
        t *= mp.exp(max(min(step, 40), -40))
        if abs(step) < mpf(10) ** (-mp.dps + 8) or t > LARGEST * 1000:
            return t
    raise ArithmeticError(f"no quantile at {p}, {df}")


def text(value):
    return mp.nstr(value, 25, min_fixed=0, max_fixed=0)


def double(value):
    return float(value)


def normal_tail(z):
    return mp.erfc(z / mp.sqrt(2)) / 2


def main():
    mp.dps = 45
    t_cases = []
    for df_text in DFS:
        df = mpf(float(df_text))
        for tail_text in TAILS:
            p = mpf(float(tail_text))
            quantile = upper_quantile(p, df)
            if quantile > LARGEST:
                continue
            t = mpf(double(quantile))
            t_cases.append(
                {
                    "df": float(df_text),
                    "t": double(quantile),
                    "density": text(density(t, df)),
                    "upperTail": text(upper_tail(t, df)),
                    "probability": float(tail_text),
                    "quantile": text(quantile),
                }
            )
    normal_cases = []
    for tail_text in TAILS:
        p = mpf(float(tail_text))
        with mp.workdps(60):
            quantile = mp.findroot(lambda z: mp.log(normal_tail(z) / p), mp.sqrt(-2 * mp.log(p)) * (1 - 2 * p))
        z = mpf(double(quantile))
        normal_cases.append(
            {
                "z": double(quantile),
                "density": text(mp.npdf(z)),
                "upperTail": text(normal_tail(z)),
                "probability": float(tail_text),
                "quantile": text(quantile),
            }
        )
    for t, df in [(mpf(2), mpf(5)), (mpf("0.3"), mpf("0.7")), (mpf(9), mpf(3))]:
        own = upper_tail(t, df)
        library = mp.betainc(df / 2, mpf(1) / 2, 0, df / (df + t * t), regularized=True) / 2
        assert abs(own / library - 1) < mpf(10) ** -35, (t, df)
    elementary_cases = []
    for x_text in ["1e-300", "1e-17", "1e-9", "3e-5", "0.01", "0.099", "0.3", "0.7", "1", "1.5", "30", "1e6", "1e300"]:
        for x in {float(x_text), -float(x_text)}:
            if x > -1:
                v = mpf(x)
                with mp.workdps(700):
                    values = mp.log1p(v), mp.log1p(v) - v
                case = {"x": x, "log1p": text(values[0]), "log1pMinusX": text(values[1])}
                if abs(x) < 700:
                    case["expm1"] = text(mp.expm1(v))
                elementary_cases.append(case)
    gamma_cases = []
    for z_text in ["1e-10", "0.05", "0.3", "0.5", "0.99", "1", "2", "3.7", "9.99", "10", "25", "1e3", "5e7"]:
        z = mpf(float(z_text))
        stirling = mp.loggamma(z) - (z - mpf(1) / 2) * mp.log(z) + z - mp.log(2 * mp.pi) / 2
        gamma_cases.append(
            {
                "z": float(z_text),
                "stirlingError": text(stirling),
                "halfStepRatio": text(mp.exp(mp.loggamma(z + mpf(1) / 2) - mp.loggamma(z))),
            }
        )
    json.dump(
        {"elementary": elementary_cases, "gamma": gamma_cases, "normal": normal_cases, "studentT": t_cases},
        sys.stdout,
        indent=1,
    )
    print()


if __name__ == "__main__":
    main()
