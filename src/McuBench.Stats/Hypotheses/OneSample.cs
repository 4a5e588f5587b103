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
    public static TTestResult StudentT(Sample sample, TTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        return Of(sample.Values, "mean, Student t", "Values", nameof(sample), options);
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
            : TTest.Of(deviations.UnscaledMean, error, n - 1, n, method, options);
    }
}
