using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>
/// Confidence intervals that belong to the rank tests: all centres, or shifts, that the signed-rank or the Mann–Whitney test
/// would not reject (lehmann-1963; hollander-wolfe-1999, sections 3.3 and 4.3).
/// </summary>
/// <remarks>
/// <para>Both run between order statistics of all pairs; a note gives their ranks and the confidence that they reach. The pairs
/// number n², yet time is O(n log n) and memory O(n) besides the exact distribution.</para>
/// <para>Exact never has less confidence than asked for, ties included, which make it wider than need be. The normal
/// distribution takes the variance that the ties within each sample leave, and half a step towards more confidence.</para>
/// </remarks>
public static class HodgesLehmannInterval
{
    private const int MostByDefault = 50;
    private const int MostPairsByDefault = 2500;

    /// <summary>The centre of a symmetric population: the median of the means of all pairs, with the interval of the
    /// signed-rank test.</summary>
    /// <remarks>Where the population is not symmetric, the target is the median of the mean of two draws. Automatic means exact
    /// for up to 50 values. O(n log n); exact O(n³) more.</remarks>
    /// <param name="sample">The sample; at 95 % at least 6 values.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="distribution">Where the ranks come from.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few values; the message says how many would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence or the distribution is out of range, or the exact one is
    /// wanted for more than 1000 values.</exception>
    public static Estimate Location(
        Sample sample,
        double confidence = 0.95,
        NullDistribution distribution = NullDistribution.Automatic
    )
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Confidence(confidence);
        Check.Named(distribution);
        int n = sample.Count;
        double tail = (1 - confidence) / 2;
        // The outermost pair mean is passed by one of 2^n orders of signs.
        int needed = (int)Math.Ceiling(-Math.Log2(tail) - 1e-12);
        if (n < needed)
        {
            throw OrderStatistics.TooFew(Purpose("a signed-rank interval", confidence), needed, n);
        }

        bool isExact = RankEnds.TakesExact(distribution, n <= MostByDefault);
        if (isExact && n > RankDistribution.MostSignedRanks)
        {
            throw Check.OutOfRange(
                nameof(sample),
                "Count of values for the exact distribution",
                FormattableString.Invariant($"at most {RankDistribution.MostSignedRanks}"),
                n
            );
        }

