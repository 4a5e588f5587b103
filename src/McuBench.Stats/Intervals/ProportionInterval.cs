using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Confidence intervals for a proportion, from a count of successes in a number of trials.</summary>
public static class ProportionInterval
{
    /// <summary>Wilson's score interval (wilson-1927): close to its confidence on average over all proportions, a little
    /// under it for some. O(1).</summary>
    /// <param name="successes">The successes, from 0 to the trials.</param>
    /// <param name="trials">The trials, 1 or more.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count or the confidence is out of range.</exception>
    public static Estimate Wilson(int successes, int trials, double confidence = 0.95)
    {
        double p = Proportion(successes, trials, confidence);
        double z = Normal.Standard.UpperQuantile((1 - confidence) / 2);
        double n = trials;
        double centre = (p + z * z / (2 * n)) / (1 + z * z / n);
        double reach = z * Math.Sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / (1 + z * z / n);
        // At 0 and at all successes the formula's ends are exactly 0 and 1, its rounding is not.
        return new Estimate(p, trials, "proportion, Wilson score")
        {
            Interval = new Interval(
                successes == 0 ? 0 : centre - reach,
                successes == trials ? 1 : centre + reach,
                confidence
            ),
        };
    }

    /// <summary>The interval of Clopper and Pearson (clopper-pearson-1934): never less than its confidence, and mostly
    /// more. O(1).</summary>
    /// <param name="successes">The successes, from 0 to the trials.</param>
    /// <param name="trials">The trials, 1 or more.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count or the confidence is out of range.</exception>
    public static Estimate ClopperPearson(int successes, int trials, double confidence = 0.95)
    {
        double p = Proportion(successes, trials, confidence);
        double tail = (1 - confidence) / 2;
        double failures = trials - successes;
        double lower = successes == 0 ? 0 : BetaDistribution.Of(successes, failures + 1).Quantile(tail);
        double upper = failures == 0 ? 1 : BetaDistribution.Of(successes + 1.0, failures).UpperQuantile(tail);
        return new Estimate(p, trials, "proportion, Clopper-Pearson")
        {
            Interval = new Interval(lower, upper, confidence),
        };
    }

    private static double Proportion(int successes, int trials, double confidence)
    {
        if (trials < 1)
        {
            throw Check.OutOfRange(nameof(trials), "Count of trials", "1 or more", trials);
        }

        if (successes < 0 || successes > trials)
        {
            string rule = FormattableString.Invariant($"from 0 to the {trials} trials");
            throw Check.OutOfRange(nameof(successes), "Count of successes", rule, successes);
        }

        Check.Confidence(confidence);
        return (double)successes / trials;
    }
}
