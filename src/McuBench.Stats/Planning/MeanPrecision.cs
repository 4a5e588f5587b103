using McuBench.Stats.Distributions;

namespace McuBench.Stats.Planning;

/// <summary>How many values make the t interval of a mean as narrow as wanted.</summary>
/// <remarks>
/// <para>All spreads and half-widths are relative to the true mean, so that 0.01 is 1 %. The values are taken to be
/// independent and from a normal population; a spread that a pilot of few values gave is itself uncertain, and it is wise
/// to plan with its upper limit.</para>
/// <para>What averaging doesn't reduce, such as a meter's accuracy or a timer's step, is not in here: no count makes the
/// interval narrower than that.</para>
/// </remarks>
public static class MeanPrecision
{
    /// <summary>The half-width t·cv/√n that an interval has when the sample shows just the spread planned with.
    /// O(1).</summary>
    /// <param name="count">The number of values, 2 or more.</param>
    /// <param name="relativeSpread">The standard deviation over the mean, above 0.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Another argument is out of its range.</exception>
    public static double HalfWidth(int count, double relativeSpread, double confidence = 0.95)
    {
        Check.AtLeast(count, 2, nameof(count));
        Check.Positive(relativeSpread, "Relative spread");
        Check.Confidence(confidence);
        return Factor(count, confidence) * relativeSpread;
    }

    /// <summary>The smallest number of values whose interval is as narrow as wanted when the sample shows just the spread
    /// planned with. It will show more about every second time: <see cref="Count(double, double, double, double)"/> guards
    /// against that. O(log n).</summary>
    /// <param name="relativeSpread">The standard deviation over the mean, above 0.</param>
    /// <param name="relativeHalfWidth">The wanted half-width over the mean, above 0.</param>
    /// <param name="confidence">The confidence of the interval, above 0 and below 1.</param>
    /// <returns>The count; what it attains is the probability that the half-width comes out as wanted or
    /// smaller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, or more than 1e7 values would be
    /// needed.</exception>
    public static PlannedCount Count(double relativeSpread, double relativeHalfWidth, double confidence = 0.95)
    {
        Check.Positive(relativeSpread, "Relative spread");
        Check.Positive(relativeHalfWidth, "Relative half-width");
        Check.Confidence(confidence);
        int count = PlanSearch.SmallestCount(
            // Negative, since the search is for what rises with the count.
            n => -Factor(n, confidence) * relativeSpread,
            -relativeHalfWidth,
            2,
            nameof(relativeHalfWidth)
        );
        double attained = AssuranceOf(count, relativeHalfWidth / relativeSpread, confidence);
        return new PlannedCount(count, 1, attained, "mean, Student t, expected half-width");
    }

    /// <summary>The smallest number of values whose interval comes out as narrow as wanted, or narrower, with a stated
    /// probability (kupper-hafner-1989). O(log n).</summary>
    /// <param name="relativeSpread">The true standard deviation over the mean, above 0.</param>
    /// <param name="relativeHalfWidth">The wanted half-width over the mean, above 0.</param>
    /// <param name="confidence">The confidence of the interval, above 0 and below 1.</param>
    /// <param name="assurance">The probability that the half-width is as wanted, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, or more than 1e7 values would be
    /// needed.</exception>
    public static PlannedCount Count(
        double relativeSpread,
        double relativeHalfWidth,
        double confidence,
        double assurance
    )
    {
        Check.Positive(relativeSpread, "Relative spread");
        Check.Positive(relativeHalfWidth, "Relative half-width");
        Check.Confidence(confidence);
        PlanCheck.Assurance(assurance);
        double ratio = relativeHalfWidth / relativeSpread;
        int count = PlanSearch.SmallestCount(
            n => AssuranceOf(n, ratio, confidence),
            assurance,
            2,
            nameof(relativeHalfWidth)
        );
        return new PlannedCount(count, 1, AssuranceOf(count, ratio, confidence), "mean, Student t, assured half-width");
    }

    /// <summary>The probability that the half-width comes out as wanted or smaller: that s/σ is at most
    /// ratio·√n/t.</summary>
    private static double AssuranceOf(int count, double ratio, double confidence)
    {
        double spread = ratio / Factor(count, confidence);
        return ChiSquared.Of(count - 1).Cdf(Math.Min((count - 1) * spread * spread, double.MaxValue));
    }

    private static double Factor(int count, double confidence) =>
        StudentT.Of(count - 1).UpperQuantile((1 - confidence) / 2) / Math.Sqrt(count);
}
