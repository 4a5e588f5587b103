using System.Collections.Immutable;
using System.Globalization;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Hypotheses;

/// <summary>Comparisons of all pairs of several groups, with intervals that hold all at once.</summary>
public static class Pairwise
{
    /// <summary>Tukey's comparisons of means with one pooled variance, in Kramer's form for unequal counts
    /// (tukey-1953, kramer-1956). O(n), and a studentized range's tail, some 0.1 ms, for each pair.</summary>
    /// <remarks>Exact for normal populations that spread alike when the counts are equal, and on the safe side when they
    /// are not (hayter-1984). Needs no analysis of variance beforehand. Where the spreads differ, use
    /// <see cref="GamesHowell"/>.</remarks>
    /// <param name="groups">Two groups or more, one value or more in each and more values than groups, in one unit.</param>
    /// <param name="confidence">The confidence with which all intervals hold at once, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null, there are no more values than
    /// groups, or the values do not spread within any group, which leaves q undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or there are more than 1000
    /// groups, or an end of an interval is above the greatest number.</exception>
    public static PairwiseResult Tukey(ReadOnlySpan<Sample> groups, double confidence = 0.95)
    {
        Check.Confidence(confidence);
        Groups.RefuseUnfit(groups, nameof(groups));
        var moments = GroupMoments.Of(groups);
        var table = VarianceTable.Of(moments);
        table.RefuseNoSpread("Values", "q", nameof(groups));
        double df = table.WithinDegreesOfFreedom;
        double deviation = Math.ScaleB(Math.Sqrt(table.Within / df), table.Exponent);
        var range = StudentizedRange.Of(moments.Groups, df);
        double critical = range.UpperQuantile(1 - confidence);
        string method = "Tukey-Kramer";
        return Compare(
            moments.Groups,
            confidence,
            method,
            (i, j) =>
            {
                double error = deviation * Math.Sqrt(1.0 / moments.CountOf(i) + 1.0 / moments.CountOf(j));
                return ByRange(moments, i, j, new WelchError(error, df), range, critical, confidence, method);
            }
        );
    }

    /// <summary>Games and Howell's comparisons of means, each pair with its own variances (games-howell-1976). O(n), and
    /// a studentized range's quantile, some 0.5 ms, for each pair.</summary>
    /// <remarks>Approximate, since the degrees of freedom are estimated; with two groups it is <see cref="TwoSample.Welch"/>.</remarks>
    /// <param name="groups">Two groups or more, each of two values or more, in one unit.</param>
    /// <param name="confidence">The confidence with which all intervals hold at once, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null or has one value, or the values
    /// are all equal in two groups, which leaves q undefined for that pair.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or there are more than 1000
    /// groups, or an end of an interval is above the greatest number.</exception>
    public static PairwiseResult GamesHowell(ReadOnlySpan<Sample> groups, double confidence = 0.95)
    {
        Check.Confidence(confidence);
        Groups.Count(groups, 2, nameof(groups));
        foreach (Sample group in groups)
        {
            Check.AtLeast(group.Count, 2, nameof(groups));
        }

        var moments = GroupMoments.Of(groups);
        string method = "Games-Howell";
        return Compare(
            moments.Groups,
            confidence,
            method,
            (i, j) =>
            {
                var error = WelchError.Of(
                    moments.ErrorOfMean(i),
                    moments.CountOf(i) - 1,
                    moments.ErrorOfMean(j),
                    moments.CountOf(j) - 1
                );
                RefuseNoSpread(error.Value, i, j);
                // At least the smaller group's degrees of freedom, but for rounding.
                var range = StudentizedRange.Of(moments.Groups, Math.Max(1, error.DegreesOfFreedom));
                return ByRange(moments, i, j, error, range, range.UpperQuantile(1 - confidence), confidence, method);
            }
        );
    }

