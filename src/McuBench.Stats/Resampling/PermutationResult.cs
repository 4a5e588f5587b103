namespace McuBench.Stats.Resampling;

/// <summary>What a permutation test found.</summary>
/// <param name="Statistic">The statistic of the data as they are.</param>
/// <param name="PValue">The share of splits with a statistic at least as far out; for random splits (b + 1)/(R + 1), which
/// is never 0 (phipson-smyth-2010).</param>
/// <param name="IsExact">Whether every split was looked at.</param>
/// <param name="Splits">The number of splits looked at, or there are.</param>
/// <param name="Method">The name of the method, as in "difference of means, exact permutation".</param>
/// <param name="Options">What was asked, the seed included.</param>
public sealed record PermutationResult(
    double Statistic,
    double PValue,
    bool IsExact,
    double Splits,
    string Method,
    PermutationOptions Options
);
