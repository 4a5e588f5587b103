namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a test whose statistic tends to a chi-square distribution under the null hypothesis.</summary>
/// <param name="Statistic">The statistic, 0 or more.</param>
/// <param name="DegreesOfFreedom">The degrees of freedom, 1 or more.</param>
/// <param name="PValue">The probability, under the null hypothesis, of a statistic at least as large.</param>
/// <param name="Count">The number of values of all samples together.</param>
/// <param name="Method">The method's name, as in "Kruskal-Wallis".</param>
public sealed record ChiSquaredTestResult(
    double Statistic,
    int DegreesOfFreedom,
    double PValue,
    int Count,
    string Method
);
