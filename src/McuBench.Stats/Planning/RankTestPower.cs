using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Planning;

/// <summary>Power and sample size of the Mann–Whitney and signed-rank tests, for any shape of the populations.</summary>
/// <remarks>
/// <para>The effect is a probability: that of a first value above a second one (ties counted half), or that the sum of two
/// differences is above 0. 0.5 is no effect. For normal populations a shift of d standard deviations is
/// Φ(d/√2) and Φ(d·√2), which <see cref="SuperiorityOfShift"/> and <see cref="PositiveSumOfShift"/> give.</para>
/// <para>Noether's approximation (noether-1987): normal, with the statistic's variance under the null hypothesis. Beside
/// simulated powers of the exact 5 % tests on normal data it was seen off by at most 0.03 for Mann–Whitney at 10 a side or
/// more and a superiority up to 0.76, and by at most 0.05 for signed ranks at 10 or more and a positive sum up to 0.8.
/// Beyond those effects it is too low (up to 0.25); below those counts it is too high by up to 0.1. Counts are never below
/// the least with which the exact test can reject at all.</para>
/// </remarks>
public static class RankTestPower
{
    /// <summary>The probability that the Mann–Whitney test rejects. O(1).</summary>
    /// <param name="first">The number of values in the first sample, 1 or more.</param>
    /// <param name="second">The number of values in the second sample, 1 or more.</param>
    /// <param name="superiority">The probability of a first value above a second one.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <returns>The power; 0 where the counts are so small that the exact test never rejects.</returns>
    /// <exception cref="ArgumentException">A count is below 1.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability lies outside [0, 1].</exception>
    public static double MannWhitney(int first, int second, double superiority, PowerOptions? options = null)
    {
        Check.AtLeast(first, 1, nameof(first));
        Check.AtLeast(second, 1, nameof(second));
        Check.Probability(superiority);
        options ??= PowerOptions.Default;
        return LogOfArrangements(first, second) < -Math.Log(options.PerSide)
            ? 0
            : Of(Math.Sqrt(12.0 * first * second / ((double)first + second)) * (superiority - 0.5), options);
    }

    /// <summary>The probability that the signed-rank test rejects. O(1).</summary>
    /// <param name="count">The number of values or pairs, 1 or more.</param>
    /// <param name="positiveSum">The probability that two values, less the null value, have a sum above 0.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <returns>The power; 0 where the count is so small that the exact test never rejects.</returns>
    /// <exception cref="ArgumentException">The count is below 1.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability lies outside [0, 1].</exception>
    public static double SignedRank(int count, double positiveSum, PowerOptions? options = null)
    {
        Check.AtLeast(count, 1, nameof(count));
        Check.Probability(positiveSum);
        options ??= PowerOptions.Default;
        return count * Math.Log(2) < -Math.Log(options.PerSide)
            ? 0
            : Of(Math.Sqrt(3.0 * count) * (positiveSum - 0.5), options);
    }

    /// <summary>The smallest number of values in each of two equally large samples that gives the Mann–Whitney test the
    /// power wanted. O(log n).</summary>
    /// <param name="superiority">The probability of a first value above a second one.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, the effect lies against the
    /// alternative, or more than 1e7 values in a sample would be needed.</exception>
    public static PlannedCount CountMannWhitney(double superiority, double power, PowerOptions? options = null)
    {
        options ??= PowerOptions.Default;
        Accept(superiority, power, options, nameof(superiority));
        double At(int n) => MannWhitney(n, n, superiority, options);
        int count = PlanSearch.SmallestCount(At, power, 1, nameof(superiority));
        return new PlannedCount(count, 2, At(count), "Mann–Whitney, Noether's approximation");
    }

    /// <summary>The smallest number of values, or pairs, that gives the signed-rank test the power wanted.
    /// O(log n).</summary>
    /// <param name="positiveSum">The probability that two values, less the null value, have a sum above 0.</param>
    /// <param name="power">The power wanted, above the significance and below 1.</param>
    /// <param name="options">The test; <see cref="PowerOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, the effect lies against the
    /// alternative, or more than 1e7 values would be needed.</exception>
    public static PlannedCount CountSignedRank(double positiveSum, double power, PowerOptions? options = null)
    {
        options ??= PowerOptions.Default;
        Accept(positiveSum, power, options, nameof(positiveSum));
        double At(int n) => SignedRank(n, positiveSum, options);
        int count = PlanSearch.SmallestCount(At, power, 1, nameof(positiveSum));
        return new PlannedCount(count, 1, At(count), "signed rank, Noether's approximation");
    }

    /// <summary>The probability of a first value above a second one in normal populations that are apart by a shift,
    /// Φ(d/√2).</summary>
    /// <param name="shift">First mean less second mean, in the common standard deviation; finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shift is not finite.</exception>
    public static double SuperiorityOfShift(double shift)
    {
        Check.Finite(shift, "Shift");
        return Normal.StandardUpperTail(-shift / Math.Sqrt(2));
    }

    /// <summary>The probability that two values of a normal population have a sum above 0, Φ(d·√2).</summary>
    /// <param name="shift">The population's mean in its standard deviations; finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shift is not finite.</exception>
    public static double PositiveSumOfShift(double shift)
    {
        Check.Finite(shift, "Shift");
        return Normal.StandardUpperTail(-shift * Math.Sqrt(2));
    }

    private static double Of(double noncentrality, PowerOptions options)
    {
        double critical = Normal.StandardUpperQuantile(options.PerSide);
        double upward = options.Upward(noncentrality);
        double power = Normal.StandardUpperTail(critical - upward);
        return options.Alternative == Alternative.TwoSided
            ? power + Normal.StandardUpperTail(critical + upward)
            : power;
    }

    /// <summary>The logarithm of how many ways there are to deal the ranks out; one over it is the least p-value of one
    /// side.</summary>
    private static double LogOfArrangements(int first, int second)
    {
        double sum = 0;
        int smaller = Math.Min(first, second);
        // Soon beyond any significance, so that a long sum is never taken to its end.
        for (int i = 1; i <= smaller && sum < 800; i++)
        {
            sum += Math.Log(((double)first + second - smaller + i) / i);
        }

        return sum;
    }

    private static void Accept(double probability, double power, PowerOptions options, string name)
    {
        Check.Probability(probability, name);
        if (!(options.Upward(probability - 0.5) > 0))
        {
            throw Check.OutOfRange(name, "Probability", "off 0.5 in the direction of the alternative", probability);
        }

        PlanCheck.Power(power, options.Significance);
    }
}
