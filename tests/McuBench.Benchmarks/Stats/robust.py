"""Times the work of RobustBenchmarks.cs in NumPy. Run: /usr/bin/python3 robust.py"""
import time

import numpy as np

generator = np.random.default_rng(1)
million = generator.normal(100, 4, 1_000_000)
first = generator.normal(100, 4, 3000)
second = generator.normal(101, 4, 3000)


def report(name, work, times=5):
    work()
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    print(f"{name:28} {sorted(taken)[times // 2] * 1000:9.2f} ms")


report("mean", lambda: np.mean(million))
report("median", lambda: np.median(million))
report("mad", lambda: np.median(np.abs(million - np.median(million))))
report("7 quantiles", lambda: np.quantile(million, [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99]))
report("shift, n = m = 3000", lambda: np.median(first[:, None] - second[None, :]))
