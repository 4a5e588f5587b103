namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a test of a trend.</summary>
/// <param name="S">Kendall's S: the pairs in which the later value is the larger, less those in which it is the smaller.</param>
/// <param name="Tau">S as a share of what it could be at most, given the ties (Kendall's τ_b), from −1 to 1; null where all
/// values are equal.</param>
/// <param name="Z">S in standard deviations, ties and continuity corrected for; null where the p-value is exact or all values
/// are equal.</param>
/// <param name="PValue">The probability, without a trend, of an S at least as far out; twice the smaller tail for a two-sided
/// test, 1 at most.</param>
/// <param name="IsExact">Whether the p-value comes from the exact distribution.</param>
/// <param name="Slope">Theil and Sen's slope, in the unit of the values for a unit of time, with its two-sided interval.</param>
/// <param name="Count">The number of values.</param>
/// <param name="Method">The method's name.</param>
/// <param name="Options">What was asked.</param>
public sealed record TrendResult(
    long S,
    double? Tau,
    double? Z,
    double PValue,
    bool IsExact,
    Estimate Slope,
    int Count,
    string Method,
    TrendOptions Options
);
