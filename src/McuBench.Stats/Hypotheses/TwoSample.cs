using McuBench.Stats.Descriptive;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests for the difference in mean of two independent samples.</summary>
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
    /// <remarks>Swapping the samples turns the signs round. Where the variances differ and the counts too, its size is
    /// wrong: use <see cref="Welch"/>.</remarks>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample, in the same unit; three values or more in both together.</param>
    /// <param name="options">What is asked; <see cref="TTestOptions.Default"/> where null.</param>
    /// <returns>The test of first mean less second mean.</returns>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than three values, or neither sample spreads: t is then
    /// undefined.</exception>
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
    /// <exception cref="ArgumentOutOfRangeException">The fraction lies outside [0, 0.5).</exception>
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
        double difference = SquaredDeviations.MeanAlone(first.Values) - SquaredDeviations.MeanAlone(second.Values);
        return TTest.Of(difference, error, df, first.Count + second.Count, $"difference of means, {method}", options);
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
