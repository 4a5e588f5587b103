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
    /// <exception cref="ArgumentOutOfRangeException">A difference or an end of the interval is above the greatest
    /// number.</exception>
    public static TTestResult StudentT(Sample first, Sample second, TTestOptions? options = null) =>
        OneSample.Of(
            Differences(first, second, 2),
            "mean of differences, paired t",
            "Differences",
            nameof(second),
            options
        );

    /// <summary>Wilcoxon's signed-rank test of first less second (wilcoxon-1945). O(n log n), and O(n³) for the exact
    /// distribution.</summary>
    /// <remarks>As <see cref="OneSample.SignedRank"/> on the differences: they must be independent and spread symmetrically
    /// about their centre, which holds whenever both readings of a pair have one distribution but for a shift. Swapping the
    /// samples exchanges positive and negative ranks.</remarks>
    /// <param name="first">The first readings, one or more, in the order of the pairs.</param>
    /// <param name="second">The second readings, as many, in the same order and unit.</param>
    /// <param name="zeros">What is done with differences equal to the null value.</param>
    /// <param name="options">What is asked; <see cref="RankTestOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">The counts differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rule is not a named one, the exact distribution is wanted for more
    /// than 1000 pairs, or a difference is above the greatest number.</exception>
    public static RankTestResult SignedRank(
        Sample first,
        Sample second,
        ZeroRule zeros = ZeroRule.LeaveOut,
        RankTestOptions? options = null
    ) => SignedRankTest.Of(Differences(first, second, 1), zeros, nameof(second), options);

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
