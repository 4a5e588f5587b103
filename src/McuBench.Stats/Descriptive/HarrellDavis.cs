using McuBench.Stats.Distributions;

namespace McuBench.Stats.Descriptive;

/// <summary>The quantile of Harrell and Davis: a weighted mean of all order statistics, smoother and mostly more precise than one
/// or two of them (harrell-davis-1982).</summary>
/// <remarks>Every value has some weight, so a wild one near the quantile's end is felt; for a median of many values its weight
/// is next to nothing.</remarks>
public static class HarrellDavis
{
    /// <summary>The quantile, with its jackknife standard error. O(n log n), with n values of the incomplete beta function for
    /// each of the two.</summary>
    /// <remarks>There is no interval. With one value, or where all are equal, there is no standard error, and a note says so.</remarks>
    /// <param name="sample">The sample.</param>
    /// <param name="probability">Which quantile, above 0 and below 1; 0.5 is the median.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability lies outside (0, 1), or the values spread over more
    /// than the greatest number.</exception>
    public static Estimate Quantile(Sample sample, double probability)
    {
        const string method = "quantile, Harrell-Davis, jackknife";
        ArgumentNullException.ThrowIfNull(sample);
        if (!(probability > 0 && probability < 1))
        {
            throw Check.OutOfRange(nameof(probability), "Probability", "above 0 and below 1", probability);
        }

        ReadOnlySpan<double> sorted = sample.Sorted;
        int n = sorted.Length;
        if (sorted[0] == sorted[^1])
        {
            string note = n == 1 ? "One value shows no spread" : "All values are equal: the spread is not resolved";
            return new Estimate(sorted[0], n, method) { Notes = [note + ", so no standard error."] };
        }

        double[] weights = Weights(n, probability);
        var sum = new CompensatedSum();
        for (int i = 0; i < n; i++)
        {
            sum.Add(weights[i] * sorted[i]);
        }

        double error = JackknifeError(sorted, Weights(n - 1, probability));
        return new Estimate(Math.Clamp(sum.Value, sorted[0], sorted[^1]), n, method)
        {
            StandardError = Check.Representable(error, "Standard error", nameof(sample)),
        };
    }

    /// <summary>The weight of each order statistic: a beta distribution's probability between (i − 1)/n and i/n
    /// (harrell-davis-1982, eq. 1).</summary>
    private static double[] Weights(int n, double probability)
    {
        var beta = BetaDistribution.Of((n + 1) * probability, (n + 1) * (1 - probability));
        double[] weights = new double[n];
        double below = 0;
        double above = 1;
        for (int i = 0; i < n; i++)
        {
            double end = (i + 1.0) / n;
            double lower = beta.Cdf(end);
            double upper = beta.UpperTail(end);
            // Of the two differences that of the smaller tails loses no digits.
            weights[i] = lower < 0.5 ? lower - below : above - upper;
            (below, above) = (lower, upper);
        }

        return weights;
    }

    /// <summary>The jackknife's error: the spread of the quantiles that leave one value out, all of which come from running
    /// sums from both ends.</summary>
    private static double JackknifeError(ReadOnlySpan<double> sorted, double[] weights)
    {
        int n = sorted.Length;
        double[] leftOut = new double[n];
        // From the middle of the data, so that the sums keep the digits of the spread.
        double origin = sorted[n / 2];
        var run = new CompensatedSum();
        for (int i = 1; i < n; i++)
        {
            run.Add(weights[i - 1] * (sorted[i - 1] - origin));
            leftOut[i] = run.Value;
        }

        run = new CompensatedSum();
        for (int i = n - 2; i >= 0; i--)
        {
            run.Add(weights[i] * (sorted[i + 1] - origin));
            leftOut[i] += run.Value;
        }

        return SquaredDeviations.Of(leftOut).RootOver(n / (n - 1.0));
    }
}
