using System.Runtime.InteropServices;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Between which order statistics of all pairs an interval runs: those of a rank, from either end.</summary>
/// <param name="Rank">The rank, from 1 for the outermost.</param>
/// <param name="Reached">The confidence reached.</param>
/// <param name="Method">Where the rank comes from.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct RankEnds(long Rank, double Reached, string Method)
{
    // A tail that equals its share, but for rounding, is within it.
    private const double Slack = 1e-12;

    /// <summary>Whether the exact distribution is taken.</summary>
    internal static bool TakesExact(NullDistribution wanted, bool isSmall) =>
        wanted == NullDistribution.Exact || (wanted == NullDistribution.Automatic && isSmall);

    /// <summary>The innermost rank with no more than the tail beyond it; the outermost one must have no more.</summary>
    internal static RankEnds Exact(RankDistribution distribution, double tail)
    {
        double reached = distribution.Quantile(tail);
        double rank = distribution.Cdf(reached) <= tail * (1 + Slack) ? reached + 1 : reached;
        return new RankEnds((long)rank, 1 - 2 * distribution.Cdf(rank - 1), "exact ranks");
    }

    /// <summary>The innermost rank that the normal distribution with a continuity correction does not reject.</summary>
    internal static RankEnds Normal(long pairs, double variance, double tail)
    {
        double deviation = Math.Sqrt(variance);
        double reach = Distributions.Normal.Standard.UpperQuantile(tail) * deviation;
        // The outermost rank was found to do, whatever the approximation says.
        long rank = Math.Max(1, (long)Math.Ceiling(pairs / 2.0 - 0.5 - reach));
        double z = deviation == 0 ? 0 : (pairs / 2.0 - rank + 0.5) / deviation;
        return new RankEnds(
            rank,
            1 - 2 * Distributions.Normal.Standard.UpperTail(z),
            "ranks by the normal distribution"
        );
    }

    /// <summary>The ranks and what they reach, in words.</summary>
    internal string Note(long pairs, string what) =>
        FormattableString.Invariant(
            $"Ranks {Rank} and {pairs + 1 - Rank} of {pairs} {what}; confidence reached {Reached:0.0000}."
        );
}
