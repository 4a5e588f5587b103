using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Planning;

/// <summary>Power and sample size of the t test of one mean, or of the mean of paired differences.</summary>
/// <remarks>Effects are in standard deviations (for pairs, of the differences). Exact for normal populations: noncentral t
/// with n − 1 degrees of freedom and noncentrality effect·√n (cohen-1988, ch. 2), both tails counted for a two-sided
/// test.</remarks>
public static class OneSampleTPower
{
    private const string Method = "one-sample t, exact power";

    /// <summary>The probability that the test rejects. O(1).</summary>
    /// <param name="count">The number of values or pairs, 2 or more.</param>
    /// <param name="effect">The true difference from the null value, in standard deviations; finite. 0 gives the
    /// significance.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentException">The count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The effect is not finite.</exception>
    public static double Power(int count, double effect, PowerOptions? options = null)
    {
        Check.AtLeast(count, 2, nameof(count));
        Check.Finite(effect, "Effect");
        return TTestPower.Of(count - 1, effect * Math.Sqrt(count), options ?? PowerOptions.Default);
    }

    /// <summary>The smallest number of values, or pairs, that gives the power wanted. O(log n).</summary>
    /// <param name="effect">The true difference from the null value, in standard deviations.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, the effect lies against the
    /// alternative, or more than 1e7 values would be needed.</exception>
    public static PlannedCount Count(double effect, double power, PowerOptions? options = null)
    {
        options ??= PowerOptions.Default;
        PlanCheck.Effect(effect, options, nameof(effect));
        PlanCheck.Power(power, options.Significance);
        int count = PlanSearch.SmallestCount(n => Power(n, effect, options), power, 2, nameof(effect));
        return new PlannedCount(count, 1, Power(count, effect, options), Method);
    }

    /// <summary>The smallest difference, in standard deviations, that the test finds with the power wanted: what a study
    /// of this size could have shown. Some sixty powers.</summary>
    /// <param name="count">The number of values or pairs, 2 or more.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <returns>The difference; below 0 for <see cref="Alternative.Less"/>.</returns>
    /// <exception cref="ArgumentException">The count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The power is out of its range.</exception>
    public static double SmallestEffect(int count, double power, PowerOptions? options = null)
    {
        options ??= PowerOptions.Default;
        Check.AtLeast(count, 2, nameof(count));
        PlanCheck.Power(power, options.Significance);
        return options.InDirection(
            PlanSearch.SmallestSize(d => Power(count, options.InDirection(d), options), power, nameof(count))
        );
    }
}
