namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a t test.</summary>
/// <param name="Estimate">The mean, or difference of means, that was tested: value, standard error, degrees of freedom,
/// and the interval that belongs to the alternative (one end infinite for a one-sided one).</param>
/// <param name="Statistic">t: the estimate less the null value, over its standard error.</param>
/// <param name="PValue">The probability, under the null hypothesis, of a statistic at least as far out.</param>
/// <param name="Options">What was asked.</param>
public sealed record TTestResult(Estimate Estimate, double Statistic, double PValue, TTestOptions Options);
