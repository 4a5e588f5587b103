using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Intervals;

/// <summary>Where further values from the same population will lie.</summary>
public static class PredictionInterval
{
    /// <summary>Where the mean of further values will lie, or one further value: mean ± t·s·√(1/m + 1/n)
    /// (hahn-meeker-1991, section 4.7). O(n).</summary>
    /// <remarks>For one value it rests on normality however large the sample is; for the mean of many much less. The standard
    /// error is that of the prediction. With one value, or where all are equal, there is no interval, and a note says so.</remarks>
    /// <param name="sample">The sample.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="furtherValues">How many further values the mean is of, 1 or more.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), there are no further values, or an
    /// end of the interval is above the greatest number.</exception>
    public static Estimate Normal(Sample sample, double confidence = 0.95, int furtherValues = 1)
    {
        const string method = "prediction, Student t";
        ArgumentNullException.ThrowIfNull(sample);
        Check.Confidence(confidence);
        if (furtherValues < 1)
        {
            throw Check.OutOfRange(nameof(furtherValues), "Count of further values", "1 or more", furtherValues);
        }

        int n = sample.Count;
        if (n == 1)
        {
            return new Estimate(sample.Values[0], n, method) { Notes = [SpreadNotes.OneValue] };
        }

        var deviations = SquaredDeviations.Of(sample.Values);
        double error = deviations.RootOver(n - 1) * Math.Sqrt(1.0 / furtherValues + 1.0 / n);
        return TInterval.Of(deviations.UnscaledMean, error, n - 1, confidence, n, method);
    }

    /// <summary>Where one further value will lie, whatever the distribution: between two order statistics, which hold it with
    /// probability (their ranks' difference)/(n + 1) or more (hahn-meeker-1991, section 5.4). O(n log n).</summary>
    /// <remarks>The estimate is the median. Exact for continuous populations, more than that with ties. A note gives the
    /// ranks and the probability reached.</remarks>
    /// <param name="sample">The sample; for 95 % at least 39 values.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few values for the confidence; the message says how many would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public static Estimate DistributionFree(Sample sample, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Confidence(confidence);
        int n = sample.Count;
        double apart = RoundedUp(confidence * (n + 1.0));
        if (apart > n - 1)
        {
            double needed = RoundedUp((1 + confidence) / (1 - confidence));
            throw OrderStatistics.TooFew(
                FormattableString.Invariant($"a distribution-free prediction at {confidence * 100:0.######} %"),
                needed,
                n
            );
        }

        int spare = n - 1 - (int)apart;
        return OrderStatistics.Between(
            sample,
            Location.Median(sample),
            (1 + spare / 2, n - (spare - spare / 2)),
            confidence,
            apart / (n + 1.0),
            "prediction, order statistics"
        );
    }

    /// <summary>The next whole number up, unless rounding alone lifted the number above one.</summary>
    private static double RoundedUp(double number)
    {
        double whole = Math.Round(number);
        return Math.Abs(number - whole) <= 1e-12 * whole ? whole : Math.Ceiling(number);
    }
}
