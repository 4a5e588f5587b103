namespace McuBench.Stats.Hypotheses;

/// <summary>The comparison of two of several groups.</summary>
/// <param name="First">The index of the first group.</param>
/// <param name="Second">The index of the second group, above that of the first.</param>
/// <param name="Difference">First less second: value, standard error, and an interval that holds together with those of
/// all other pairs.</param>
/// <param name="Statistic">What was held against its distribution: q, the difference over its standard error times √2, for
/// comparisons by the studentized range; z, the difference over its standard error, for Dunn's.</param>
/// <param name="PValue">The p-value, two-sided and adjusted for the number of pairs.</param>
public sealed record PairComparison(int First, int Second, Estimate Difference, double Statistic, double PValue);
