namespace McuBench.Stats.Descriptive;

/// <summary>The shape of a distribution of values: pure numbers that neither unit nor origin change (joanes-gill-1998).</summary>
/// <remarks>Every method refuses a value that is NaN or infinite, and values that are all equal, since shape is then
/// undefined. Both measures are far from robust: one outlier sets them.</remarks>
public static class Shape
{
    /// <summary>The skewness: 0 for symmetric values, above 0 with a long upper tail. O(n).</summary>
    /// <param name="values">The values: two or more, three for the adjusted form, not all equal.</param>
    /// <param name="bias">Whether it is adjusted.</param>
    /// <exception cref="ArgumentException">There are too few values, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the bias is not a named one.</exception>
    public static double Skewness(ReadOnlySpan<double> values, Bias bias = Bias.Adjusted)
    {
        Check.Named(bias);
        (double third, _) = Ratios(values, bias == Bias.Adjusted ? 3 : 2);
        double n = values.Length;
        return bias == Bias.Kept ? third : third * Math.Sqrt(n * (n - 1)) / (n - 2);
    }

    /// <summary>The kurtosis less 3: 0 for a normal population, above 0 with heavier tails. O(n).</summary>
    /// <param name="values">The values: two or more, four for the adjusted form, not all equal.</param>
    /// <param name="bias">Whether it is adjusted.</param>
    /// <exception cref="ArgumentException">There are too few values, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the bias is not a named one.</exception>
    public static double ExcessKurtosis(ReadOnlySpan<double> values, Bias bias = Bias.Adjusted)
    {
        Check.Named(bias);
        (_, double fourth) = Ratios(values, bias == Bias.Adjusted ? 4 : 2);
        double n = values.Length;
        return bias == Bias.Kept ? fourth - 3 : (n - 1) / ((n - 2) * (n - 3)) * ((n + 1) * (fourth - 3) + 6);
    }

    /// <summary>m₃/m₂^(3/2) and m₄/m₂², from deviations in units of the standard deviation, which can't overflow.</summary>
    private static (double Third, double Fourth) Ratios(ReadOnlySpan<double> values, int minimum)
    {
        Check.Finite(values);
        Check.AtLeast(values.Length, minimum, nameof(values));
        var deviations = SquaredDeviations.Of(values);
        if (deviations.Sum == 0)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Values must differ for a measure of shape; all {values.Length} were {values[0]}."
                ),
                nameof(values)
            );
        }

        double unit = Math.Sqrt(deviations.Sum / values.Length);
        var third = new CompensatedSum();
        var fourth = new CompensatedSum();
        foreach (double value in values)
        {
            double z = (Math.ScaleB(value, -deviations.Exponent) - deviations.Mean) / unit;
            third.Add(z * z * z);
            fourth.Add(z * z * z * z);
        }

        return (third.Value / values.Length, fourth.Value / values.Length);
    }
}
