using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Confidence intervals for the spread of a normal population (hahn-meeker-1991, section 4.6).</summary>
/// <remarks>They rest on normality however many values there are: heavy tails make them far too narrow, and more values
/// don't mend that.</remarks>
public static class SpreadInterval
{
    /// <summary>The variance with its chi-squared interval, equal tails. O(n).</summary>
    /// <param name="sample">The sample, two values or more; where all are equal there is no interval, and a note says so.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There is one value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or the variance or its upper end
    /// is above the greatest number.</exception>
    public static Estimate Variance(Sample sample, double confidence = 0.95)
    {
        Estimate deviation = StandardDeviation(sample, confidence);
        double variance = Check.Representable(deviation.Value * deviation.Value, "Variance", nameof(sample));
        const string method = "variance, chi-squared";
        return deviation.Interval is not { } ends
            ? new Estimate(variance, sample.Count, method) { Notes = deviation.Notes }
            : new Estimate(variance, sample.Count, method)
            {
                DegreesOfFreedom = deviation.DegreesOfFreedom,
                Interval = new Interval(
                    ends.Lower * ends.Lower,
                    Check.Representable(ends.Upper * ends.Upper, "Upper end", nameof(sample)),
                    confidence
                ),
            };
    }

    /// <summary>The standard deviation with its chi-squared interval, equal tails. O(n).</summary>
    /// <param name="sample">The sample, two values or more; where all are equal there is no interval, and a note says so.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There is one value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or the upper end is above the
    /// greatest number.</exception>
    public static Estimate StandardDeviation(Sample sample, double confidence = 0.95)
    {
        const string method = "standard deviation, chi-squared";
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        Check.Confidence(confidence);
        double df = sample.Count - 1;
        var deviations = SquaredDeviations.Of(sample.Values);
        double value = Check.Representable(deviations.RootOver(df), "Standard deviation", nameof(sample));
        if (value == 0)
        {
            return new Estimate(0, sample.Count, method) { Notes = [SpreadNotes.AllEqual] };
        }

        var chiSquared = ChiSquared.Of(df);
        double tail = (1 - confidence) / 2;
        return new Estimate(value, sample.Count, method)
        {
            DegreesOfFreedom = df,
            Interval = new Interval(
                deviations.RootOver(chiSquared.UpperQuantile(tail)),
                Check.Representable(deviations.RootOver(chiSquared.Quantile(tail)), "Upper end", nameof(sample)),
                confidence
            ),
        };
    }
}
