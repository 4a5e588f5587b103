using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
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

    private static TTestResult Test(
        Sample first,
        Sample second,
        double error,
        double df,
        string method,
        TTestOptions? options
    )
    {
        options ??= TTestOptions.Default;
        if (error == 0)
        {
            throw new ArgumentException(
                "Values must differ within at least one of the samples; all were equal in each, which leaves t undefined.",
                nameof(second)
            );
        }

        double difference = SquaredDeviations.MeanAlone(first.Values) - SquaredDeviations.MeanAlone(second.Values);
        var t = StudentT.Of(df);
        double statistic = (difference - options.NullValue) / error;
        double pValue = options.Alternative switch
        {
            Alternative.Less => t.Cdf(statistic),
            Alternative.Greater => t.UpperTail(statistic),
            _ => Math.Min(1, 2 * t.UpperTail(Math.Abs(statistic))),
        };
        bool twoSided = options.Alternative == Alternative.TwoSided;
        double reach = error * t.UpperQuantile((1 - options.Confidence) / (twoSided ? 2 : 1));
        var estimate = new Estimate(difference, first.Count + second.Count, $"difference of means, {method}")
        {
            StandardError = error,
            DegreesOfFreedom = df,
            Interval = new Interval(
                options.Alternative == Alternative.Less ? double.NegativeInfinity : difference - reach,
                options.Alternative == Alternative.Greater ? double.PositiveInfinity : difference + reach,
                options.Confidence
            ),
        };
        return new TTestResult(estimate, statistic, pValue, options);
    }
}
