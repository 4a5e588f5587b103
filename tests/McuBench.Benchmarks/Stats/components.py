"""Times the mean squares of VarianceComponentBenchmarks.cs by NumPy. Run: /usr/bin/python3 components.py"""
import timeit

import numpy as np

rng = np.random.default_rng(1)
y = 50 + 2 * rng.normal(size=(10, 1, 1)) + rng.normal(size=(10, 10, 1)) + 0.5 * rng.normal(size=(10, 10, 10))


def mean_squares():
    sessions = y.mean(axis=2)
    specimens = sessions.mean(axis=1)
    outer = 100 * ((specimens - specimens.mean()) ** 2).sum() / 9
    inner = 10 * ((sessions - specimens[:, None]) ** 2).sum() / 90
    within = ((y - sessions[:, :, None]) ** 2).sum() / 900
    return (outer - inner) / 100, (inner - within) / 10, within


print(f"NumPy, mean squares: {min(timeit.repeat(mean_squares, number=1000, repeat=5)):.3f} ms")
