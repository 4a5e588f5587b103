using System.Buffers;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Wilcoxon's signed-rank sum of deviations and its p-value.</summary>
internal static class SignedRankTest
{
    /// <summary>Up to here the exact distribution is used unless told otherwise.</summary>
    internal const int MostByDefault = 50;

    /// <summary>The test of finite values against the null value, named as the caller would.</summary>
    internal static RankTestResult Of(
        ReadOnlySpan<double> values,
        ZeroRule zeros,
        string name,
        RankTestOptions? options
    )
    {
        Check.Named(zeros);
        options ??= RankTestOptions.Default;
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> deviations = scratch.AsSpan(0, values.Length);
        for (int i = 0; i < values.Length; i++)
        {
            deviations[i] = Check.Representable(values[i] - options.NullValue, "Distance from the null value", name);
        }

        RankTestResult result = OfDeviations(deviations, zeros, name, options);
        ArrayPool<double>.Shared.Return(scratch);
        return result;
    }

    /// <summary>The test of deviations from the null value, which are rearranged.</summary>
    private static RankTestResult OfDeviations(
        Span<double> deviations,
        ZeroRule zeros,
        string name,
        RankTestOptions options
    )
    {
        deviations.Sort();
        int below = 0;
        while (below < deviations.Length && deviations[below] < 0)
        {
            below++;
        }

        int equal = 0;
        while (below + equal < deviations.Length && deviations[below + equal] == 0)
        {
            equal++;
        }

        Span<double> negative = deviations[..below];
        negative.Reverse();
        for (int i = 0; i < below; i++)
        {
            negative[i] = -negative[i];
        }

        int[] scratch = ArrayPool<int>.Shared.Rent(deviations.Length);
        int ranked = deviations.Length - equal;
        int offset = zeros == ZeroRule.RankFirst ? equal : 0;
        var walk = new TieWalk(deviations[(below + equal)..], negative);
        double statistic = 0;
        double squares = 0;
        int groups = 0;
        while (walk.MoveNext())
        {
            double rank = offset + walk.Rank;
            statistic += walk.FirstEqual * rank;
            squares += walk.Size * rank * rank;
            scratch[groups++] = walk.Size;
        }

        // Each rank is in the sum with a chance of one half, or not: mean of half the ranks, variance of a quarter of their
        // squares, ties and zeros or not.
        double all = (double)offset + ranked;
        double mean = (all * (all + 1) - (double)offset * (offset + 1)) / 4;
        RankTestResult result = Test(
            statistic,
            (mean, Math.Sqrt(squares) / 2),
            (ranked, equal),
            scratch.AsSpan(0, groups),
            zeros,
            name,
            options
        );
        ArrayPool<int>.Shared.Return(scratch);
        return result;
    }

    private static RankTestResult Test(
        double statistic,
        (double Mean, double Deviation) moments,
        (int Ranked, int LeftOut) counts,
        ReadOnlySpan<int> groups,
        ZeroRule zeros,
        string name,
        RankTestOptions options
    )
    {
        int offset = zeros == ZeroRule.RankFirst ? counts.LeftOut : 0;
        bool hasTies = groups.Length < counts.Ranked;
        string method = offset > 0 ? "signed rank, zeros ranked first" : "signed rank";
        int ranks = offset + counts.Ranked;
        bool wantsExact = options.Distribution == NullDistribution.Exact;
        if (wantsExact && ranks > RankDistribution.MostSignedRanks)
        {
            throw Check.OutOfRange(
                name,
                "Count of values for the exact distribution",
                FormattableString.Invariant($"at most {RankDistribution.MostSignedRanks}"),
                ranks
            );
        }

        bool takesExact = wantsExact || (options.Distribution == NullDistribution.Automatic && ranks <= MostByDefault);
        if (!takesExact || counts.Ranked == 0)
        {
            return RankTest.Approximate(statistic, moments, counts, hasTies, method, options);
        }

        var distribution =
            hasTies || offset > 0
                ? RankDistribution.SignedRank(groups, offset)
                : RankDistribution.SignedRank(counts.Ranked);
        return RankTest.Exact(statistic, distribution, counts, hasTies, method, options);
    }
}
