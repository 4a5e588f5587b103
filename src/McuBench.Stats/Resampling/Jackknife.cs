using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Resampling;

/// <summary>The statistic of a sample without each of its values or units.</summary>
internal static class Jackknife
{
    /// <summary>The statistic without each value in turn. O(n) for mean and median, n statistics for others.</summary>
    internal static double[] Of(Sample sample, Statistic statistic)
    {
        if (sample.Count < 2)
        {
            return [];
        }

        return ReferenceEquals(statistic, Statistic.Mean) ? Means(sample)
            : ReferenceEquals(statistic, Statistic.Median) ? Medians(sample)
            : Each(sample.Values, statistic.Value);
    }

    /// <summary>The statistic without each unit, by strata.</summary>
    internal static double[][] Of(Sample sample, Statistic statistic, int[][][] strata)
    {
        double[] rest = new double[sample.Count];
        return
        [
            .. strata.Select(units => units.Select(unit => statistic.Value(Without(sample, unit, rest))).ToArray()),
        ];
    }

    /// <summary>A function of the values without each in turn.</summary>
    internal static double[] Each(ReadOnlySpan<double> values, Func<ReadOnlySpan<double>, double> statistic)
    {
        double[] found = new double[values.Length];
        double[] rest = values[1..].ToArray();
        for (int i = 0; i < found.Length; i++)
        {
            found[i] = statistic(rest);
            if (i < rest.Length)
            {
                rest[i] = values[i];
            }
        }

        return found;
    }

    private static double[] Means(Sample sample)
    {
        double mean = SquaredDeviations.MeanAlone(sample.Values);
        double[] found = new double[sample.Count];
        for (int i = 0; i < found.Length; i++)
        {
            found[i] = mean - (sample.Values[i] - mean) / (found.Length - 1);
        }

        return found;
    }

    private static double[] Medians(Sample sample)
    {
        ReadOnlySpan<double> sorted = sample.Sorted;
        int n = sorted.Length;
        double[] found = new double[n];
        for (int left = 0; left < n; left++)
        {
            double low = sorted[Place((n - 2) / 2, left)];
            found[left] = low + 0.5 * (sorted[Place((n - 1) / 2, left)] - low);
        }

        return found;
    }

    /// <summary>Where a rank among the rest stands among all.</summary>
    private static int Place(int rank, int left) => rank < left ? rank : rank + 1;

    private static ReadOnlySpan<double> Without(Sample sample, int[] unit, double[] rest)
    {
        var left = new HashSet<int>(unit);
        int count = 0;
        for (int i = 0; i < sample.Count; i++)
        {
            if (!left.Contains(i))
            {
                rest[count++] = sample.Values[i];
            }
        }

        return rest.AsSpan(0, count);
    }
}
