using McuBench.Stats.Descriptive;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests for the difference in level of two independent samples.</summary>
public static class TwoSample
{
    /// <summary>Welch's t test, which does not take the variances to be equal (welch-1947; degrees of freedom after
    /// satterthwaite-1946). O(n).</summary>
    /// <remarks>Swapping the samples turns the signs round. Exact sizes need normal populations; the test is close to
    /// them once the counts are large beside the skewness.</remarks>
    /// <param name="first">The first sample, two values or more.</param>
    /// <param name="second">The second sample, two values or more, in the same unit.</param>
    /// <param name="options">What is asked; <see cref="TTestOptions.Default"/> where null.</param>
    /// <returns>The test of first mean less second mean.</returns>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">A sample has one value, or neither sample spreads: t is then undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An end of the interval is above the greatest number.</exception>
    public static TTestResult Welch(Sample first, Sample second, TTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Check.AtLeast(first.Count, 2, nameof(first));
        Check.AtLeast(second.Count, 2, nameof(second));
        var error = WelchError.Of(first.Values, second.Values);
        return Test(first, second, error.Value, error.DegreesOfFreedom, "Welch t", options);
    }

    /// <summary>Student's t test with one pooled variance (student-1908), for populations known to spread alike. O(n).</summary>
    /// <remarks>Swapping the samples turns the signs round. Where the variances differ, its size is wrong unless the counts
    /// are equal and 10 or more: use <see cref="Welch"/>.</remarks>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample, in the same unit; three values or more in both together.</param>
    /// <param name="options">What is asked; <see cref="TTestOptions.Default"/> where null.</param>
    /// <returns>The test of first mean less second mean.</returns>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than three values, or neither sample spreads: t is then
    /// undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An end of the interval is above the greatest number.</exception>
    public static TTestResult Pooled(Sample first, Sample second, TTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Check.AtLeast(first.Count + second.Count, 3, nameof(second));
        double df = first.Count + second.Count - 2;
        double a = SquaredDeviations.Of(first.Values).RootOver(df);
        double b = SquaredDeviations.Of(second.Values).RootOver(df);
        double error = double.Hypot(a, b) * Math.Sqrt(1.0 / first.Count + 1.0 / second.Count);
        return Test(first, second, error, df, "pooled t", options);
    }

    /// <summary>Yuen's t test for the difference of two trimmed means (yuen-1974), which does not take the variances to
    /// be equal. O(n log n).</summary>
    /// <remarks>
    /// Target: the difference of the populations' trimmed means, which for symmetric populations is that of their centres.
    /// A few gross outliers cost little. The standard error of each mean comes from the winsorized variance. Swapping the
    /// samples turns the signs round. With nothing trimmed it is <see cref="Welch"/>.
    /// </remarks>
    /// <param name="first">The first sample; at least two values must be left.</param>
    /// <param name="second">The second sample, in the same unit; at least two values must be left.</param>
    /// <param name="fraction">The fraction to cut off at each end, from 0 to below 0.5; the number of values is rounded down.</param>
    /// <param name="options">What is asked; <see cref="TTestOptions.Default"/> where null.</param>
    /// <returns>The test of first trimmed mean less second trimmed mean.</returns>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fraction lies outside [0, 0.5), or an end of the interval
    /// is above the greatest number.</exception>
    /// <exception cref="ArgumentException">Fewer than two values of a sample are left, or what is left spreads in neither:
    /// t is then undefined.</exception>
    public static TTestResult YuenWelch(
        Sample first,
        Sample second,
        double fraction = 0.2,
        TTestOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var a = TrimmedMean.Of(first, fraction, nameof(first));
        var b = TrimmedMean.Of(second, fraction, nameof(second));
        var error = WelchError.Of(a.StandardError, a.DegreesOfFreedom, b.StandardError, b.DegreesOfFreedom);
        RefuseNoSpread(error.Value);
        return TTest.Of(
            a.Value - b.Value,
            error.Value,
            error.DegreesOfFreedom,
            first.Count + second.Count,
            "difference of trimmed means, Yuen-Welch t",
            options
        );
    }

