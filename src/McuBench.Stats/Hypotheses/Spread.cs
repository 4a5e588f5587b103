using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests of whether populations spread alike.</summary>
public static class Spread
{
    /// <summary>The F test of two variances (snedecor-cochran-1989, section 6.12). O(n).</summary>
    /// <remarks>For normal populations only: with long tails it rejects far too often, however large the counts; use
    /// <see cref="Levene"/> there.</remarks>
    /// <param name="first">The sample above the line, two values or more.</param>
    /// <param name="second">The sample below the line, two values or more that are not all equal, in the same unit.</param>
    /// <param name="options">What is asked; <see cref="VarianceRatioOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentException">A sample has one value, or one of them does not spread.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not a number that a double holds.</exception>
    public static VarianceRatioResult VarianceRatio(Sample first, Sample second, VarianceRatioOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return VarianceRatio(
            StandardDeviation(first, nameof(first)),
            first.Count,
            StandardDeviation(second, nameof(second)),
            second.Count,
            options
        );
    }

    /// <summary>The F test of two variances from published standard deviations. O(1).</summary>
    /// <remarks>As for samples.</remarks>
    /// <param name="firstDeviation">The standard deviation above the line, above 0.</param>
    /// <param name="firstCount">The number of values behind it, 2 or more.</param>
    /// <param name="secondDeviation">The standard deviation below the line, above 0, in the same unit.</param>
    /// <param name="secondCount">The number of values behind it, 2 or more.</param>
    /// <param name="options">What is asked; <see cref="VarianceRatioOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentException">A count is below 2.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is not a finite number above 0, or the ratio of
    /// their squares is not a number that a double holds.</exception>
    public static VarianceRatioResult VarianceRatio(
        double firstDeviation,
        int firstCount,
        double secondDeviation,
        int secondCount,
        VarianceRatioOptions? options = null
    )
    {
        options ??= VarianceRatioOptions.Default;
        Check.Positive(firstDeviation, "Standard deviation");
        Check.Positive(secondDeviation, "Standard deviation");
        Check.AtLeast(firstCount, 2, nameof(firstCount));
        Check.AtLeast(secondCount, 2, nameof(secondCount));
        double root = firstDeviation / secondDeviation;
        double ratio = root * root;
        Check.Positive(ratio, "Ratio of variances", nameof(firstDeviation));
        double above = firstCount - 1;
        double below = secondCount - 1;
        var distribution = FisherF.Of(above, below);
        double statistic = ratio / options.NullValue;
        double lower = distribution.Cdf(statistic);
        double upper = distribution.UpperTail(statistic);
        bool twoSided = options.Alternative == Alternative.TwoSided;
        double tail = (1 - options.Confidence) / (twoSided ? 2 : 1);
        double pValue = options.Alternative switch
        {
            Alternative.Less => lower,
            Alternative.Greater => upper,
            _ => Math.Min(1, 2 * Math.Min(lower, upper)),
        };
        var interval = new Interval(
            options.Alternative == Alternative.Less ? 0 : ratio / distribution.UpperQuantile(tail),
            options.Alternative == Alternative.Greater ? double.PositiveInfinity : ratio / distribution.Quantile(tail),
            options.Confidence
        );
        var estimate = new Estimate(ratio, firstCount + secondCount, "ratio of variances, F") { Interval = interval };
        return new VarianceRatioResult(estimate, statistic, above, below, pValue, options);
    }

    /// <summary>Levene's test that groups spread alike: the analysis of variance of the distances from each group's
    /// centre; from the median by default, which is Brown and Forsythe's form. O(n log n) in all.</summary>
    /// <remarks>Keeps its size approximately, for most continuous data of five values a group and more. In groups of two
    /// or three values the distances are so dependent that the test says little.</remarks>
    /// <param name="groups">Two groups or more, one value or more in each and more values than groups, in one unit.</param>
    /// <param name="centre">Where distances are taken from.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, a group is null, there are no more values than
    /// groups, or the distances do not spread within any group, which leaves F undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The centre is not a named one, or a distance is above the greatest
    /// number.</exception>
    public static FTestResult Levene(ReadOnlySpan<Sample> groups, SpreadCentre centre = SpreadCentre.Median)
    {
        Check.Named(centre);
        Groups.RefuseUnfit(groups, nameof(groups));
        var distances = new Sample[groups.Length];
        for (int i = 0; i < distances.Length; i++)
        {
            distances[i] = DistancesFromCentre(groups[i], centre);
        }

        var table = VarianceTable.Of(distances);
        string method = centre == SpreadCentre.Median ? "Brown-Forsythe" : "Levene";
        return table.Test(method, "Distances from the centre", nameof(groups));
    }

    private static Sample DistancesFromCentre(Sample group, SpreadCentre centre)
    {
        // Taken from the first value, so that a large offset costs the centre no digits.
        double[] distances = new double[group.Count];
        for (int k = 0; k < distances.Length; k++)
        {
            distances[k] = Check.Representable(group.Values[k] - group.Values[0], "Distance", "groups");
        }

        double middle =
            centre == SpreadCentre.Mean ? SquaredDeviations.MeanAlone(distances) : Location.Median(distances);
        for (int k = 0; k < distances.Length; k++)
        {
            distances[k] = Check.Representable(Math.Abs(distances[k] - middle), "Distance", "groups");
        }

        return Sample.Of(distances);
    }

    private static double StandardDeviation(Sample sample, string name)
    {
        Check.AtLeast(sample.Count, 2, name);
        double deviation = SquaredDeviations.Of(sample.Values).RootOver(sample.Count - 1);
        return deviation > 0
            ? deviation
            : throw new ArgumentException(
                "Values must differ; all were equal, which leaves the ratio of variances undefined.",
                name
            );
    }
}
