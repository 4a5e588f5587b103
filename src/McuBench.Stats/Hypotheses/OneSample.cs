using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests of the centre of one sample against a given value.</summary>
public static class OneSample
{
    /// <summary>Student's t test of a mean against <see cref="TTestOptions.NullValue"/> (student-1908). O(n).</summary>
    /// <remarks>Exact sizes need a normal population; the test is close to them once the count is large beside the
    /// skewness.</remarks>
    /// <param name="sample">The sample, two values or more.</param>
    /// <param name="options">What is asked; <see cref="TTestOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There is one value, or all values are equal: t is then undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An end of the interval is above the greatest number.</exception>
    public static TTestResult StudentT(Sample sample, TTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        return Of(sample.Values, "mean, Student t", "Values", nameof(sample), options);
    }

    /// <summary>Wilcoxon's signed-rank test of the centre of a symmetric population against
    /// <see cref="RankTestOptions.NullValue"/> (wilcoxon-1945). O(n log n), and O(n³) for the exact distribution.</summary>
    /// <remarks>
    /// <para>The size is right for any symmetric population; where the shape is skew it is the centre of the means of pairs
    /// that is tested, not the median. Automatic means exact for up to 50 ranks, ties and zeros included. A two-sided test at
    /// 5 % can't reject with fewer than 6 values.</para>
    /// <para>Deviations from the null value are compared as they are after rounding. With no value left to rank the p-value
    /// is 1.</para>
    /// </remarks>
    /// <param name="sample">The sample, one value or more.</param>
    /// <param name="zeros">What is done with values equal to the null value.</param>
    /// <param name="options">What is asked; <see cref="RankTestOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rule is not a named one, the exact distribution is wanted for more
    /// than 1000 values, or a distance from the null value is above the greatest number.</exception>
    public static RankTestResult SignedRank(
        Sample sample,
        ZeroRule zeros = ZeroRule.LeaveOut,
        RankTestOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(sample);
        return SignedRankTest.Of(sample.Values, zeros, nameof(sample), options);
    }

    /// <summary>The test of the mean of two finite values or more, named as the caller would.</summary>
    internal static TTestResult Of(
        ReadOnlySpan<double> values,
        string method,
        string what,
        string name,
        TTestOptions? options
    )
    {
        int n = values.Length;
        var deviations = SquaredDeviations.Of(values);
        double error = deviations.RootOver(n - 1) / Math.Sqrt(n);
        return error == 0
            ? throw new ArgumentException($"{what} must differ; all were equal, which leaves t undefined.", name)
            : TTest.Of(deviations.UnscaledMean, error, n - 1, n, method, options, name);
    }
}
