using McuBench.Stats.Distributions;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Hypotheses;

/// <summary>How far two independent samples lie apart, without a unit.</summary>
public static class EffectSize
{
    /// <summary>Hedges' g: the difference of the means in pooled standard deviations, less the bias that small samples give it
    /// (hedges-1981). O(n).</summary>
    /// <remarks>The interval is the exact one of the populations' difference in standard deviations, by the noncentral t
    /// distribution (steiger-fouladi-1997), for normal populations known to spread alike; where they may not, use
    /// <see cref="Superiority"/>. It belongs to that difference, so the factor against bias is not in it. Swapping the samples turns
    /// it round; a shift or scale of both changes nothing.</remarks>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample, in the same unit; four values or more in both together.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than four values, or neither sample spreads.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or the difference is above 1E150 standard
    /// deviations.</exception>
    public static Estimate HedgesG(Sample first, Sample second, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Check.Confidence(confidence);
        int count = checked(first.Count + second.Count);
        if (count < 4)
        {
            throw OrderStatistics.TooFew("g, in both samples together", 4, count, nameof(second));
        }

        double df = count - 2.0;
        TTestResult test = TwoSample.Pooled(first, second);
        double root = Math.Sqrt(1.0 / first.Count + 1.0 / second.Count);
        if (!(Math.Abs(test.Statistic) <= 1e150))
        {
            throw Check.OutOfRange(
                nameof(first),
                "t of the difference",
                "of a magnitude of at most 1E150",
                test.Statistic
            );
        }

        double unbias = GammaFunction.HalfStepRatio((df - 1) / 2) / Math.Sqrt(df / 2);
        (double lower, double upper) = StandardizedLimits.Of(test.Statistic, df, confidence);
        return new Estimate(unbias * test.Statistic * root, count, "Hedges' g, noncentral t")
        {
            DegreesOfFreedom = df,
            Interval = new Interval(lower * root, upper * root, confidence),
        };
    }

    /// <summary>The probability that a first value is above a second one, ties counted half. O(n log n).</summary>
    /// <remarks>The interval is Brunner and Munzel's (brunner-munzel-2000) on the logit scale (konietschke-2015): a t factor
    /// with Satterthwaite's degrees of freedom times the error of ln(p/(1 − p)), taken back, so that it stays between 0 and 1.
    /// Neither shapes nor spreads need be equal. It is close from about ten values in each sample. Where the samples don't
    /// overlap, or all values are equal, there is none, and a note says so. Swapping the samples gives 1 less what it was.</remarks>
    /// <param name="first">The first sample, two values or more.</param>
    /// <param name="second">The second sample, two values or more, in the same unit.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">A sample has one value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public static Estimate Superiority(Sample first, Sample second, double confidence = 0.95) =>
        OnLogits(first, second, confidence, "probability of superiority", 0, 1);

    /// <summary>Cliff's delta (cliff-1993): the probability that a first value is above a second one, less that of the
    /// reverse; from −1 to 1. O(n log n).</summary>
    /// <remarks>Twice <see cref="Superiority"/> less 1, and so are standard error and interval; all else is as there. Swapping
    /// the samples turns it round.</remarks>
    /// <param name="first">The first sample, two values or more.</param>
    /// <param name="second">The second sample, two values or more, in the same unit.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">A sample has one value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public static Estimate CliffDelta(Sample first, Sample second, double confidence = 0.95) =>
        OnLogits(first, second, confidence, "Cliff's delta", -1, 2);

    /// <summary>The estimate of origin + scale · p, p being the probability of superiority.</summary>
    private static Estimate OnLogits(
        Sample first,
        Sample second,
        double confidence,
        string what,
        double origin,
        double scale
    )
    {
        var error = PlacementError.Of(first, second);
        Check.Confidence(confidence);
        double p = error.Superiority;
        var estimate = new Estimate(
            origin + scale * p,
            first.Count + second.Count,
            $"{what}, Brunner-Munzel on logits"
        );
        if (error.StandardError == 0)
        {
            // Without overlap p is 0 or 1: in between, only equal values have no spread of places.
            string note = p is 0 or 1
                ? "The samples do not overlap: the spread of the probability is not resolved, so no interval."
                : SpreadNotes.AllEqual;
            return estimate with { Notes = [note] };
        }

        double logit = Math.Log(p / (1 - p));
        double reach = TInterval.Factor(error.DegreesOfFreedom, confidence) * error.StandardError / (p * (1 - p));
        return estimate with
        {
            StandardError = scale * error.StandardError,
            DegreesOfFreedom = error.DegreesOfFreedom,
            Interval = new Interval(
                origin + scale * FromLogit(logit - reach),
                origin + scale * FromLogit(logit + reach),
                confidence
            ),
        };
    }

    private static double FromLogit(double logit) => 1 / (1 + Math.Exp(-logit));
}
