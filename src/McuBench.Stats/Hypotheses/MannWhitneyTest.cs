using System.Buffers;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Mann and Whitney's U of two samples and its p-value.</summary>
internal static class MannWhitneyTest
{
    /// <summary>Up to here the exact distribution takes a few milliseconds at most, ties or not.</summary>
    internal const int MostPairsByDefault = 2500;

    private const string Name = "Mann-Whitney";

    /// <summary>The test of first less second against the null value.</summary>
    internal static RankTestResult Of(Sample first, Sample second, RankTestOptions options)
    {
        double[]? shifted = options.NullValue == 0 ? null : Shifted(first, options.NullValue);
        int total = checked(first.Count + second.Count);
        int[] scratch = ArrayPool<int>.Shared.Rent(total);
        var walk = new TieWalk(shifted is null ? first.Sorted : shifted.AsSpan(0, first.Count), second.Sorted);
        double statistic = 0;
        double tieTerm = 0;
        int groups = 0;
        while (walk.MoveNext())
        {
            statistic += walk.FirstEqual * (walk.SecondBelow + 0.5 * walk.SecondEqual);
            double t = walk.Size;
            tieTerm += t * t * t - t;
            scratch[groups++] = walk.Size;
        }

        RankTestResult result = Test(statistic, first.Count, second.Count, scratch.AsSpan(0, groups), tieTerm, options);
        ArrayPool<int>.Shared.Return(scratch);
        if (shifted is not null)
        {
            ArrayPool<double>.Shared.Return(shifted);
        }

        return result;
    }

    /// <summary>The variance of U, given the sum of t³ − t over groups of t equal values (lehmann-2006, section 1.4).</summary>
    internal static double Variance(double first, double second, double tieTerm)
    {
        double total = first + second;
        return first * second / 12 * (total + 1 - tieTerm / (total * (total - 1)));
    }

    private static RankTestResult Test(
        double statistic,
        int first,
        int second,
        ReadOnlySpan<int> groups,
        double tieTerm,
        RankTestOptions options
    )
    {
        bool hasTies = tieTerm > 0;
        double pairs = (double)first * second;
        (int, int) counts = (first + second, 0);
        if (
            options.Distribution == NullDistribution.Exact
            || (options.Distribution == NullDistribution.Automatic && pairs <= MostPairsByDefault)
        )
        {
            var distribution = hasTies
                ? RankDistribution.MannWhitney(first, second, groups)
                : RankDistribution.MannWhitney(first, second);
            return RankTest.Exact(statistic, distribution, counts, hasTies, Name, options);
        }

        // With all values equal nothing is left of the variance but rounding.
        double variance = groups.Length == 1 ? 0 : Variance(first, second, tieTerm);
        return RankTest.Approximate(statistic, (pairs / 2, Math.Sqrt(variance)), counts, hasTies, Name, options);
    }

    private static double[] Shifted(Sample first, double shift)
    {
        ReadOnlySpan<double> sorted = first.Sorted;
        double[] shifted = ArrayPool<double>.Shared.Rent(sorted.Length);
        for (int i = 0; i < sorted.Length; i++)
        {
            shifted[i] = Check.Representable(sorted[i] - shift, "Distance from the null value", nameof(first));
        }

        return shifted;
    }
}
