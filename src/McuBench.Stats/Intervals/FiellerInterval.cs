using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>The ratio of two means with Fieller's interval, for arguments already checked.</summary>
internal static class FiellerInterval
{
    internal static Estimate Of(Sample numerator, Sample denominator, double confidence, VarianceAssumption variances)
    {
        bool equal = variances == VarianceAssumption.Equal;
        string method = equal
            ? "ratio of means, Fieller, equal variances"
            : "ratio of means, Fieller, separate variances";
        var above = SquaredDeviations.Of(numerator.Values);
        var below = SquaredDeviations.Of(denominator.Values);
        double mean = below.UnscaledMean;
        if (mean == 0)
        {
            throw Check.OutOfRange(nameof(denominator), "Mean below the line", "other than 0", mean);
        }

        double ratio = above.UnscaledMean / mean;
        Check.Finite(ratio, "Ratio of the samples", nameof(numerator));
        int count = numerator.Count + denominator.Count;
        if (equal ? count < 3 : numerator.Count == 1 || denominator.Count == 1)
        {
            return new Estimate(ratio, count, method) { Notes = [SpreadNotes.OneValue] };
        }

        // Relative to the mean below the line, so that squares of the unit can't overflow.
        (double a, double b, double df) = equal
            ? Pooled(above, numerator.Count, below, denominator.Count, mean)
            : Separate(above, numerator.Count, below, denominator.Count, mean, ratio);
        double error = double.Hypot(a, ratio * b);
        if (error == 0)
        {
            return new Estimate(ratio, count, method) { Notes = [SpreadNotes.AllEqual] };
        }

        double t = StudentT.Of(df).UpperQuantile((1 - confidence) / 2);
        double g = t * b * (t * b);
        var estimate = new Estimate(ratio, count, method) { StandardError = error, DegreesOfFreedom = df };
        if (g >= 1)
        {
            string note = FormattableString.Invariant(
                $"The mean below the line is not resolved from 0 (g = {g:0.###}): the ratio has no bounds."
            );
            return estimate with { Notes = [note] };
        }

        // fieller-1954: the roots of (ratio − r)² = t² (a² + r² b²).
        double centre = ratio / (1 - g);
        double reach = t / (1 - g) * Math.Sqrt((1 - g) * a * a + ratio * b * (ratio * b));
        return estimate with
        {
            Interval = new Interval(
                Check.Representable(centre - reach, "Lower end", nameof(numerator)),
                Check.Representable(centre + reach, "Upper end", nameof(numerator)),
                confidence
            ),
        };
    }

    /// <summary>Relative standard errors of the two means from one variance.</summary>
    private static (double A, double B, double Df) Pooled(
        SquaredDeviations above,
        int n,
        SquaredDeviations below,
        int m,
        double mean
    )
    {
        double df = n + m - 2;
        double deviation = double.Hypot(above.RootOver(df), below.RootOver(df)) / Math.Abs(mean);
        return (deviation / Math.Sqrt(n), deviation / Math.Sqrt(m), df);
    }

    /// <summary>Relative standard errors of the two means, each from its own variance.</summary>
    private static (double A, double B, double Df) Separate(
        SquaredDeviations above,
        int n,
        SquaredDeviations below,
        int m,
        double mean,
        double ratio
    )
    {
        double a = above.RootOver(n - 1) / Math.Sqrt(n) / Math.Abs(mean);
        double b = below.RootOver(m - 1) / Math.Sqrt(m) / Math.Abs(mean);
        var both = WelchError.Of(a, n - 1, Math.Abs(ratio) * b, m - 1);
        return (a, b, both.DegreesOfFreedom);
    }
}
