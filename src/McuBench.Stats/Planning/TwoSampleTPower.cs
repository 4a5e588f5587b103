using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Planning;

/// <summary>Power and sample size of the pooled t test of two means, for populations known to spread alike.</summary>
/// <remarks>Effects are differences in units of the common standard deviation. Exact for normal populations: noncentral t
/// with n₁ + n₂ − 2 degrees of freedom (cohen-1988, ch. 2), both tails counted for a two-sided test. Where the spreads may
/// differ, plan with <see cref="WelchPower"/>.</remarks>
public static class TwoSampleTPower
{
    private const string Method = "pooled t, exact power";

    /// <summary>The probability that the test rejects. O(1).</summary>
    /// <param name="first">The number of values in the first sample, 1 or more.</param>
    /// <param name="second">The number of values in the second sample, 1 or more; 3 in both together.</param>
    /// <param name="effect">First mean less second mean, in standard deviations; finite.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentException">A count is too small.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The effect is not finite.</exception>
    public static double Power(int first, int second, double effect, PowerOptions? options = null)
    {
        Check.AtLeast(first, 1, nameof(first));
        Check.AtLeast(second, 1, nameof(second));
        Check.AtLeast(first + second, 3, nameof(second));
        Check.Finite(effect, "Effect");
        double noncentrality = effect / Math.Sqrt(1.0 / first + 1.0 / second);
        return TTestPower.Of(first + second - 2, noncentrality, options ?? PowerOptions.Default);
    }

    /// <summary>The smallest number of values in each of two equally large samples that gives the power wanted.
    /// O(log n).</summary>
    /// <param name="effect">First mean less second mean, in standard deviations.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, the effect lies against the
    /// alternative, or more than 1e7 values in a sample would be needed.</exception>
    public static PlannedCount Count(double effect, double power, PowerOptions? options = null)
    {
        options ??= PowerOptions.Default;
        PlanCheck.Effect(effect, options, nameof(effect));
        PlanCheck.Power(power, options.Significance);
        int count = PlanSearch.SmallestCount(n => Power(n, n, effect, options), power, 2, nameof(effect));
        return new PlannedCount(count, 2, Power(count, count, effect, options), Method);
    }

    /// <summary>The smallest difference, in standard deviations, that the test finds with the power wanted: what a study
    /// of this size could have shown. Some sixty powers.</summary>
    /// <param name="first">The number of values in the first sample, 1 or more.</param>
    /// <param name="second">The number of values in the second sample, 1 or more; 3 in both together.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <returns>The difference; below 0 for <see cref="Alternative.Less"/>.</returns>
    /// <exception cref="ArgumentException">A count is too small.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The power is out of its range.</exception>
    public static double SmallestEffect(int first, int second, double power, PowerOptions? options = null)
    {
        options ??= PowerOptions.Default;
        _ = Power(first, second, 0, options);
        PlanCheck.Power(power, options.Significance);
        return options.InDirection(
            PlanSearch.SmallestSize(d => Power(first, second, options.InDirection(d), options), power, nameof(first))
        );
    }
}
