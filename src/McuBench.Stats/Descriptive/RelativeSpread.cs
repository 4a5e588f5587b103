namespace McuBench.Stats.Descriptive;

/// <summary>Spread as a share of location: pure numbers for values on a scale with a true zero.</summary>
/// <remarks>Each method refuses a location that is not above 0, for which the share means nothing.</remarks>
public static class RelativeSpread
{
    // The parameter of every method here.
    private const string Values = "values";

    /// <summary>The coefficient of variation: standard deviation over mean. O(n).</summary>
    /// <param name="values">At least two values, each finite, with a mean above 0.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the mean is not above 0.</exception>
    public static double CoefficientOfVariation(ReadOnlySpan<double> values) =>
        Share(Scale.StandardDeviation(values), Location.Mean(values), "Mean of the values");

    /// <summary>The median absolute deviation, times 1.4826, over the median (arachchige-2022): the robust form that half
    /// of the values can't upset. O(n) on average.</summary>
    /// <param name="values">At least one value, each finite, with a median above 0.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the median is not above 0.</exception>
    public static double FromMedianAbsoluteDeviation(ReadOnlySpan<double> values) =>
        Share(Scale.MedianAbsoluteDeviation(values), Location.Median(values), "Median of the values");

    /// <summary>The interquartile range, times 0.7413, over the median (arachchige-2022, where the factor is rounded to
    /// 0.75). O(n) on average.</summary>
    /// <param name="values">At least one value, each finite, with a median above 0.</param>
    /// <param name="definition">Which of the nine quantiles the quartiles are.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the median is not above 0, or the
    /// definition is not one of the nine.</exception>
    public static double FromInterquartileRange(
        ReadOnlySpan<double> values,
        QuantileDefinition definition = QuantileDefinition.HyndmanFan7
    ) => Share(Scale.NormalizedInterquartileRange(values, definition), Location.Median(values), "Median of the values");

    private static double Share(double spread, double location, string what)
    {
        Check.Positive(location, what, Values);
        return Check.Representable(spread / location, "Relative spread", Values);
    }
}