        using var means = new WalshSums(sample.Sorted);
        RankEnds ends = isExact
            ? RankEnds.Exact(RankDistribution.SignedRank(n), tail)
            : RankEnds.Normal(means.Count, VarianceOfSignedRank(sample), tail);
        return OrderStatistics.WithEnds(
            means.Median(),
            n,
            means.Select(ends.Rank - 1),
            means.Select(means.Count - ends.Rank),
            confidence,
            $"centre, Hodges-Lehmann, {ends.Method}",
            ends.Note(means.Count, "means of pairs")
        );
    }

    /// <summary>The shift of one population against another of the same shape: the median of all differences of a first value
    /// less a second one, with the interval of the Mann–Whitney test.</summary>
    /// <remarks>Where the shapes differ, the target is the median of the difference of two draws, and the confidence may not
    /// hold. Automatic means exact for up to 2,500 pairs. Swapping the samples turns the interval round. O((n + m) log(n + m));
    /// exact O(n²m²) more.</remarks>
    /// <param name="first">The first sample; at 95 % at least 4 values where the other has as many.</param>
    /// <param name="second">The second sample, in the same unit.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="distribution">Where the ranks come from.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">There are too few values; the message says how many a side would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence or the distribution is out of range, the exact one is wanted
    /// for more than 20,000 pairs, or a difference is above the greatest number.</exception>
    public static Estimate Shift(
        Sample first,
        Sample second,
        double confidence = 0.95,
        NullDistribution distribution = NullDistribution.Automatic
    )
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Check.Confidence(confidence);
        Check.Named(distribution);
        (int m, int n) = (first.Count, second.Count);
        double tail = (1 - confidence) / 2;
        RefuseTooFew(m, n, confidence, tail);
        var differences = new PairDifferences(second.Sorted, first.Sorted, PairRegion.All);
        long pairs = differences.Count;
        RankEnds ends = RankEnds.TakesExact(distribution, pairs <= MostPairsByDefault)
            ? RankEnds.Exact(RankDistribution.MannWhitney(m, n), tail)
            : RankEnds.Normal(pairs, VarianceOfMannWhitney(first, second), tail);
        double lower = differences.Select(ends.Rank - 1);
        double upper = differences.Select(pairs - ends.Rank);
        return OrderStatistics.WithEnds(
            Check.Representable(differences.Median(), "Shift", nameof(first)),
            checked(m + n),
            Check.Representable(lower, "Lower end", nameof(first)),
            Check.Representable(upper, "Upper end", nameof(first)),
            confidence,
            $"shift, Hodges-Lehmann, {ends.Method}",
            ends.Note(pairs, "differences")
        );
    }

    /// <summary>The factor of one population over another of the same shape on a logarithmic scale: the shift of the logarithms,
    /// taken back.</summary>
    /// <remarks>Where the shapes differ, the target is the median of the ratio of two draws. All else is as for
    /// <see cref="Shift"/>; swapping the samples gives the reciprocal.</remarks>
    /// <param name="numerator">The sample above the line, all values above 0; at 95 % at least 4 values where the other has as
    /// many.</param>
    /// <param name="denominator">The sample below the line, all values above 0, in the same unit.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="distribution">Where the ranks come from.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">There are too few values; the message says how many a side would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, the confidence or the distribution is out of range, the
    /// exact one is wanted for more than 20,000 pairs, or the ratio or an end is not a finite number.</exception>
    public static Estimate Ratio(
        Sample numerator,
        Sample denominator,
        double confidence = 0.95,
        NullDistribution distribution = NullDistribution.Automatic
    )
    {
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        Estimate shift = Shift(
            Sample.Of(RatioInterval.Logarithms(numerator, nameof(numerator))),
            Sample.Of(RatioInterval.Logarithms(denominator, nameof(denominator))),
            confidence,
            distribution
        );
        var ratio = new Estimate(
            FromLogarithm(shift.Value, "Ratio"),
            shift.Count,
            shift.Method.Replace("shift", "ratio", StringComparison.Ordinal) + " on logarithms"
        )
        {
            Notes = shift.Notes,
        };
        return shift.Interval is null
            ? ratio
            : ratio with
            {
                Interval = new Interval(
                    FromLogarithm(shift.Interval.Lower, "Lower end"),
                    FromLogarithm(shift.Interval.Upper, "Upper end"),
                    confidence
                ),
            };
    }

    private static double FromLogarithm(double logarithm, string what) =>
        Check.Representable(Math.Exp(logarithm), what, "numerator");

    private static void RefuseTooFew(int m, int n, double confidence, double tail)
    {
        // The outermost difference is passed by one of the orders of the two samples' values; a slack for rounding.
        if (Orders(m, n) * tail >= 1 - 1e-12)
        {
            return;
        }

        int needed = 1;
        while (Orders(needed, needed) * tail < 1 - 1e-12)
        {
            needed++;
        }

        throw new ArgumentException(
            FormattableString.Invariant(
                $"Count of values must be at least {needed} a side for {Purpose("a two-sample rank interval", confidence)}; was {m} and {n}."
            ),
            m <= n ? "first" : "second"
        );
    }

    /// <summary>In how many orders the values of two samples can be; infinite where a double can't hold it.</summary>
    private static double Orders(int m, int n)
    {
        double orders = 1;
        for (int i = 1; i <= Math.Min(m, n) && double.IsFinite(orders); i++)
        {
            orders *= ((double)Math.Max(m, n) + i) / i;
        }

        return orders;
    }

    private static string Purpose(string what, double confidence) =>
        FormattableString.Invariant($"{what} with confidence {confidence * 100:0.######} %");

    /// <summary>The variance of the signed-rank sum about a centre that no mean of a pair equals: values tie with themselves
    /// alone.</summary>
    private static double VarianceOfSignedRank(Sample sample)
    {
        double n = sample.Count;
        return n * (n + 1) * (2 * n + 1) / 24 - TieTerm(sample.Sorted) / 48;
    }

    /// <summary>The variance of U at a shift that no difference equals: values tie within their own sample alone.</summary>
    private static double VarianceOfMannWhitney(Sample first, Sample second)
    {
        double total = (double)first.Count + second.Count;
        double ties = TieTerm(first.Sorted) + TieTerm(second.Sorted);
        return (double)first.Count * second.Count / 12 * (total + 1 - ties / (total * (total - 1)));
    }

    /// <summary>The sum of t³ − t over groups of t equal values.</summary>
    private static double TieTerm(ReadOnlySpan<double> sorted)
    {
        double term = 0;
        int start = 0;
        for (int i = 1; i <= sorted.Length; i++)
        {
            if (i == sorted.Length || sorted[i] != sorted[start])
            {
                double t = i - start;
                term += t * t * t - t;
                start = i;
            }
        }

        return term;
    }
}
