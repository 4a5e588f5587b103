"""How well 95 % intervals for the mean of readings in steps hold the truth, and how wide they are.

Compares rules for the timer's step r by simulation: the truth lies anywhere on the grid, readings scatter normally with
sigma around it, n readings a study. For each rule: coverage of the mean's interval / its half-width in steps, and the
same for the difference of two means. The rule "dithered" is the one of ReadingMean; the others are kept to show why.
Run with numpy and scipy: python3 reading_mean_coverage.py [studies]
"""
import sys

import numpy as np
from scipy import stats

rng = np.random.default_rng(20261125)
INFINITE = 1e9
TERMS = np.arange(1, 9)[:, None]


def bias_left(scatter_variance):
    """Mean squared bias of the mean of rounded readings, in squared steps."""
    return (np.exp(-4 * np.pi**2 * TERMS**2 * scatter_variance) / (2 * np.pi**2 * TERMS**2)).sum(0)


def satterthwaite(u2, ofScatter, n):
    return np.where(ofScatter > 0, u2**2 / np.maximum(ofScatter**2 / (n - 1), 1e-300), INFINITE)


def rules(x, random_start):
    n = x.shape[1]
    s2 = x.var(1, ddof=1)
    a = s2 / n
    spread = np.ptp(x, axis=1) >= 2 - 1e-9
    floor = np.full(len(a), 1 / 6 / n if random_start else 1 / 12)
    left = np.zeros(len(a)) if random_start else bias_left(np.maximum(s2 - 1 / 12, 0))
    larger = np.maximum(a, floor)
    inside = np.where(a > 0, (n - 1) * np.minimum(larger / np.maximum(a, 1e-150), 1e8) ** 2, INFINITE)
    if n == 2:
        inside = np.full(len(a), 1.0)
    yield "scatter only", a, np.full(len(a), n - 1.0)
    yield "larger, n-1", larger, np.full(len(a), n - 1.0)
    yield "sum, W-S", a + floor, satterthwaite(a + floor, a, n)
    yield "dithered", np.where(spread, a + left, larger), np.where(spread, satterthwaite(a + left, a, n), inside)


def draw(n, sigma, studies, random_start):
    truth = 5 + rng.random(studies)
    times = truth[:, None] + sigma * rng.normal(size=(studies, n))
    return truth, np.floor(times + rng.random((studies, n))) if random_start else np.round(times)


def half(u2, df):
    return stats.t.ppf(0.975, np.clip(df, 1, INFINITE)) * np.sqrt(u2)


def main():
    studies = int(sys.argv[1]) if len(sys.argv) > 1 else 20000
    for random_start in (False, True):
        print("\nrandom start" if random_start else "rounded")
        print("n    r/sigma  " + "".join(f"{name:>36}" for name in ("scatter only", "larger, n-1", "sum, W-S", "dithered")))
        for n in (2, 3, 4, 5, 7, 10, 15, 30, 100, 300, 1000):
            m = max(2000, min(studies, studies * 60 // n))
            for ratio in (0.5, 1, 2, 3, 4, 5, 10, np.inf):
                a_truth, a = draw(n, 1 / ratio, m, random_start)
                b_truth, b = draw(n, 1 / ratio, m, random_start)
                ea, eb = a.mean(1) - a_truth, b.mean(1) - b_truth
                cells = []
                for (_, ua, da), (_, ub, db) in zip(rules(a, random_start), rules(b, random_start)):
                    h = half(ua, da)
                    both = ua + ub
                    df = np.where(both > 0, both**2 / np.maximum(ua**2 / da + ub**2 / db, 1e-300), 1)
                    hb = half(both, df)
                    cells.append(
                        f"{100 * np.mean(abs(ea) <= h + 1e-12):7.1f} % /{h.mean():6.3f}"
                        f"{100 * np.mean(abs(ea - eb) <= hb + 1e-12):8.1f} % /{hb.mean():6.3f}"
                    )
                print(f"{n:<5}{ratio:<8}" + "".join(f"{cell:>36}" for cell in cells))


if __name__ == "__main__":
    main()
