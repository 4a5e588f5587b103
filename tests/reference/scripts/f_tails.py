"""Upper tails of the F distribution at 30 digits, for tests/McuBench.Core.Tests/Conclusions/FTailTests.cs (mpmath)."""
from mpmath import betainc, gammainc, inf, mp, mpf

mp.dps = 30
CASES = [(4.1, 1, 7.5), (0.3, 2, 4), (2.5, 2, 33.3), (3.3, 3, 12), (9.7, 3, 2), (1.7, 4, 50), (6.2, 5, 8.25), (12.5, 6, 30), (2.1, 1, inf), (2.1, 2, inf), (3.9, 3, inf), (5.5, 6, inf)]
for ratio, m, nu in CASES:
    f = mpf(str(ratio))
    if nu == inf:
        p = gammainc(mpf(m) / 2, m * f / 2, inf, regularized=True)
    else:
        p = betainc(mpf(str(nu)) / 2, mpf(m) / 2, 0, mpf(str(nu)) / (mpf(str(nu)) + m * f), regularized=True)
    print(f"    [InlineData({ratio}, {m}, {'double.PositiveInfinity' if nu == inf else nu}, {mp.nstr(p, 17)})]")