    /// <summary>The Mann–Whitney test, also called Wilcoxon's rank-sum test (mann-whitney-1947; wilcoxon-1945).
    /// O(n log n), and O(n²m²) for the exact distribution of n and m values.</summary>
    /// <remarks>
    /// <para>Target: whether first values, less the null value, tend to be larger than second ones. Where both populations have
    /// one shape that is a shift; its size is then right for any shape. Where the shapes differ the size may not be: use
    /// <see cref="BrunnerMunzel"/>. Automatic means exact for up to 2,500 pairs, as 50 and 50 values have; ties or not, an
    /// exact p-value belongs to the orders that are possible given the ties. A two-sided test at 5 % can't reject with fewer
    /// than 4 values in each sample.</para>
    /// <para>Differences to the null value are compared as they are after rounding. Swapping the samples turns U round. With
    /// all values equal the p-value is 1.</para>
    /// </remarks>
    /// <param name="first">The first sample, one value or more.</param>
    /// <param name="second">The second sample, one value or more, in the same unit.</param>
    /// <param name="options">What is asked; <see cref="RankTestOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The exact distribution is wanted for more than 20,000 pairs, or a
    /// distance from the null value is above the greatest number.</exception>
    public static RankTestResult MannWhitney(Sample first, Sample second, RankTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return MannWhitneyTest.Of(first, second, options ?? RankTestOptions.Default);
    }

    /// <summary>The Brunner–Munzel test of the probability that a first value is above a second one, ties counted half
    /// (brunner-munzel-2000). O(n log n).</summary>
    /// <remarks>Takes neither the shapes nor the spreads to be equal, which <see cref="MannWhitney"/> does. Its t distribution is
    /// close from about ten values in each sample; below that it rejects somewhat too often. The statistic is positive where
    /// first values tend to be larger, and swapping the samples turns it round. The interval, cut off at 0 and 1, is the one that
    /// belongs to the test; one that never reaches beyond is <see cref="EffectSize.Superiority"/>.</remarks>
    /// <param name="first">The first sample, two values or more.</param>
    /// <param name="second">The second sample, two values or more, in the same unit.</param>
    /// <param name="options">What is asked; <see cref="BrunnerMunzelOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">A sample has one value, or all values of one sample lie beyond all of the other (or
    /// all are equal): t is then undefined.</exception>
    public static TTestResult BrunnerMunzel(Sample first, Sample second, BrunnerMunzelOptions? options = null) =>
        BrunnerMunzelTest.Of(first, second, options ?? BrunnerMunzelOptions.Default);

    private static TTestResult Test(
        Sample first,
        Sample second,
        double error,
        double df,
        string method,
        TTestOptions? options
    )
    {
        RefuseNoSpread(error);
        return TTest.Of(
            DifferenceOfMeans(first.Values, second.Values),
            error,
            df,
            first.Count + second.Count,
            $"difference of means, {method}",
            options
        );
    }

    /// <summary>First mean less second. A mean has the digits that its offset leaves; what the deviations from it leave over makes
    /// up for the others, which a small difference of large means needs.</summary>
    private static double DifferenceOfMeans(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double a = SquaredDeviations.MeanAlone(first);
        double b = SquaredDeviations.MeanAlone(second);
        double rest = MeanDeviation(first, a) - MeanDeviation(second, b);
        // Near the greatest number deviations may be above it, and digits below the last one are of no use.
        return a - b + (double.IsFinite(rest) ? rest : 0);
    }

    private static double MeanDeviation(ReadOnlySpan<double> values, double mean)
    {
        var sum = new CompensatedSum();
        foreach (double value in values)
        {
            sum.Add(value - mean);
        }

        return sum.Value / values.Length;
    }

    private static void RefuseNoSpread(double error)
    {
        if (error == 0)
        {
            throw new ArgumentException(
                "Values must differ within at least one of the samples; all were equal in each, which leaves t undefined.",
                "second"
            );
        }
    }
}
