"""Times what ResamplingBenchmarks does, by SciPy. Run: /usr/bin/python3 resampling.py"""
import time

import numpy as np
from scipy import stats

rng = np.random.default_rng(1)
x, y = rng.normal(100, 4, 30), rng.normal(100, 4, 30)
a, b = rng.normal(100, 4, 10), rng.normal(100, 4, 10)


def best(f, times):
    f()
    took = []
    for _ in range(times):
        start = time.perf_counter()
        f()
        took.append(time.perf_counter() - start)
    return f"{1e3 * np.median(took):.2f} ms"


def bca(statistic):
    return lambda: stats.bootstrap(
        (x, y), lambda p, q, axis: statistic(p, axis=axis) / statistic(q, axis=axis), n_resamples=9999, method="BCa"
    )


def exact():
    return stats.permutation_test(
        (a, b), lambda p, q, axis: p.mean(axis=axis) - q.mean(axis=axis), n_resamples=np.inf, vectorized=True
    )


print("BCa ratio of medians, n = m = 30, 9999:", best(bca(np.median), 15))
print("BCa ratio of means, n = m = 30, 9999:", best(bca(np.mean), 15))
print("exact permutation, n = m = 10:", best(exact, 3))
