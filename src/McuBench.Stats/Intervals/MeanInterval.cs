using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Intervals;

/// <summary>Confidence intervals for the mean of the population that values were drawn from.</summary>
public static class MeanInterval
{
    private const string Method = "mean, Student t";

    /// <summary>The mean with its t interval: mean ± t·s/√n at n − 1 degrees of freedom (student-1908). O(n).</summary>
    /// <remarks>
    /// Target: the population's mean. Exact for independent values from a normal population, and good for others once
    /// the count is large beside their skewness; under strong skew or with gross outliers it covers less than it says.
    /// With one value, or where all values are equal, there is no standard error and no interval, and a note says so.
    /// </remarks>
    /// <param name="sample">The sample.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or an end of the interval is
    /// above the greatest number.</exception>
    public static Estimate StudentT(Sample sample, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Confidence(confidence);
        int n = sample.Count;
        if (n == 1)
        {
            return new Estimate(sample.Values[0], n, Method) { Notes = [SpreadNotes.OneValue] };
        }

        var deviations = SquaredDeviations.Of(sample.Values);
        double mean = deviations.UnscaledMean;
        double error = deviations.RootOver(n - 1) / Math.Sqrt(n);
        return TInterval.Of(mean, error, n - 1, confidence, n, Method);
    }
}
