using McuBench.Stats.Distributions;

namespace McuBench.Stats.Planning;

/// <summary>Power and sample size of equivalence tests: two one-sided t tests (TOST) against a margin on both
/// sides.</summary>
/// <remarks>
/// <para>The probability is that of concluding "equal within the margin". Where the true difference is 0 it is greatest; to
/// reckon with a true difference of 0 although boards never are quite alike is the usual way to plan too few values.</para>
/// <para>Exact for normal populations (phillips-1990; with unequal spreads by integration over the ratio of the variances
/// as well, moser-stevens-watts-1989). For a ratio, plan on logarithms: the margin is log(1.02) for 2 %, symmetric on
/// the logarithms, and <see cref="TwoSpreads.OfLogarithms"/> gives the spreads.</para>
/// </remarks>
public static class EquivalencePower
{
    /// <summary>The probability that one sample's mean, or the mean of paired differences, is concluded to lie within the
    /// margin. O(1).</summary>
    /// <param name="count">The number of values or pairs, 2 or more.</param>
    /// <param name="margin">The margin, in standard deviations (for pairs, of the differences), above 0.</param>
    /// <param name="difference">The true difference, in standard deviations, within the margin.</param>
    /// <param name="significance">The significance of each of the two tests, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentException">The count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Another argument is out of its range.</exception>
    public static double OneSample(int count, double margin, double difference = 0, double significance = 0.05)
    {
        Check.AtLeast(count, 2, nameof(count));
        Accept(margin, difference, significance);
        double root = Math.Sqrt(count);
        double critical = StudentT.Of(count - 1).UpperQuantile(significance);
        return EquivalenceIntegral.Of(count - 1, margin * root, difference * root, critical);
    }

    /// <summary>The probability that two means are concluded to be equal within the margin by Welch's tests.</summary>
    /// <param name="first">The number of values in the first sample, 2 or more.</param>
    /// <param name="second">The number of values in the second sample, 2 or more.</param>
    /// <param name="margin">The margin, in the unit of the spreads, above 0.</param>
    /// <param name="spreads">The populations' standard deviations.</param>
    /// <param name="difference">First mean less second mean, within the margin.</param>
    /// <param name="significance">The significance of each of the two tests, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spreads"/> is null.</exception>
    /// <exception cref="ArgumentException">A count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Another argument is out of its range.</exception>
    public static double Welch(
        int first,
        int second,
        double margin,
        TwoSpreads spreads,
        double difference = 0,
        double significance = 0.05
    )
    {
        Check.AtLeast(first, 2, nameof(first));
        Check.AtLeast(second, 2, nameof(second));
        ArgumentNullException.ThrowIfNull(spreads);
        Accept(margin, difference, significance);
        var plan = new WelchPlan(first, second, spreads);
        double room = margin / plan.StandardError;
        double centre = difference / plan.StandardError;
        return Math.Min(
            1,
            plan.Mean(
                significance,
                room,
                critical => EquivalenceIntegral.Of(plan.DegreesOfFreedom, room, centre, critical)
            )
        );
    }

    /// <summary>The smallest number of values, or pairs, that gives the power wanted. O(log n) powers.</summary>
    /// <param name="margin">The margin, in standard deviations (for pairs, of the differences), above 0.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="difference">The true difference, in standard deviations, within the margin.</param>
    /// <param name="significance">The significance of each of the two tests, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, or more than 1e7 values would be
    /// needed.</exception>
    public static PlannedCount CountOneSample(
        double margin,
        double power,
        double difference = 0,
        double significance = 0.05
    )
    {
        Accept(margin, difference, significance);
        PlanCheck.Power(power, significance);
        double At(int n) => OneSample(n, margin, difference, significance);
        int count = PlanSearch.SmallestCount(At, power, 2, nameof(margin));
        return new PlannedCount(count, 1, At(count), "two one-sided t tests of one mean, exact power");
    }

    /// <summary>The smallest number of values in each of two equally large samples that gives the power wanted. O(log n)
    /// powers.</summary>
    /// <param name="margin">The margin, in the unit of the spreads, above 0.</param>
    /// <param name="spreads">The populations' standard deviations.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="difference">First mean less second mean, within the margin.</param>
    /// <param name="significance">The significance of each of the two tests, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spreads"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, or more than 1e7 values in a sample
    /// would be needed.</exception>
    public static PlannedCount CountWelch(
        double margin,
        TwoSpreads spreads,
        double power,
        double difference = 0,
        double significance = 0.05
    )
    {
        ArgumentNullException.ThrowIfNull(spreads);
        Accept(margin, difference, significance);
        PlanCheck.Power(power, significance);
        double At(int n) => Welch(n, n, margin, spreads, difference, significance);
        int count = PlanSearch.SmallestCount(At, power, 2, nameof(margin));
        return new PlannedCount(count, 2, At(count), "two one-sided Welch t tests, exact power");
    }

    /// <summary>The smallest margin within which two equal means are shown to be equal with the power wanted: what a study
    /// of this size could have shown. Some sixty powers.</summary>
    /// <param name="first">The number of values in the first sample, 2 or more.</param>
    /// <param name="second">The number of values in the second sample, 2 or more.</param>
    /// <param name="spreads">The populations' standard deviations.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="significance">The significance of each of the two tests, above 0 and below 0.5.</param>
    /// <returns>The margin, in the unit of the spreads.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="spreads"/> is null.</exception>
    /// <exception cref="ArgumentException">A count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Another argument is out of its range.</exception>
    public static double SmallestMargin(
        int first,
        int second,
        TwoSpreads spreads,
        double power,
        double significance = 0.05
    )
    {
        Check.AtLeast(first, 2, nameof(first));
        Check.AtLeast(second, 2, nameof(second));
        ArgumentNullException.ThrowIfNull(spreads);
        Accept(1, 0, significance);
        PlanCheck.Power(power, significance);
        double unit = new WelchPlan(first, second, spreads).StandardError;
        return unit
            * PlanSearch.SmallestSize(
                m => Welch(first, second, m * unit, spreads, 0, significance),
                power,
                nameof(first)
            );
    }

    private static void Accept(double margin, double difference, double significance)
    {
        Check.Positive(margin, "Margin");
        PlanCheck.TrueDifference(difference, margin, nameof(difference));
        if (!(significance > 0 && significance < 0.5))
        {
            throw Check.OutOfRange(nameof(significance), "Significance", "above 0 and below 0.5", significance);
        }
    }
}
