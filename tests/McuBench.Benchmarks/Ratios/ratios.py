"""The Python side of the table of ratios: NumPy, SciPy and statsmodels on the data that the C# side wrote.

Started by `dotnet run -c Release --project tests/McuBench.Benchmarks -- ratios`, which writes the name of a task to its
standard input and reads back `engine<TAB>seconds<TAB>values`, or an empty line where Python has no such task. Needs numpy and
scipy (Debian: python3-scipy).
"""

import sys
import time
from operator import itemgetter
from os.path import join

import numpy as np
import scipy.special
import scipy.stats
import scipy.stats._mannwhitneyu

FOLDER = sys.argv[1]
LEAST_SECONDS = 0.3
P7 = [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99]


def data(name):
    return np.fromfile(join(FOLDER, name + ".f64"), "<f8")


MILLION, X, Y, T, LINE = (data(name) for name in ("million", "x", "y", "t", "line"))
NESTED = data("nested")
DFS = np.arange(1, 10001) / 2


def shift_by_all_pairs():
    n, m = len(X), len(Y)
    pairs = np.subtract.outer(X, Y).ravel()
    reach = scipy.stats.norm.ppf(0.975) * np.sqrt(n * m * (n + m + 1) / 12)
    k = int(n * m / 2 - reach)
    ends = np.partition(pairs, [k, n * m // 2 - 1, n * m // 2, n * m - 1 - k])
    return (ends[n * m // 2 - 1] + ends[n * m // 2]) / 2, ends[k], ends[n * m - 1 - k]


def bca_of_ratio():
    def ratio(a, b, axis=-1):
        return np.median(a, axis=axis) / np.median(b, axis=axis)

    ends = scipy.stats.bootstrap(
        (X[:30], Y[:30]), ratio, n_resamples=9999, paired=False, method="BCa", random_state=np.random.default_rng(1)
    ).confidence_interval
    return ends.low, ends.high


def exact_mann_whitney():
    # SciPy keeps the table of counts from call to call; a new one is a cold start.
    scipy.stats._mannwhitneyu._mwu_state = scipy.stats._mannwhitneyu._MWU()
    return scipy.stats.mannwhitneyu(X[:50], Y[:50], method="exact").pvalue


def exact_permutation():
    def difference(a, b, axis):
        return a.mean(axis=axis) - b.mean(axis=axis)

    return scipy.stats.permutation_test(
        (X[:10], Y[:10]), difference, vectorized=True, n_resamples=np.inf
    ).pvalue


def nested_components():
    """The analysis of variance of 10 specimens of 10 sessions of 10 trials."""
    y = NESTED.reshape(10, 10, 10)
    sessions = y.mean(axis=2)
    specimens = sessions.mean(axis=1)
    within = ((y - sessions[:, :, None]) ** 2).sum() / 900
    between = 10 * ((sessions - specimens[:, None]) ** 2).sum() / 90
    above = 100 * ((specimens - specimens.mean()) ** 2).sum() / 9
    return (above - between) / 100, (between - within) / 10, within


TASKS = {
    "mean": ("NumPy", lambda: np.mean(MILLION)),
    "median": ("NumPy", lambda: np.median(MILLION)),
    "mad": ("SciPy", lambda: scipy.stats.median_abs_deviation(MILLION, scale="normal")),
    "quantiles": ("NumPy", lambda: np.quantile(MILLION, P7)),
    "shift": ("NumPy, all pairs", shift_by_all_pairs),
    "theil-sen": ("SciPy", lambda: itemgetter(0, 2, 3)(scipy.stats.theilslopes(LINE, T, 0.95))),
    "bca": ("SciPy", bca_of_ratio),
    "mann-whitney": ("SciPy", exact_mann_whitney),
    "signed-rank": ("SciPy", lambda: scipy.stats.wilcoxon(X[:50], Y[:50], mode="exact").pvalue),
    "permutation": ("SciPy", exact_permutation),
    "welch": ("SciPy", lambda: scipy.stats.ttest_ind(X[:30], Y[:30], equal_var=False).pvalue),
    "yuen": ("SciPy", lambda: scipy.stats.ttest_ind(X[:30], Y[:30], equal_var=False, trim=0.2).pvalue),
    "t-quantile": ("SciPy", lambda: scipy.special.stdtrit(DFS, 0.975).sum()),
    "range-cdf": ("SciPy", lambda: scipy.stats.studentized_range.cdf(3.5, 5, 20)),
    "range-quantile": ("SciPy", lambda: scipy.stats.studentized_range.ppf(0.95, 5, 20)),
    "nested": ("NumPy, balanced only", nested_components),
}


def shortest(work):
    """The shortest of several timings, each of calls enough to fill a few milliseconds."""
    start = time.perf_counter()
    result = work()
    once = time.perf_counter() - start
    calls = max(1, int(0.005 / max(once, 1e-7)))
    least, spent = once if calls == 1 else float("inf"), once
    while spent < LEAST_SECONDS:
        start = time.perf_counter()
        for _ in range(calls):
            result = work()
        taken = time.perf_counter() - start
        spent += taken
        least = min(least, taken / calls)
    return least, np.atleast_1d(result)


for line in sys.stdin:
    task = TASKS.get(line.strip())
    if task is None:
        print("", flush=True)
        continue
    seconds, values = shortest(task[1])
    print(task[0], repr(seconds), " ".join(repr(float(v)) for v in values), sep="\t", flush=True)
