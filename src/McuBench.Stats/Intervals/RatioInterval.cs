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

    /// <summary>The ratio of two means with Fieller's interval (fieller-1954): all ratios that a t test of
    /// mean above − ratio · mean below does not reject. O(n).</summary>
    /// <remarks>
    /// <para>Target: the ratio of the populations' arithmetic means. Exact for normal populations of equal variances;
    /// with separate variances the degrees of freedom are Satterthwaite's at the estimated ratio, which is close.</para>
    /// <para>Where the mean below the line is not clearly away from 0 (g = t²·s²(mean)/mean² of 1 or more), the ratios that
    /// are not rejected have no bounds; the interval is then absent and a note says so. It is absent as well where a sample
    /// has one value too few for its variance or neither sample spreads.</para>
    /// </remarks>
    /// <param name="numerator">The sample above the line.</param>
    /// <param name="denominator">The sample below the line, in the same unit, with a mean other than 0.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="variances">Whether each population has its own variance.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The mean below the line is 0, the confidence lies outside (0, 1), the
    /// assumption is not a named one, or the ratio or an end of its interval is not a finite number.</exception>
    public static Estimate Fieller(
        Sample numerator,
        Sample denominator,
        double confidence = 0.95,
        VarianceAssumption variances = VarianceAssumption.Separate
    )
    {
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        Check.Confidence(confidence);
        Check.Named(variances);
        return FiellerInterval.Of(numerator, denominator, confidence, variances);
    }

    /// <summary>The ratio of two medians, with an interval on logarithms from the spread of order statistics about each
    /// median (price-bonett-2002). O(n log n).</summary>
    /// <remarks>Target: the ratio of the populations' medians, whatever their shapes. Not for fewer than 5 values a sample, nor
    /// for readings in steps about as large as their spread: order statistics that fall on one step hide the spread, and the
    /// interval was seen to hold as seldom as in 77 %. The standard error is that of the ratio by first-order propagation. Where a sample has one value, or the order statistics used are equal in both, there is no
    /// interval, and a note says so.</remarks>
    /// <param name="numerator">The sample above the line, all values above 0.</param>
    /// <param name="denominator">The sample below the line, all values above 0, in the same unit.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, the confidence lies outside (0, 1), or the
    /// ratio or an end of its interval is not a finite number.</exception>
    public static Estimate Medians(Sample numerator, Sample denominator, double confidence = 0.95)
    {
        const string method = "ratio of medians, order statistics on logarithms";
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        Check.Confidence(confidence);
        Check.Positive(numerator.Values, nameof(numerator));
        Check.Positive(denominator.Values, nameof(denominator));
        double ratio = Location.Median(numerator) / Location.Median(denominator);
        Check.Positive(ratio, "Ratio of the samples", nameof(numerator));
        int count = numerator.Count + denominator.Count;
        if (numerator.Count == 1 || denominator.Count == 1)
        {
            return new Estimate(ratio, count, method) { Notes = [SpreadNotes.OneValue] };
        }

        double error = double.Hypot(ErrorOfLogMedian(numerator.Sorted), ErrorOfLogMedian(denominator.Sorted));
        if (error == 0)
        {
            return new Estimate(ratio, count, method) { Notes = [SpreadNotes.MiddleEqual] };
        }

        double factor = Math.Exp(Normal.Standard.UpperQuantile((1 - confidence) / 2) * error);
        return new Estimate(ratio, count, method)
        {
            StandardError = Check.Representable(ratio * error, "Standard error", nameof(numerator)),
            Interval = new Interval(
                ratio / factor,
                Check.Representable(ratio * factor, "Upper end", nameof(numerator)),
                confidence
            ),
        };
    }

    /// <summary>The standard error of the logarithm of a median (price-bonett-2001): half the distance of two order
    /// statistics at equal depth, over the normal quantile of the confidence that they have as limits.</summary>
    private static double ErrorOfLogMedian(ReadOnlySpan<double> sorted)
    {
        int n = sorted.Length;
        int depth = Math.Max(1, (int)Math.Round((n + 1) / 2.0 - Math.Sqrt(n)));
        double tail = Binomial.Of(n, 0.5).Cdf(depth - 1);
        return Math.Log(sorted[n - depth] / sorted[depth - 1]) / (2 * Normal.Standard.UpperQuantile(tail));
    }

    /// <summary>The logarithms of values that must all be above 0. O(n).</summary>
    internal static double[] Logarithms(Sample sample, string name)
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
