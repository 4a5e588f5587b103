"""Life of a cell: run time and its first-order standard uncertainty, at 50 digits. Derivatives by mpmath's own diff.

python3 cells_mpmath.py > ../cells-mpmath.json; the same figures come from cells.R, by other means."""
import json
from mpmath import mp, mpf, log, sqrt, diff, quad

mp.dps = 50
YEAR = mpf(31557600)


def life(values, path):
    c, u, d, s, q, idle, v, iq, e = values
    period, task = mpf(10), mpf("0.05")
    out = mpf(3)
    table = [(mpf("1e-5"), mpf("0.78")), (mpf("1e-3"), mpf("0.9")), (mpf("0.02"), mpf("0.94"))]

    def eta(load):
        for (x0, y0), (x1, y1) in zip(table, table[1:]):
            if load <= x1:
                return y0 + (y1 - y0) * log(load / x0) / log(x1 / x0)

    def drawn(load):
        if path == "direct":
            return load
        if path == "linear":
            return load + iq
        return iq + out * load / (eta(load) * e * v)

    mean = (drawn(q / task) * task + drawn(idle) * (period - task)) / period
    k = -log(1 - s) / YEAR
    # The time is the integral of dQ / (I + kQ) over what comes out: no closed form is taken over.
    return quad(lambda x: 1 / (mean + k * x), [c * (1 - u * d), c]), mean


estimates = [mpf(8640), mpf("0.85"), mpf("0.8"), mpf("0.02"), mpf("716e-6"), mpf("12e-6"), mpf("3.6"), None, mpf(1)]
shares = ["0.05", "0.04", "0.1", "0.5", None, "0.05", "0", "0.3", "0.02"]
result = {}
for path, iq in (("direct", "0"), ("linear", "1.5e-6"), ("switching", "0.4e-6")):
    x = list(estimates)
    x[7] = mpf(iq)
    variance = mpf(0)
    for i, share in enumerate(shares):
        sigma = mpf("2.2e-6") if share is None else mpf(share) * x[i] / sqrt(3)
        if sigma == 0:
            continue
        slope = diff(lambda t: life(x[:i] + [t] + x[i + 1:], path)[0], x[i])
        variance += (slope * sigma) ** 2
    seconds, mean = life(x, path)
    result[path] = {"runTime": float(seconds), "uncertainty": float(sqrt(variance)), "meanCurrent": float(mean)}
print(json.dumps(result, indent=2))
