using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Planning;

/// <summary>Power and sample size of Welch's t test of two means, whose spreads may differ.</summary>
/// <remarks>
/// <para>Differences and spreads are in the unit of the data. For a ratio, plan on logarithms: the difference is the
/// logarithm of the ratio, and <see cref="TwoSpreads.OfLogarithms"/> gives the spreads.</para>
/// <para>Exact for normal populations, by integration over the ratio of the sample variances (moser-stevens-watts-1989);
/// both tails count for a two-sided test. A power takes some dozens to some hundreds of t quantiles and noncentral t
/// tails.</para>
/// </remarks>
public static class WelchPower
{
    private const string Method = "Welch t, exact power";

    /// <summary>The probability that the test rejects.</summary>
    /// <param name="first">The number of values in the first sample, 2 or more.</param>
    /// <param name="second">The number of values in the second sample, 2 or more.</param>
    /// <param name="difference">First mean less second mean; finite.</param>
    /// <param name="spreads">The populations' standard deviations.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spreads"/> is null.</exception>
    /// <exception cref="ArgumentException">A count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The difference is not finite.</exception>
    public static double Power(
        int first,
        int second,
        double difference,
        TwoSpreads spreads,
        PowerOptions? options = null
    )
    {
        Check.AtLeast(first, 2, nameof(first));
        Check.AtLeast(second, 2, nameof(second));
        Check.Finite(difference, "Difference");
        ArgumentNullException.ThrowIfNull(spreads);
        options ??= PowerOptions.Default;
        var plan = new WelchPlan(first, second, spreads);
        double noncentrality = options.Upward(difference) / plan.StandardError;
        bool twoSided = options.Alternative == Alternative.TwoSided;
        double power = plan.Mean(
            options.PerSide,
            noncentrality,
            critical => TTestPower.Beyond(critical, plan.DegreesOfFreedom, noncentrality, twoSided)
        );
        return Math.Min(1, power);
    }

    /// <summary>The smallest number of values in each of two equally large samples that gives the power wanted. O(log n)
    /// powers.</summary>
    /// <param name="difference">First mean less second mean.</param>
    /// <param name="spreads">The populations' standard deviations.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spreads"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, the difference lies against the
    /// alternative, or more than 1e7 values in a sample would be needed.</exception>
    public static PlannedCount Count(double difference, TwoSpreads spreads, double power, PowerOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(spreads);
        options ??= PowerOptions.Default;
        PlanCheck.Effect(difference, options, nameof(difference));
        PlanCheck.Power(power, options.Significance);
        int count = PlanSearch.SmallestCount(
            n => Power(n, n, difference, spreads, options),
            power,
            2,
            nameof(difference)
        );
        return new PlannedCount(count, 2, Power(count, count, difference, spreads, options), Method);
    }

    /// <summary>The smallest difference that the test finds with the power wanted: what a study of this size could have
    /// shown. Some sixty powers.</summary>
    /// <param name="first">The number of values in the first sample, 2 or more.</param>
    /// <param name="second">The number of values in the second sample, 2 or more.</param>
    /// <param name="spreads">The populations' standard deviations.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <returns>The difference, in the unit of the spreads; below 0 for <see cref="Alternative.Less"/>.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="spreads"/> is null.</exception>
    /// <exception cref="ArgumentException">A count is below 2, or so small that no difference reaches the
    /// power.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The power is out of its range.</exception>
    public static double SmallestDifference(
        int first,
        int second,
        TwoSpreads spreads,
        double power,
        PowerOptions? options = null
    )
    {
        options ??= PowerOptions.Default;
        Check.AtLeast(first, 2, nameof(first));
        Check.AtLeast(second, 2, nameof(second));
        ArgumentNullException.ThrowIfNull(spreads);
        PlanCheck.Power(power, options.Significance);
        double unit = new WelchPlan(first, second, spreads).StandardError;
        double size = PlanSearch.SmallestSize(
            d => Power(first, second, options.InDirection(d * unit), spreads, options),
            power,
            nameof(first)
        );
        return options.InDirection(size * unit);
    }
}
