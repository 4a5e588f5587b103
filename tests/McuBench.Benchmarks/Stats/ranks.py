"""Times the work of RankBenchmarks.cs in NumPy and SciPy. Run: /usr/bin/python3 ranks.py"""
import time

import numpy as np
from scipy import stats
from scipy.stats import _mannwhitneyu

generator = np.random.default_rng(1)
first = generator.normal(100, 4, 3000)
second = generator.normal(101, 4, 3000)
few = generator.normal(100, 4, 50)
others = generator.normal(101, 4, 50)


def report(name, work, times=5):
    work()
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    print(f"{name:42} {sorted(taken)[times // 2] * 1000:9.3f} ms")


def all_pairs():
    pairs = np.partition((first[:, None] - second[None, :]).ravel(), [4_330_000, 4_500_000, 4_670_000])
    return pairs[4_500_000]


def cold():
    # SciPy keeps its counts: a fresh table gives the time from cold.
    _mannwhitneyu._mwu_state = type(_mannwhitneyu._mwu_state)()
    return stats.mannwhitneyu(few, others, method="exact")


report("shift and ends, n = m = 3000, all pairs", all_pairs)
report("exact Mann-Whitney, n = m = 50, from cold", cold)
report("exact signed rank, n = 50", lambda: stats.wilcoxon(few - 100, mode="exact"))
report("normal Mann-Whitney, n = m = 3000", lambda: stats.mannwhitneyu(first, second, method="asymptotic"))
