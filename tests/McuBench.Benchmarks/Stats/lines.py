"""Times the work of RobustLineBenchmarks.cs in SciPy. Run: /usr/bin/python3 lines.py"""
import time

import numpy as np
from scipy import stats

x = np.arange(3000) / 64
y = 3 + x / 2 + np.random.default_rng(1).normal(0, 4, 3000)
for name, work in (("Theil-Sen, n = 3000", stats.theilslopes), ("Siegel, n = 3000", stats.siegelslopes)):
    start = time.perf_counter()
    work(y, x)
    print(f"{name:28} {(time.perf_counter() - start) * 1000:9.2f} ms")