    /// <summary>Dunn's comparisons of mean ranks (dunn-1964), ties corrected for. O(n log n).</summary>
    /// <remarks>
    /// All values are ranked together, equal ones with their mean rank, as for the Kruskal–Wallis test. Target: the
    /// difference of mean ranks, which depends on all groups at hand. P-values are from the normal distribution, on the safe
    /// side in groups of fewer than five values; where the groups differ in spread and count its size is wrong, as that of the
    /// analysis of variance is. The intervals are Bonferroni's whatever the adjustment, since the others
    /// have no simple ones: an interval may hold 0 where the adjusted p-value is below the level, but for
    /// <see cref="AdjustmentMethod.Bonferroni"/>, with which they agree.
    /// </remarks>
    /// <param name="groups">Two groups or more, one value or more in each and more values than groups, in one unit.</param>
    /// <param name="adjustment">How the p-values are adjusted for the number of pairs.</param>
    /// <param name="confidence">The confidence with which all intervals hold at once, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null, there are no more values than
    /// groups, or all values are equal, which leaves z undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or the adjustment is not a named
    /// one.</exception>
    public static PairwiseResult Dunn(
        ReadOnlySpan<Sample> groups,
        AdjustmentMethod adjustment = AdjustmentMethod.Holm,
        double confidence = 0.95
    )
    {
        Check.Confidence(confidence);
        Check.Named(adjustment);
        Groups.RefuseUnfit(groups, nameof(groups));
        double[] means = MeanRanks(groups, out double variance);
        if (variance == 0)
        {
            throw new ArgumentException(
                "Values must differ; all were equal, which leaves z undefined.",
                nameof(groups)
            );
        }

        int k = groups.Length;
        int[] counts = new int[k];
        for (int i = 0; i < k; i++)
        {
            counts[i] = groups[i].Count;
        }

        double critical = Normal.Standard.UpperQuantile((1 - confidence) / k / (k - 1));
        string method = $"Dunn, {adjustment}";
        PairwiseResult plain = Compare(
            k,
            confidence,
            method,
            (i, j) =>
            {
                double error = Math.Sqrt(variance * (1.0 / counts[i] + 1.0 / counts[j]));
                double z = (means[i] - means[j]) / error;
                Estimate difference = Difference(
                    means[i] - means[j],
                    counts[i] + counts[j],
                    new WelchError(error, double.PositiveInfinity),
                    critical * error,
                    confidence,
                    "difference of mean ranks, Dunn"
                );
                return new PairComparison(i, j, difference, z, 2 * Normal.Standard.UpperTail(Math.Abs(z)));
            }
        );
        double[] pValues = [.. plain.Pairs.Select(pair => pair.PValue)];
        AdjustedPValues adjusted = MultipleComparisons.Adjust(pValues, adjustment);
        ImmutableArray<PairComparison> pairs =
        [
            .. plain.Pairs.Select((pair, i) => pair with { PValue = adjusted.Values[i] }),
        ];
        return new PairwiseResult(pairs, confidence, method);
    }

    private static PairwiseResult Compare(
        int groups,
        double confidence,
        string method,
        Func<int, int, PairComparison> compare
    )
    {
        var pairs = ImmutableArray.CreateBuilder<PairComparison>(groups * (groups - 1) / 2);
        for (int i = 0; i < groups; i++)
        {
            for (int j = i + 1; j < groups; j++)
            {
                pairs.Add(compare(i, j));
            }
        }

        return new PairwiseResult(pairs.MoveToImmutable(), confidence, method);
    }

    private static PairComparison ByRange(
        GroupMoments moments,
        int i,
        int j,
        WelchError error,
        StudentizedRange range,
        double critical,
        double confidence,
        string method
    )
    {
        double difference = moments.Difference(i, j);
        // The range is studentized by the error of one mean, where a difference has that of two.
        double q = Math.Abs(difference) / error.Value * Math.Sqrt(2);
        Estimate estimate = Difference(
            difference,
            moments.CountOf(i) + moments.CountOf(j),
            error,
            critical / Math.Sqrt(2) * error.Value,
            confidence,
            $"difference of means, {method}"
        );
        double pValue = range.UpperTail(Check.Representable(q, "q", "groups"));
        return new PairComparison(i, j, estimate, q, pValue);
    }

    private static Estimate Difference(
        double value,
        int count,
        WelchError error,
        double reach,
        double confidence,
        string method
    ) =>
        new(value, count, method)
        {
            StandardError = error.Value,
            DegreesOfFreedom = error.DegreesOfFreedom,
            Interval = new Interval(
                Check.Representable(value - reach, "Lower end", "groups"),
                Check.Representable(value + reach, "Upper end", "groups"),
                confidence
            ),
        };

    private static double[] MeanRanks(ReadOnlySpan<Sample> groups, out double variance)
    {
        int n = 0;
        foreach (Sample group in groups)
        {
            n += group.Count;
        }

        double[] values = new double[n];
        int start = 0;
        foreach (Sample group in groups)
        {
            group.Values.CopyTo(values.AsSpan(start));
            start += group.Count;
        }

        double[] ranks = new double[n];
        double ties = Ranks.Fill(values, ranks);
        // The variance of one rank with ties (dunn-1964); exactly 0 where all values are equal.
        double t = n;
        variance = (t * t * t - t - ties) / (12 * (t - 1));
        double[] means = new double[groups.Length];
        start = 0;
        for (int i = 0; i < means.Length; i++)
        {
            double sum = 0;
            foreach (double rank in ranks.AsSpan(start, groups[i].Count))
            {
                sum += rank;
            }

            means[i] = sum / groups[i].Count;
            start += groups[i].Count;
        }

        return means;
    }

    private static void RefuseNoSpread(double error, int i, int j)
    {
        if (error == 0)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Values must differ within at least one group of each pair; all were equal in those at index {i} and {j}, which leaves q undefined."
                ),
                "groups"
            );
        }
    }
}
