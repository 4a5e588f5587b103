namespace McuBench.Stats.Hypotheses;

/// <summary>Tests for two readings of the same things, one pair for each thing.</summary>
public static class Paired
{
    /// <summary>The paired t test: Student's test of the mean of first less second (student-1908). O(n).</summary>
    /// <remarks>What the pairs share drops out; the pairs must be independent of one another. Swapping the samples turns
    /// the signs round. The count in the result is that of the pairs.</remarks>
    /// <param name="first">The first readings, two or more, in the order of the pairs.</param>
    /// <param name="second">The second readings, as many, in the same order and unit.</param>
    /// <param name="options">What is asked; <see cref="TTestOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">The counts differ, there is one pair, or all differences are equal: t is then
    /// undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A difference is above the greatest number.</exception>
    public static TTestResult StudentT(Sample first, Sample second, TTestOptions? options = null) =>
        OneSample.Of(
            Differences(first, second, 2),
            "mean of differences, paired t",
            "Differences",
            nameof(second),
            options
        );

    /// <summary>First less second of each pair.</summary>
    internal static double[] Differences(Sample first, Sample second, int minimum)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Check.AtLeast(first.Count, minimum, nameof(first));
        Check.SameCount(second.Count, first.Count, "Count of second readings", "first reading", nameof(second));
        double[] differences = new double[first.Count];
        for (int i = 0; i < differences.Length; i++)
        {
            differences[i] = Check.Representable(first.Values[i] - second.Values[i], "Difference", nameof(second));
        }

        return differences;
    }
}
