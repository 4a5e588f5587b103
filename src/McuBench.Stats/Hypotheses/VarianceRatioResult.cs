namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of the F test of two variances.</summary>
/// <param name="Estimate">The ratio of variances with the interval that belongs to the alternative (from 0 or up to
/// infinity for a one-sided one).</param>
/// <param name="Statistic">F: the ratio over its null value.</param>
/// <param name="NumeratorDegreesOfFreedom">The first sample's count less one.</param>
/// <param name="DenominatorDegreesOfFreedom">The second sample's count less one.</param>
/// <param name="PValue">The probability, under the null hypothesis, of a ratio at least as far out; twice the smaller
/// tail for a two-sided test.</param>
/// <param name="Options">What was asked.</param>
public sealed record VarianceRatioResult(
    Estimate Estimate,
    double Statistic,
    double NumeratorDegreesOfFreedom,
    double DenominatorDegreesOfFreedom,
    double PValue,
    VarianceRatioOptions Options
);
