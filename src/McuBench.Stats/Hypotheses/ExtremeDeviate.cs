namespace McuBench.Stats.Hypotheses;

/// <summary>One step of the generalized extreme studentized deviate test: the value farthest from the mean of those that
/// are left.</summary>
/// <param name="Index">The value's index in the sample; one of them where several are equal.</param>
/// <param name="Value">The value, in the unit of the data.</param>
/// <param name="Statistic">R: its distance from the mean in standard deviations, both of the values that are left.</param>
/// <param name="CriticalValue">λ: what R is held against.</param>
public sealed record ExtremeDeviate(int Index, double Value, double Statistic, double CriticalValue);
