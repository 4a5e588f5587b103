using System.Buffers;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests of whether several independent groups differ in level.</summary>
public static class OneWay
{
    /// <summary>The one-way analysis of variance (fisher-1925), for populations known to spread alike. O(n).</summary>
    /// <remarks>
    /// The order of groups and a shift of all values change nothing, up to rounding; with two groups F is the square of
    /// <see cref="TwoSample.Pooled"/>'s t. Exact for normal populations; for others close to it once the counts are large
    /// beside the skewness. Where the spreads differ and the counts too, its size is wrong (27 % for a
    /// level of 5 %, with groups of 3, 6 and 12 and the spread falling from 4 to 1): use <see cref="Welch"/>.
    /// Digits: sums of squares keep about 13 of those that the rounded data hold, whatever the offset.
    /// </remarks>
    /// <param name="groups">Two groups or more, one value or more in each and more values than groups, in one unit.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null, there are no more values than
    /// groups, or the values do not spread within any group, which leaves F undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">F or a sum of squares is above the greatest number.</exception>
    public static AnovaResult Anova(params ReadOnlySpan<Sample> groups)
    {
        Groups.RefuseUnfit(groups, nameof(groups));
        var table = VarianceTable.Of(groups);
        FTestResult test = table.Test("one-way analysis of variance", "Values", nameof(groups));
        return new AnovaResult(
            test,
            Row("between groups", table.Between, table.BetweenDegreesOfFreedom, table.Exponent),
            Row("within groups", table.Within, table.WithinDegreesOfFreedom, table.Exponent),
            Math.ScaleB(Math.Sqrt(table.Within / table.WithinDegreesOfFreedom), table.Exponent),
            table.Between / (table.Between + table.Within)
        );
    }

    /// <summary>Welch's test that the means of several groups are equal (welch-1951), which does not take the variances
    /// to be equal. O(n).</summary>
    /// <remarks>The order of groups and a shift of all values change nothing, up to rounding; with two groups F is the
    /// square of <see cref="TwoSample.Welch"/>'s t. In simulated normal samples with spreads up to four times as large in
    /// one group as in another, a level of 5 % was 4.5 to 5.5 % from five values a group and 3.6 to 7.3 % with groups of
    /// three.</remarks>
    /// <param name="groups">Two groups or more, each of two values or more that are not all equal, in one unit.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null or has one value, or the values
    /// of a group are all equal, which gives it an infinite weight.</exception>
    /// <exception cref="ArgumentOutOfRangeException">F is above the greatest number.</exception>
    public static FTestResult Welch(params ReadOnlySpan<Sample> groups)
    {
        Groups.Count(groups, 2, nameof(groups));
        foreach (Sample group in groups)
        {
            Check.AtLeast(group.Count, 2, nameof(groups));
        }

        var moments = GroupMoments.Of(groups);
        int k = moments.Groups;
        double least = LeastError(moments, nameof(groups));
        Span<double> weights = k <= 64 ? stackalloc double[k] : new double[k];
        double weight = 0;
        double weighted = 0;
        for (int i = 0; i < k; i++)
        {
            // In shares of the heaviest group's weight, so that no square leaves the range.
            double ratio = least / moments.ErrorOfMean(i);
            weights[i] = ratio * ratio;
            weight += weights[i];
            weighted += weights[i] * moments.Offset(i);
        }

        double grand = weighted / weight;
        double between = 0;
        double lack = 0;
        for (int i = 0; i < k; i++)
        {
            double deviation = Math.ScaleB(moments.Offset(i) - grand, moments.Exponent) / least;
            between += weights[i] * deviation * deviation;
            double rest = 1 - weights[i] / weight;
            lack += rest * rest / (moments.CountOf(i) - 1);
        }

        // The approximation of welch-1951.
        double squares = (double)k * k - 1;
        double f = between / (k - 1) / (1 + 2 * (k - 2) * lack / squares);
        double df = squares / (3 * lack);
        return new FTestResult(
            Check.Representable(f, "F", nameof(groups)),
            k - 1,
            df,
            FisherF.Of(k - 1, df).UpperTail(f),
            moments.Count,
            "Welch's analysis of variance"
        );
    }

    /// <summary>The Kruskal–Wallis test, corrected for ties (kruskal-wallis-1952, eq. 1.1 and 1.3). O(n log n).</summary>
    /// <remarks>Target: whether values of some group tend to be larger than those of another; a difference in medians where
    /// all groups have one shape. The chi-square distribution is close from five values a group on; for fewer the p-value is
    /// rough, and mostly too large. For two groups it is the Mann–Whitney test by the normal distribution without continuity
    /// correction. Only the order of the values counts.</remarks>
    /// <param name="groups">Two groups or more, one value or more in each, in one unit.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null, or all values are equal, which
    /// leaves the statistic undefined.</exception>
    public static ChiSquaredTestResult KruskalWallis(params ReadOnlySpan<Sample> groups)
    {
        int count = Groups.Count(groups, 2, nameof(groups));
        double[] scratch = ArrayPool<double>.Shared.Rent(checked(2 * count));
        Span<double> values = scratch.AsSpan(0, count);
        Span<double> ranks = scratch.AsSpan(count, count);
        int filled = 0;
        foreach (Sample group in groups)
        {
            group.Values.CopyTo(values[filled..]);
            filled += group.Count;
        }

        double tieTerm = Ranks.Fill(values, ranks);
        double n = count;
        double ties = (n * n * n - n - tieTerm) / (n * n * n - n);
        double between = 0;
        filled = 0;
        foreach (Sample group in groups)
        {
            double sum = 0;
            foreach (double rank in ranks.Slice(filled, group.Count))
            {
                sum += rank - (n + 1) / 2;
            }

            between += sum * sum / group.Count;
            filled += group.Count;
        }

        bool allEqual = values.IndexOfAnyExcept(values[0]) < 0;
        ArrayPool<double>.Shared.Return(scratch);
        if (allEqual)
        {
            throw new ArgumentException(
                "Values must differ; all were equal, which leaves the rank statistic undefined.",
                nameof(groups)
            );
        }

        double statistic = 12 / (n * (n + 1)) * between / ties;
        int df = groups.Length - 1;
        return new ChiSquaredTestResult(
            statistic,
            df,
            ChiSquared.Of(df).UpperTail(statistic),
            count,
            tieTerm > 0 ? "Kruskal-Wallis, corrected for ties" : "Kruskal-Wallis"
        );
    }

    private static AnovaRow Row(string source, double sum, double df, int exponent) =>
        new(source, Check.Representable(Math.ScaleB(sum, 2 * exponent), "Sum of squares", "groups"), (int)df);

    private static double LeastError(GroupMoments moments, string name)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < moments.Groups; i++)
        {
            double error = moments.ErrorOfMean(i);
            if (error == 0)
            {
                throw new ArgumentException(
                    string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"Values of the group at index {i} must differ; all were equal, which gives it an infinite weight."
                    ),
                    name
                );
            }

            least = Math.Min(least, error);
        }

        return least;
    }
}
