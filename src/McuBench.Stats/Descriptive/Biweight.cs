namespace McuBench.Stats.Descriptive;

/// <summary>Tukey's biweight estimates in one step from the median: values lose weight smoothly and have none beyond a number
/// of median absolute deviations (mosteller-tukey-1977, chapter 10).</summary>
/// <remarks>The median absolute deviation is the raw one, without the factor 1.4826.</remarks>
public static class Biweight
{
    /// <summary>The biweight location. O(n) on average.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="tuning">Beyond how many median absolute deviations a value has no weight, above 0.</param>
    /// <returns>The location; the median where more than half of the values are equal.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the tuning is not above 0.</exception>
    public static double Location(ReadOnlySpan<double> values, double tuning = 6)
    {
        Check.Positive(tuning, "Tuning");
        double median = Descriptive.Location.Median(values);
        double deviation = Scale.MedianAbsoluteDeviation(values, Consistency.None);
        if (deviation == 0)
        {
            return median;
        }

        // Halves where a distance from the median might be above the greatest number.
        double part = deviation > double.MaxValue / 4 || Math.Abs(median) > double.MaxValue / 4 ? 0.5 : 1;
        var moved = new CompensatedSum();
        var weights = new CompensatedSum();
        foreach (double value in values)
        {
            double u = (part * value - part * median) / (part * deviation) / tuning;
            if (Math.Abs(u) < 1)
            {
                double weight = (1 - u * u) * (1 - u * u);
                moved.Add(weight * u);
                weights.Add(weight);
            }
        }

        // A tuning below 1 can leave no value of an even count any weight.
        return weights.Value == 0
            ? median
            : (part * median + part * deviation * (tuning * (moved.Value / weights.Value))) / part;
    }

    /// <summary>The biweight midvariance (wilcox-2017, section 3.12.1). O(n) on average.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="tuning">Beyond how many median absolute deviations a value has no weight, 6 or more: from about 5.4 on
    /// the denominator can't vanish.</param>
    /// <returns>The midvariance, in the square of the unit; 0 where more than half of the values are equal.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the tuning is below 6, or the result is
    /// above the greatest number.</exception>
    public static double Midvariance(ReadOnlySpan<double> values, double tuning = 9)
    {
        if (!(tuning >= 6 && double.IsFinite(tuning)))
        {
            throw Check.OutOfRange(nameof(tuning), "Tuning", "a finite number of 6 or more", tuning);
        }

        double median = Descriptive.Location.Median(values);
        double reach = tuning * Scale.MedianAbsoluteDeviation(values, Consistency.None);
        if (reach == 0)
        {
            return 0;
        }

        var above = new CompensatedSum();
        var below = new CompensatedSum();
        foreach (double value in values)
        {
            double u2 = (value - median) / reach * ((value - median) / reach);
            if (u2 < 1)
            {
                double left = 1 - u2;
                above.Add(u2 * left * left * left * left);
                below.Add(left * (1 - 5 * u2));
            }
        }

        double root = reach * Math.Sqrt(values.Length * above.Value) / Math.Abs(below.Value);
        return Check.Representable(root * root, "Biweight midvariance", nameof(values));
    }
}
