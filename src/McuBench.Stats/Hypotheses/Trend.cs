using System.Globalization;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests of whether values rise or fall as time goes on.</summary>
public static class Trend
{
    private const int MostByDefault = 40;
    private const int MostExact = 200;

    /// <summary>The Mann–Kendall test of a monotonic trend in values that were taken in equal steps of time (mann-1945;
    /// kendall-1975), with Theil and Sen's slope for one step. O(n log n), and O(n⁴) for the exact distribution.</summary>
    /// <remarks>Only which of two values is the larger counts, so that any rise or fall shows that goes one way, straight or not.
    /// The p-value takes the values as independent without the trend: where they are correlated in series it is too small. Ties
    /// count neither way. Automatic means exact, given the ties, for up to 40 values; a two-sided test at 5 % can't reject with
    /// fewer than 5. Reversing the order turns the signs round. With all values equal the p-value is 1.</remarks>
    /// <param name="sample">The values in the order of time, two or more.</param>
    /// <param name="options">What is asked; <see cref="TrendOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There is one value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The exact distribution is wanted for more than 200 values, or the slope is
    /// above the greatest number.</exception>
    public static TrendResult MannKendall(Sample sample, TrendOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        double[] places = new double[sample.Count];
        for (int i = 0; i < places.Length; i++)
        {
            places[i] = i + 1;
        }

        return Test(places, sample, options ?? TrendOptions.Default);
    }

    /// <summary>The Mann–Kendall test of values that were taken at given times, with Theil and Sen's slope for a unit of time.
    /// O(n log n), and O(n⁴) for the exact distribution.</summary>
    /// <remarks>As for equal steps. The order of the pairs does not count.</remarks>
    /// <param name="times">The times, all different, in any order.</param>
    /// <param name="sample">The values, one for each time, two or more.</param>
    /// <param name="options">What is asked; <see cref="TrendOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">There is one value, the counts differ, or two times are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The exact distribution is wanted for more than 200 values, or the slope is
    /// above the greatest number.</exception>
    public static TrendResult MannKendall(Sample times, Sample sample, TrendOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        Check.SameCount(times.Count, sample.Count, "Count of times", "value", nameof(times));
        double[] sorted = times.Values.ToArray();
        double[] values = sample.Values.ToArray();
        sorted.AsSpan().Sort(values.AsSpan());
        for (int i = 1; i < sorted.Length; i++)
        {
            if (sorted[i] == sorted[i - 1])
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"Times must differ; {sorted[i]} was given twice."),
                    nameof(times)
                );
            }
        }

        return Test(sorted, Sample.Of(values), options ?? TrendOptions.Default);
    }

    private static TrendResult Test(ReadOnlySpan<double> times, Sample sample, TrendOptions options)
    {
        int n = sample.Count;
        bool isExact =
            options.Distribution == NullDistribution.Exact
            || (options.Distribution == NullDistribution.Automatic && n <= MostByDefault);
        if (isExact && n > MostExact)
        {
            throw Check.OutOfRange(
                nameof(sample),
                "Count of values for the exact distribution",
                FormattableString.Invariant($"at most {MostExact}"),
                n
            );
        }

        int[] groups = Groups(sample.Sorted);
        double tiedPairs = 0;
        double variance = (double)n * (n - 1) * (2.0 * n + 5);
        foreach (int group in groups)
        {
            double t = group;
            tiedPairs += t * (t - 1) / 2;
            variance -= t * (t - 1) * (2 * t + 5);
        }

        double pairs = (double)n * (n - 1) / 2;
        long s = (long)(pairs - tiedPairs) - 2 * Falls(sample.Values);
        Estimate slope = RobustLine.TheilSen(times, sample.Values, options.Confidence).Slope;
        string name = groups.Length < n ? "Mann-Kendall, given the ties" : "Mann-Kendall";
        if (groups.Length == 1)
        {
            return new TrendResult(s, null, null, 1, isExact, slope, n, name, options);
        }

        double tau = s / Math.Sqrt(pairs * (pairs - tiedPairs));
        if (isExact)
        {
            double exact = RankTest.PValue(s, RankDistribution.Kendall(groups), options.Alternative);
            return new TrendResult(s, tau, null, exact, true, slope, n, $"{name}, exact", options);
        }

        double z = RankTest.Z(
            s,
            0,
            Math.Sqrt(variance / 18),
            options.Alternative,
            options.CorrectsForContinuity ? 1 : 0
        );
        return new TrendResult(
            s,
            tau,
            z,
            RankTest.PValue(z, options.Alternative),
            false,
            slope,
            n,
            $"{name}, normal approximation{(options.CorrectsForContinuity ? ", corrected for continuity" : "")}",
            options
        );
    }

    /// <summary>The pairs in which the later value is the smaller.</summary>
    private static long Falls(ReadOnlySpan<double> values)
    {
        double[] ranks = Ranks.Of(values, TieRule.InOrder);
        int[] inTime = new int[values.Length];
        int[] inSize = new int[values.Length];
        for (int i = 0; i < inTime.Length; i++)
        {
            inTime[i] = i;
            inSize[(int)ranks[i] - 1] = i;
        }

        return Inversions.Count(inTime, inSize);
    }

    /// <summary>How many values are equal, for each distinct one.</summary>
    private static int[] Groups(ReadOnlySpan<double> sorted)
    {
        var groups = new List<int>();
        var walk = new TieWalk(sorted, []);
        while (walk.MoveNext())
        {
            groups.Add(walk.Size);
        }

        return [.. groups];
    }
}
