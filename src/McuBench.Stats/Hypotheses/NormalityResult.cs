namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a test that values come from a normal population of any mean and spread.</summary>
/// <param name="Statistic">W of Shapiro and Wilk, from 0 to 1 and small for other populations; A² of Anderson and Darling,
/// above 0 and large for other populations.</param>
/// <param name="PValue">The probability, for a normal population, of a statistic at least as far out.</param>
/// <param name="IsPValueBound">Whether the p-value is only known to be no larger than what stands in
/// <paramref name="PValue"/>.</param>
/// <param name="Count">The number of values.</param>
/// <param name="Method">The method's name, as in "Shapiro-Wilk".</param>
public sealed record NormalityResult(double Statistic, double PValue, bool IsPValueBound, int Count, string Method);
