namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of Grubbs' test for one outlier.</summary>
/// <param name="Index">The index of the value farthest out in the direction asked for; the first of equal ones.</param>
/// <param name="Value">That value, in the unit of the data.</param>
/// <param name="Statistic">G: its distance from the mean in standard deviations.</param>
/// <param name="CriticalValue">What G has to exceed at the level.</param>
/// <param name="PValue">The probability, for a normal population, of a G at least as large; an upper bound where it is
/// not exact, and at most 1.</param>
/// <param name="Level">The level of the test.</param>
/// <param name="Alternative">The direction: <see cref="Alternative.Greater"/> asks about the largest value,
/// <see cref="Alternative.Less"/> about the smallest.</param>
/// <param name="Count">The number of values.</param>
public sealed record GrubbsResult(
    int Index,
    double Value,
    double Statistic,
    double CriticalValue,
    double PValue,
    double Level,
    Alternative Alternative,
    int Count
)
{
    /// <summary>Whether the value is an outlier at the level.</summary>
    public bool IsOutlier => Statistic > CriticalValue;
}
