namespace McuBench.Stats.Hypotheses;

/// <summary>One row of an analysis of variance: what varies, and how much.</summary>
/// <param name="Source">What varies, as in "between groups".</param>
/// <param name="SumOfSquares">The sum of squares, 0 or more, in the square of the data's unit.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom, 1 or more.</param>
public sealed record AnovaRow(string Source, double SumOfSquares, int DegreesOfFreedom)
{
    /// <summary>The sum of squares over its degrees of freedom.</summary>
    public double MeanSquare => SumOfSquares / DegreesOfFreedom;
}
