using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Confidence intervals for how many times one population is the other.</summary>
public static class RatioInterval
{
    /// <summary>The ratio of two geometric means, with Welch's interval taken on the logarithms. O(n).</summary>
    /// <remarks>
    /// <para>Target: the ratio of the populations' geometric means, which is the ratio of their medians where the
    /// logarithms are symmetric, and the ratio of their means where both have one shape and differ by a factor. It is
    /// not the ratio of arithmetic means of differently shaped populations.</para>
    /// <para>Variances need not be equal (welch-1947; degrees of freedom after satterthwaite-1946). Swapping the samples
    /// gives the reciprocal. The standard error is that of the ratio by first-order propagation, ratio times the
    /// standard error of the difference in logarithms; the degrees of freedom are that difference's.</para>
    /// <para>Where a sample has one value, or neither sample spreads, there is no interval, and a note says so.</para>
    /// </remarks>
    /// <param name="numerator">The sample above the line, all values above 0.</param>
    /// <param name="denominator">The sample below the line, all values above 0, in the same unit.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, the confidence lies outside (0, 1), or the
    /// ratio or an end of its interval is not a finite number.</exception>
    public static Estimate WelchOnLogs(Sample numerator, Sample denominator, double confidence = 0.95)
    {
        const string method = "ratio of geometric means, Welch t on logarithms";
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        Check.Confidence(confidence);
        double[] above = Logarithms(numerator, nameof(numerator));
        double[] below = Logarithms(denominator, nameof(denominator));
        double difference = SquaredDeviations.MeanAlone(above) - SquaredDeviations.MeanAlone(below);
        double ratio = Math.Exp(difference);
        Check.Positive(ratio, "Ratio of the samples", nameof(numerator));
        int count = above.Length + below.Length;
        if (above.Length == 1 || below.Length == 1)
        {
            return new Estimate(ratio, count, method) { Notes = [SpreadNotes.OneValue] };
        }

        var error = WelchError.Of(above, below);
        if (error.Value == 0)
        {
            return new Estimate(ratio, count, method) { Notes = [SpreadNotes.AllEqual] };
        }

        double reach = StudentT.Of(error.DegreesOfFreedom).UpperQuantile((1 - confidence) / 2) * error.Value;
        return new Estimate(ratio, count, method)
        {
            StandardError = ratio * error.Value,
            DegreesOfFreedom = error.DegreesOfFreedom,
            Interval = new Interval(
                Math.Exp(difference - reach),
                Check.Representable(Math.Exp(difference + reach), "Upper end", nameof(numerator)),
                confidence
            ),
        };
    }

    private static double[] Logarithms(Sample sample, string name)
    {
        Check.Positive(sample.Values, name);
        double[] logs = new double[sample.Count];
        for (int i = 0; i < logs.Length; i++)
        {
            logs[i] = Math.Log(sample.Values[i]);
        }

        return logs;
    }
}
