using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Confidence intervals for the median and other quantiles of a population, from order statistics; no shape is
/// taken for granted (hahn-meeker-1991, section 5.2).</summary>
/// <remarks>The estimate is the sample quantile of definition 8, which is the median at probability 0.5. Notes give the ranks
/// used and the confidence that they reach.</remarks>
public static class QuantileInterval
{
    /// <summary>The interval between two order statistics, each tail at most half of what the confidence leaves: never less
    /// than its confidence, and mostly more. O(n log n).</summary>
    /// <param name="sample">The sample; for the median at 95 % at least 6 values.</param>
    /// <param name="probability">Which quantile, above 0 and below 1; 0.5 is the median.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few values; the message says how many would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability or the confidence is out of range.</exception>
    public static Estimate Exact(Sample sample, double probability = 0.5, double confidence = 0.95)
    {
        (long lower, long upper) = Ranks(sample, probability, confidence);
        var below = Binomial.Of(sample.Count, probability);
        return OrderStatistics.Between(
            sample,
            Quantiles.Of(sample, probability, QuantileDefinition.HyndmanFan8),
            (lower, upper),
            confidence,
            1 - below.Cdf(lower - 1) - below.UpperTail(upper - 1),
            MethodOf(probability, "order statistics")
        );
    }

    /// <summary>The interval with ends interpolated between the order statistics next to them, so that its confidence is close
    /// to what was asked for instead of above it (hettmansperger-sheather-1986; nyblom-1992). O(n log n).</summary>
    /// <remarks>Close for populations of any common shape, not guaranteed for all.</remarks>
    /// <param name="sample">The sample; for the median at 95 % at least 6 values.</param>
    /// <param name="probability">Which quantile, above 0 and below 1; 0.5 is the median.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few values; the message says how many would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability or the confidence is out of range.</exception>
    public static Estimate Interpolated(Sample sample, double probability = 0.5, double confidence = 0.95)
    {
        (long lower, long upper) = Ranks(sample, probability, confidence);
        int n = sample.Count;
        double tail = (1 - confidence) / 2;
        ReadOnlySpan<double> sorted = sample.Sorted;
        double up = Share(n, lower, probability, tail);
        double down = Share(n, n + 1 - upper, 1 - probability, tail);
        double low = sorted[(int)lower - 1];
        double high = sorted[(int)upper - 1];
        // Where the innermost ranks meet there is no further order statistic to move towards.
        low += lower < n ? up * (sorted[(int)lower] - low) : 0;
        high -= upper > 1 ? down * (high - sorted[(int)upper - 2]) : 0;
        string note = FormattableString.Invariant(
            $"Interpolated from order statistics {lower} and {upper} of {n} towards the next ones."
        );
        return OrderStatistics.WithEnds(
            Quantiles.Of(sample, probability, QuantileDefinition.HyndmanFan8),
            n,
            low,
            high,
            confidence,
            MethodOf(probability, "interpolated order statistics"),
            note
        );
    }

    /// <summary>The innermost ranks at which neither tail is above its share.</summary>
    private static (long Lower, long Upper) Ranks(Sample sample, double probability, double confidence)
    {
        ArgumentNullException.ThrowIfNull(sample);
        if (!(probability > 0 && probability < 1))
        {
            throw Check.OutOfRange(nameof(probability), "Probability", "above 0 and below 1", probability);
        }

        Check.Confidence(confidence);
        int n = sample.Count;
        double tail = (1 - confidence) / 2;
        var below = Binomial.Of(n, probability);
        long reached = below.Quantile(tail);
        long lower = below.Cdf(reached) <= tail * (1 + 1e-13) ? reached + 1 : reached;
        long upper = below.UpperQuantile(tail) + 1;
        if (lower < 1 || upper > n)
        {
            double needed = Math.Ceiling(Math.Log(tail) / Math.Log(Math.Max(probability, 1 - probability)) - 1e-12);
            string purpose = FormattableString.Invariant(
                $"the quantile at {probability:0.######} with confidence {confidence * 100:0.######} %"
            );
            throw OrderStatistics.TooFew(purpose, needed, n);
        }

        return (lower, upper);
    }

    /// <summary>How far a limit lies from its order statistic towards the next one inwards (nyblom-1992; at the median this
    /// is hettmansperger-sheather-1986).</summary>
    private static double Share(int n, long rank, double probability, double tail)
    {
        var below = Binomial.Of(n, probability);
        double outer = below.Cdf(rank - 1);
        double inner = below.Cdf(rank);
        double towards = (n - rank) * probability * (tail - outer);
        return towards / (towards + rank * (1 - probability) * (inner - tail));
    }

    private static string MethodOf(double probability, string how) =>
        probability == 0.5
            ? $"median, {how}"
            : FormattableString.Invariant($"quantile at {probability:0.######}, {how}");
}
