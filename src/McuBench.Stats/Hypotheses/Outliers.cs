using System.Collections.Immutable;
using System.Globalization;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Values that lie farther from the others than their population explains.</summary>
/// <remarks>Nothing is removed: what is found is a reason to look for a cause. A test here takes the others for a normal
/// sample; skewed populations have such values by nature.</remarks>
public static class Outliers
{
    private const int FewestForAccurateLevels = 15;

    /// <summary>Grubbs' test for one outlier (grubbs-1969). O(n log n).</summary>
    /// <remarks>
    /// Shift and scale change nothing. Critical value and p-value come from Student's t times the number of values (twice that
    /// for two sides): exact where no two values can be so far out at once, and an upper bound elsewhere. Two outliers close
    /// to each other hide one another: use <see cref="GeneralizedEsd"/>.
    /// </remarks>
    /// <param name="sample">Three values or more that are not all equal.</param>
    /// <param name="alternative">Which value is suspect: the farther of both ends, the largest
    /// (<see cref="Alternative.Greater"/>) or the smallest (<see cref="Alternative.Less"/>).</param>
    /// <param name="level">The level of the test, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">The sample is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than three values, or all are equal, which leaves G
    /// undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The alternative is not a named one, or the level lies outside
    /// (0, 1).</exception>
    public static GrubbsResult Grubbs(
        Sample sample,
        Alternative alternative = Alternative.TwoSided,
        double level = 0.05
    )
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Named(alternative);
        RefuseLevel(level);
        Check.AtLeast(sample.Count, 3, nameof(sample));
        double[] values = ShiftedValues.Of(sample);
        var all = SquaredDeviations.Of(values);
        RefuseNoSpread(all, "G");
        int n = values.Length;
        int index = Farthest(values, all.Mean, alternative);
        double statistic = Math.Abs(values[index] - all.Mean) / all.RootOver(n - 1);
        double tails = alternative == Alternative.TwoSided ? 2.0 * n : n;
        return new GrubbsResult(
            index,
            sample.Values[index],
            statistic,
            Critical(n, level / tails),
            Math.Min(1, tails * TailOfDeletion(values, index)),
            level,
            alternative,
            n
        );
    }

    /// <summary>Rosner's generalized extreme studentized deviate test for up to some number of outliers (rosner-1983), at
    /// both ends. O(n log n) and O(n) for each outlier that is looked for.</summary>
    /// <remarks>Shift and scale change nothing. A level of 5 % was 5.6 % in simulated samples of 25 values with three
    /// outliers looked for, 6.4 % in those of 15 and 8 % in those of 10; below 15 a note says so. With one outlier looked for it is Grubbs' two-sided test.</remarks>
    /// <param name="sample">Values that are not all equal, two more than outliers are looked for.</param>
    /// <param name="most">The largest number of outliers looked for, 1 or more; more than are expected, so that they can't
    /// hide one another.</param>
    /// <param name="level">The level of the test, above 0 and below 1.</param>
    /// <exception cref="ArgumentNullException">The sample is null.</exception>
    /// <exception cref="ArgumentException">There are too few values, or all are equal, which leaves R undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of outliers is below 1, or the level lies outside
    /// (0, 1).</exception>
    public static ExtremeDeviateResult GeneralizedEsd(Sample sample, int most, double level = 0.05)
    {
        ArgumentNullException.ThrowIfNull(sample);
        RefuseLevel(level);
        if (most < 1)
        {
            throw Check.OutOfRange(nameof(most), "Number of outliers", "at least 1", most);
        }

        Check.AtLeast(sample.Count, (int)Math.Min(int.MaxValue, most + 2L), nameof(sample));
        double[] values = ShiftedValues.Of(sample);
        int[] order = [.. Enumerable.Range(0, values.Length)];
        Array.Sort(values, order);
        RefuseNoSpread(SquaredDeviations.Of(values), "R");
        var steps = ImmutableArray.CreateBuilder<ExtremeDeviate>(most);
        (int from, int to) = (0, values.Length);
        int outliers = 0;
        while (steps.Count < most)
        {
            // What was put aside always lay at an end of the sorted values.
            var left = SquaredDeviations.Of(values.AsSpan(from, to - from));
            if (left.Sum == 0)
            {
                break;
            }

            int n = to - from;
            double mean = left.UnscaledMean;
            bool isLow = mean - values[from] >= values[to - 1] - mean;
            int place = isLow ? from++ : --to;
            double statistic = Math.Abs(values[place] - mean) / left.RootOver(n - 1);
            double critical = Critical(n, level / (2.0 * n));
            steps.Add(new ExtremeDeviate(order[place], sample.Values[order[place]], statistic, critical));
            outliers = statistic > critical ? steps.Count : outliers;
        }

        var notes = ImmutableArray.CreateBuilder<string>();
        if (steps.Count < most)
        {
            notes.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"After {steps.Count} of {most} steps the values that are left are all equal, and the search ends."
                )
            );
        }

        if (values.Length < FewestForAccurateLevels)
        {
            notes.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The level is approximate: it needs {FewestForAccurateLevels} values, better 25; there were {values.Length}."
                )
            );
        }

        return new ExtremeDeviateResult(steps.ToImmutable(), outliers, values.Length, level, notes.ToImmutable());
    }

    /// <summary>The values whose modified z-score, the distance from the median over the median absolute deviation times
    /// 1.4826, is above a cut-off (iglewicz-hoaglin-1993). O(n) on average.</summary>
    /// <remarks>Shift and scale change nothing, and up to half of the values may be wild. It is a rule without a level: in
    /// simulated normal samples of 1000 values one in 2000 lay beyond 3.5, in those of 50 one in 400, of 20 one in 140.</remarks>
    /// <param name="sample">Three values or more, at most half of which are equal.</param>
    /// <param name="cutoff">The cut-off, above 0.</param>
    /// <exception cref="ArgumentNullException">The sample is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than three values, or so many are equal that the median absolute
    /// deviation is 0, beside which every other value is infinitely far.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The cut-off is not a finite number above 0, or the deviation is above
    /// the greatest number.</exception>
    public static MedianRuleResult MedianRule(Sample sample, double cutoff = 3.5)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Positive(cutoff, "Cut-off");
        Check.AtLeast(sample.Count, 3, nameof(sample));
        double median = Location.MedianOf(sample.Values);
        double deviation = Scale.MedianAbsoluteDeviation(sample.Values);
        if (deviation == 0)
        {
            throw new ArgumentException(
                "Median absolute deviation must be above 0; was 0, since more than half of the values are equal.",
                nameof(sample)
            );
        }

        var outliers = ImmutableArray.CreateBuilder<int>();
        for (int i = 0; i < sample.Count; i++)
        {
            if (Math.Abs(sample.Values[i] - median) / deviation > cutoff)
            {
                outliers.Add(i);
            }
        }

        return new MedianRuleResult(median, deviation, cutoff, outliers.ToImmutable(), sample.Count);
    }

    /// <summary>The distance from the mean, in standard deviations, that one of n normal values exceeds with a
    /// probability (grubbs-1969, rosner-1983).</summary>
    private static double Critical(int n, double tail)
    {
        double t = StudentT.Of(n - 2).UpperQuantile(tail);
        return (n - 1) / Math.Sqrt(n * (1 + (n - 2) / (t * t)));
    }

    // The same probability from the value's distance to the others alone: G itself has lost it where the outlier is gross.
    private static double TailOfDeletion(double[] values, int index)
    {
        double[] others = [.. values.AsSpan(0, index), .. values.AsSpan(index + 1)];
        var rest = SquaredDeviations.Of(others);
        int n = values.Length;
        if (rest.Sum == 0)
        {
            return 0;
        }

        double error = rest.RootOver(n - 2) * Math.Sqrt(1 + 1.0 / (n - 1));
        double t = Math.Abs(values[index] - rest.UnscaledMean) / error;
        return double.IsFinite(t) ? StudentT.Of(n - 2).UpperTail(t) : 0;
    }

    private static int Farthest(double[] values, double mean, Alternative alternative)
    {
        int farthest = 0;
        for (int i = 1; i < values.Length; i++)
        {
            if (Distance(i) > Distance(farthest))
            {
                farthest = i;
            }
        }

        return farthest;

        double Distance(int i) =>
            alternative switch
            {
                Alternative.Less => -values[i],
                Alternative.Greater => values[i],
                _ => Math.Abs(values[i] - mean),
            };
    }

    private static void RefuseLevel(double level)
    {
        if (!(level > 0 && level < 1))
        {
            throw Check.OutOfRange(nameof(level), "Level", "above 0 and below 1", level);
        }
    }

    private static void RefuseNoSpread(SquaredDeviations deviations, string statistic)
    {
        if (deviations.Sum == 0)
        {
            throw new ArgumentException(
                $"Values must differ; all were equal, which leaves {statistic} undefined.",
                "sample"
            );
        }
    }
}
