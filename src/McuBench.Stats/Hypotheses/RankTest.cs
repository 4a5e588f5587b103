using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>What every rank test ends with: the p-value of its statistic.</summary>
internal static class RankTest
{
    /// <summary>The p-value in an exact distribution. Given ties the distribution may be skew: two-sided is twice the smaller
    /// tail, so that it agrees with the one-sided tests.</summary>
    internal static double PValue(double statistic, RankDistribution distribution, Alternative alternative) =>
        alternative switch
        {
            Alternative.Less => distribution.Cdf(statistic),
            Alternative.Greater => distribution.AtLeast(statistic),
            _ => Math.Min(1, 2 * Math.Min(distribution.Cdf(statistic), distribution.AtLeast(statistic))),
        };

    /// <summary>The statistic's distance from its mean in standard deviations, after it was moved by a correction towards the
    /// mean (for a one-sided test, against the alternative).</summary>
    internal static double Z(
        double statistic,
        double mean,
        double deviation,
        Alternative alternative,
        double correction
    )
    {
        double distance = statistic - mean;
        double direction = alternative switch
        {
            Alternative.Less => -1,
            Alternative.Greater => 1,
            _ => Math.Sign(distance),
        };
        return (distance - direction * correction) / deviation;
    }

    /// <summary>The p-value of a standard normal statistic.</summary>
    internal static double PValue(double z, Alternative alternative) =>
        alternative switch
        {
            Alternative.Less => Normal.Standard.Cdf(z),
            Alternative.Greater => Normal.Standard.UpperTail(z),
            _ => Math.Min(1, 2 * Normal.Standard.UpperTail(Math.Abs(z))),
        };

    /// <summary>The outcome from an exact distribution.</summary>
    internal static RankTestResult Exact(
        double statistic,
        RankDistribution distribution,
        (int Ranked, int LeftOut) counts,
        bool hasTies,
        string name,
        RankTestOptions options
    ) =>
        new(
            statistic,
            null,
            PValue(statistic, distribution, options.Alternative),
            counts.Ranked,
            counts.LeftOut,
            hasTies ? $"{name}, exact given the ties" : $"{name}, exact",
            options
        );

    /// <summary>The outcome from the normal distribution; a deviation of 0 says that no other statistic was possible.</summary>
    internal static RankTestResult Approximate(
        double statistic,
        (double Mean, double Deviation) moments,
        (int Ranked, int LeftOut) counts,
        bool hasTies,
        string name,
        RankTestOptions options
    )
    {
        double? z =
            moments.Deviation > 0
                ? Z(
                    statistic,
                    moments.Mean,
                    moments.Deviation,
                    options.Alternative,
                    options.CorrectsForContinuity ? 0.5 : 0
                )
                : null;
        string corrections = (hasTies, options.CorrectsForContinuity) switch
        {
            (true, true) => ", corrected for ties and continuity",
            (true, false) => ", corrected for ties",
            (false, true) => ", corrected for continuity",
            _ => "",
        };
        return new RankTestResult(
            statistic,
            z,
            z is { } distance ? PValue(distance, options.Alternative) : 1,
            counts.Ranked,
            counts.LeftOut,
            $"{name}, normal approximation{corrections}",
            options
        );
    }
}
