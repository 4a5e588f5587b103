namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a test whose statistic follows Fisher's F under the null hypothesis.</summary>
/// <param name="Statistic">F, 0 or more.</param>
/// <param name="NumeratorDegreesOfFreedom">The degrees of freedom above the line.</param>
/// <param name="DenominatorDegreesOfFreedom">The degrees of freedom below the line, a fraction for some methods.</param>
/// <param name="PValue">The probability, under the null hypothesis, of an F at least as large.</param>
/// <param name="Count">The number of values of all samples together.</param>
/// <param name="Method">The method's name, as in "Brown-Forsythe".</param>
public sealed record FTestResult(
    double Statistic,
    double NumeratorDegreesOfFreedom,
    double DenominatorDegreesOfFreedom,
    double PValue,
    int Count,
    string Method
);
