"""Times the work of DistributionBenchmarks.cs in SciPy, microseconds a call. Run: /usr/bin/python3 distributions.py"""
import time

import numpy as np
from scipy import special, stats


def report(name, work, calls):
    work(calls)
    taken = []
    for _ in range(5):
        start = time.perf_counter()
        work(calls)
        taken.append(time.perf_counter() - start)
    print(f"{name:28} {sorted(taken)[2] / calls * 1e6:10.3f} us")


# The kernels on arrays, so that the interpreter's own time is not counted.
report("t quantile", lambda n: special.stdtrit(9.7, np.full(n, 0.975)), 10_000)
report("t tail", lambda n: special.stdtr(9.7, np.full(n, -2.3)), 10_000)
report("F quantile", lambda n: special.fdtri(4, 17.5, np.full(n, 0.95)), 10_000)
report("chi-square quantile", lambda n: special.chdtri(11.3, np.full(n, 0.05)), 10_000)
report("noncentral t quantile", lambda n: special.nctdtrit(9, 4, np.full(n, 0.95)), 1000)
report("studentized range cdf", lambda n: [stats.studentized_range.cdf(3.9, 4, 20) for _ in range(n)], 3)
report("studentized range quantile", lambda n: [stats.studentized_range.ppf(0.95, 4, 20) for _ in range(n)], 1)
