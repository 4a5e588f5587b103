"""The worked examples of the clock split: bounds from single readings, the joint region, the best clock.

mpmath for the closed forms at 40 digits, SciPy for the same by optimisation (linear programs, a bounded minimum, a
quantile of F). Both must agree before anything is written. Writes ../clock.json.
"""

import json
import pathlib

import numpy as np
from mpmath import mp, mpf, sqrt
from scipy import optimize, stats

mp.dps = 40


def bounds(megahertz, seconds, step):
    """Least and greatest intercept and slope of all lines through the bars, by linear programs."""
    # Scaled so that both unknowns are near 1: microseconds against hertz would lose digits in the solver.
    x = 100 / np.array(megahertz)
    rows = np.vstack([np.column_stack([np.ones_like(x), x]), -np.column_stack([np.ones_like(x), x])])
    limits = np.concatenate([np.array(seconds) + step / 2, -(np.array(seconds) - step / 2)])
    out = []
    for objective in ([1, 0], [0, 1]):
        for sign in (1, -1):
            found = optimize.linprog(sign * np.array(objective), A_ub=rows, b_ub=limits, bounds=[(None, None)] * 2)
            if not found.success:
                return None
            out.append(sign * found.fun)
    return [out[0], out[1], out[2] * 1e8, out[3] * 1e8]


def corners(megahertz, seconds, step):
    """The same by trying every pair of bars' ends in rational arithmetic."""
    x = [1 / (mpf(m) * 10**6) for m in megahertz]
    low = [mpf(str(s)) - mpf(str(step)) / 2 for s in seconds]
    high = [mpf(str(s)) + mpf(str(step)) / 2 for s in seconds]
    kept = []
    for i in range(len(x)):
        for j in range(i):
            for yi in (low[i], high[i]):
                for yj in (low[j], high[j]):
                    slope = (yi - yj) / (x[i] - x[j])
                    intercept = yi - slope * x[i]
                    heights = [intercept + slope * v for v in x]
                    if all(l - mpf(10) ** -30 <= h <= u + mpf(10) ** -30 for l, h, u in zip(low, heights, high)):
                        kept.append((intercept, slope))
    if not kept:
        return None
    return [min(k[0] for k in kept), max(k[0] for k in kept), min(k[1] for k in kept), max(k[1] for k in kept)]


def agree(a, b, relative=1e-9):
    assert (a is None) == (b is None), (a, b)
    if a is not None:
        for u, v in zip(a, b):
            assert abs(float(u) - float(v)) <= relative * max(1e-6, abs(float(v))), (a, b)
    return None if b is None else [float(v) for v in b]


cases = []
for megahertz, seconds, step in [
    ([100, 200], [0.5, 0.3], 0.01),
    ([80, 120, 160], [1.15, 0.82, 0.65], 0.01),
    ([80, 120, 160, 240], [1.15, 0.82, 0.65, 0.48], 0.01),
    ([80, 120, 160], [1.15, 0.90, 0.65], 0.01),
]:
    cases.append(
        {
            "megahertz": megahertz,
            "seconds": seconds,
            "step": [step],
            "extremes": agree(bounds(megahertz, seconds, step), corners(megahertz, seconds, step)),
        }
    )

# The closed form for two clocks: estimate and half-width.
x1, x2 = mpf(1) / 10**8, mpf(1) / (2 * 10**8)
two = {
    "estimate": float((x1 * mpf("0.3") - x2 * mpf("0.5")) / (x1 - x2)),
    "halfWidth": float(mpf("0.01") / 2 * (x1 + x2) / (x1 - x2)),
}
assert abs(two["estimate"] - two["halfWidth"] - cases[0]["extremes"][0]) < 1e-12

# The edge of the joint region: twice the 95 % quantile of F with 2 and n degrees of freedom.
radii = {"degreesOfFreedom": [], "squaredRadius": []}
for df in (1, 2, 4, 7.5, 30, 1000):
    closed = mpf(df) * (mpf("0.05") ** (mpf(-2) / mpf(df)) - 1)
    assert abs(2 * stats.f.ppf(0.95, 2, df) - float(closed)) < 1e-7 * float(closed)
    radii["degreesOfFreedom"].append(df)
    radii["squaredRadius"].append(float(closed))

# Best clocks. t = fixed + N/f; waiting Iw + kw f, computing Ic + kc f.
def charge(f, fixed, cycles, iw, kw, ic, kc):
    return fixed * (iw + kw * f) + cycles / f * (ic + kc * f)


best = []
for fixed, cycles, iw, kw, ic, kc, low, high in [
    ("0.1", "40e6", "0.008", "2e-11", "0.006", "1.2e-10", 50e6, 1000e6),
    ("0.12", "36e6", "0.005", "5e-11", "0.009", "9e-11", 20e6, 800e6),
]:
    values = [mpf(v) for v in (fixed, cycles, iw, kw, ic, kc)]
    closed = sqrt(values[4] * values[1] / (values[3] * values[0]))
    plain = [float(v) for v in values]
    found = optimize.minimize_scalar(
        lambda u: charge(np.exp(u), *plain), bounds=(np.log(low), np.log(high)), method="bounded", options={"xatol": 1e-9}
    )
    assert abs(np.exp(found.x) / float(closed) - 1) < 1e-6, (np.exp(found.x), closed)
    best.append(
        {
            "fixedSeconds": plain[0],
            "cycles": plain[1],
            "waiting": plain[2:4],
            "computing": plain[4:6],
            "range": [low, high],
            "bestHertz": float(closed),
            "leastCoulombs": float(charge(closed, *values)),
        }
    )

# What a line through whole-run means makes of the first of these at 100, 200 and 400 MHz, weighted for equal relative
# scatter; the same by the normal equations in mpmath.
fixed, cycles, iw, kw, ic, kc = [mpf(v) for v in ("0.1", "40e6", "0.008", "2e-11", "0.006", "1.2e-10")]
clocks = [mpf(100) * 10**6, mpf(200) * 10**6, mpf(400) * 10**6]
means = [charge(f, fixed, cycles, iw, kw, ic, kc) / (fixed + cycles / f) for f in clocks]
slope, base = np.polyfit([float(f) for f in clocks], [float(m) for m in means], 1, w=[1 / float(m) for m in means])
weights = [1 / m**2 for m in means]
total = sum(weights)
centre = sum(w * f for w, f in zip(weights, clocks)) / total
level = sum(w * m for w, m in zip(weights, means)) / total
rise = sum(w * (f - centre) * (m - level) for w, f, m in zip(weights, clocks, means)) / sum(
    w * (f - centre) ** 2 for w, f in zip(weights, clocks)
)
assert abs(slope / float(rise) - 1) < 1e-9 and abs(base / float(level - rise * centre) - 1) < 1e-9
whole = {"megahertz": [100, 200, 400], "amperes": [float(m) for m in means], "bestHertz": float(np.sqrt(base * 40e6 / (slope * 0.1)))}

# How much a clock off the best costs, in parts of the variable part.
excess = [{"factor": float(k), "excess": float((k + 1 / k) / 2 - 1)} for k in (mpf("1.25"), mpf("1.5"), mpf(2))]

target = pathlib.Path(__file__).parent.parent / "clock.json"
target.write_text(
    json.dumps({"bounds": cases, "twoClocks": two, "radii": radii, "best": best, "wholeRun": whole, "excess": excess}, indent=1)
    + "\n"
)
print(json.dumps({"two": two, "best": best, "whole": whole, "bounds": cases}, indent=1))
