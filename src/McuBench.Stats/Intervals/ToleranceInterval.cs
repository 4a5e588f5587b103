using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Intervals that hold a stated share of a population with a stated confidence (hahn-meeker-1991, sections 4.5 and
/// 5.3).</summary>
public static class ToleranceInterval
{
    /// <summary>The tolerance interval of a normal population, mean ± k·s with the exact factor. O(n), and some
    /// milliseconds for the factor.</summary>
    /// <remarks>It rests on normality in the tails, where that is seldom checked. The estimate is the mean. With one value, or
    /// where all are equal, there is no interval, and a note says so.</remarks>
    /// <param name="sample">The sample.</param>
    /// <param name="options">The promise; <see cref="ToleranceOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An end of the interval is above the greatest number.</exception>
    public static Estimate Normal(Sample sample, ToleranceOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        options ??= ToleranceOptions.Default;
        int n = sample.Count;
        string method = MethodOf(options, "normal");
        if (n == 1)
        {
            return new Estimate(sample.Values[0], n, method) { Notes = [SpreadNotes.OneValue] };
        }

        var deviations = SquaredDeviations.Of(sample.Values);
        double mean = deviations.UnscaledMean;
        double deviation = deviations.RootOver(n - 1);
        if (deviation == 0)
        {
            return new Estimate(mean, n, method) { Notes = [SpreadNotes.AllEqual] };
        }

        double k = ToleranceFactor.Of(n, options);
        double reach = Check.Representable(k * deviation, "Reach of the interval", nameof(sample));
        return new Estimate(mean, n, method)
        {
            Interval = new Interval(
                options.Side == ToleranceSide.Upper
                    ? double.NegativeInfinity
                    : Check.Representable(mean - reach, "Lower end", nameof(sample)),
                options.Side == ToleranceSide.Lower
                    ? double.PositiveInfinity
                    : Check.Representable(mean + reach, "Upper end", nameof(sample)),
                options.Confidence
            ),
            Notes = [FormattableString.Invariant($"Tolerance factor {k:0.0000}.")],
        };
    }

    /// <summary>The tolerance interval of any population, between order statistics (wilks-1941). O(n log n).</summary>
    /// <remarks>Exact for continuous populations, more confident with ties. The estimate is the median. A note gives the
    /// ranks and the confidence reached.</remarks>
    /// <param name="sample">The sample; for 99 % of the population with confidence 95 % at least 299 values on one side,
    /// 473 on both.</param>
    /// <param name="options">The promise; <see cref="ToleranceOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few values; the message says how many would do.</exception>
    public static Estimate DistributionFree(Sample sample, ToleranceOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        options ??= ToleranceOptions.Default;
        int n = sample.Count;
        bool both = options.Side == ToleranceSide.Both;
        var inside = Binomial.Of(n, options.Content);
        // So many spacings hold the content with the confidence; two open sides leave n − 1, one leaves n.
        long spacings = inside.Quantile(options.Confidence) + 1;
        long spare = (both ? n - 1 : n) - spacings;
        if (spare < 0)
        {
            string purpose = FormattableString.Invariant(
                $"{options.Content * 100:0.######} % of any population with confidence {options.Confidence * 100:0.######} %"
            );
            throw OrderStatistics.TooFew(purpose, Needed(options), n);
        }

        (long, long) ranks = options.Side switch
        {
            ToleranceSide.Upper => (0, n - spare),
            ToleranceSide.Lower => (1 + spare, n + 1L),
            _ => (1 + spare / 2, n - (spare - spare / 2)),
        };
        return OrderStatistics.Between(
            sample,
            Location.Median(sample),
            ranks,
            options.Confidence,
            inside.Cdf(spacings - 1),
            MethodOf(options, "order statistics")
        );
    }

    /// <summary>The least count whose extremes would do: by doubling, then halving the steps.</summary>
    private static long Needed(ToleranceOptions options)
    {
        int extremes = options.Side == ToleranceSide.Both ? 2 : 1;
        bool Holds(long n) => Binomial.Of(n, options.Content).Cdf(n - extremes) >= options.Confidence;
        long enough = extremes;
        while (!Holds(enough))
        {
            enough *= 2;
        }

        long tooFew = enough / 2;
        while (enough - tooFew > 1)
        {
            long middle = tooFew + (enough - tooFew) / 2;
            (tooFew, enough) = Holds(middle) ? (tooFew, middle) : (middle, enough);
        }

        return enough;
    }

    private static string MethodOf(ToleranceOptions options, string how)
    {
        string side = options.Side switch
        {
            ToleranceSide.Upper => "upper ",
            ToleranceSide.Lower => "lower ",
            _ => "",
        };
        return FormattableString.Invariant($"{side}tolerance for {options.Content * 100:0.######} %, {how}");
    }
}
