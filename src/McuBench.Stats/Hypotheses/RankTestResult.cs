namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a rank test.</summary>
/// <param name="Statistic">Mann and Whitney's U: the pairs in which the first sample's value is larger, ties counted half;
/// or the signed-rank sum: the ranks of the positive deviations.</param>
/// <param name="Z">The statistic less its mean, in its standard deviations, ties and continuity corrected for; null where the
/// p-value is exact, or where no other value of the statistic was possible.</param>
/// <param name="PValue">The probability, under the null hypothesis, of a statistic at least as far out; twice the smaller
/// tail for a two-sided test, 1 at most.</param>
/// <param name="Count">The number of values, or pairs, that were ranked.</param>
/// <param name="LeftOut">The number of values, or pairs, that took no part, being equal to the null value.</param>
/// <param name="Method">The method's name, which says whether it was exact and whether there were ties.</param>
/// <param name="Options">What was asked.</param>
public sealed record RankTestResult(
    double Statistic,
    double? Z,
    double PValue,
    int Count,
    int LeftOut,
    string Method,
    RankTestOptions Options
);
