namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of two one-sided tests of equivalence.</summary>
/// <param name="Estimate">The difference, or ratio, with its interval at confidence 1 − 2 × significance: the samples are
/// equivalent exactly when that interval lies within the margin (for rank tests, where there are no ties).</param>
/// <param name="Margin">What counts as equal.</param>
/// <param name="Significance">The chance of calling samples equivalent that are not, at most.</param>
/// <param name="StatisticAgainstLower">t, or U for rank tests, against the lower end of the margin; large when the estimate lies
/// above it.</param>
/// <param name="PValueAgainstLower">The p-value of the test that the true value is not above the lower end.</param>
/// <param name="StatisticAgainstUpper">t, or U, against the upper end of the margin; small when the estimate lies below
/// it.</param>
/// <param name="PValueAgainstUpper">The p-value of the test that the true value is not below the upper end.</param>
public sealed record EquivalenceResult(
    Estimate Estimate,
    EquivalenceMargin Margin,
    double Significance,
    double StatisticAgainstLower,
    double PValueAgainstLower,
    double StatisticAgainstUpper,
    double PValueAgainstUpper
)
{
    /// <summary>The p-value of equivalence: the larger of the two.</summary>
    public double PValue => Math.Max(PValueAgainstLower, PValueAgainstUpper);

    /// <summary>Whether both one-sided tests reject. False says that equality is not shown, not that there is a
    /// difference.</summary>
    public bool IsEquivalent => PValue <= Significance;
}
