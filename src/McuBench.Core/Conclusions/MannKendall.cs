using McuBench.Stats.Distributions;

namespace McuBench.Core.Conclusions;

/// <summary>The Mann–Kendall test of a monotonic trend over the order of values (mann-1945, kendall-1975).</summary>
/// <param name="S">Rises less falls over all pairs.</param>
/// <param name="PValue">Two-sided.</param>
/// <param name="IsExact">Whether p comes from the exact distribution (no ties, at most 40 values) or from the normal
/// one with the variance corrected for ties and a continuity correction.</param>
internal sealed record MannKendall(long S, double PValue, bool IsExact)
{
    private const int MostExact = 40;

    /// <summary>The test. O(n log n), and O(n³) up to 40 values for the exact distribution.</summary>
    public static MannKendall Of(double[] values)
    {
        var n = values.Length;
        var tieGroups = values.GroupBy(v => v).Select(g => (long)g.Count()).Where(size => size > 1).ToList();
        var falls = Falls([.. values], new double[n], 0, n);
        var pairs = (long)n * (n - 1) / 2;
        var tied = tieGroups.Sum(t => t * (t - 1) / 2);
        var s = pairs - tied - 2 * falls;
        if (tieGroups.Count == 0 && n <= MostExact)
        {
            return new MannKendall(s, ExactPValue(n, Math.Min(falls, pairs - falls)), IsExact: true);
        }

        var variance =
            ((double)n * (n - 1) * (2.0 * n + 5) - tieGroups.Sum(t => (double)t * (t - 1) * (2.0 * t + 5))) / 18;
        if (variance <= 0 || s == 0)
        {
            return new MannKendall(s, 1, IsExact: false);
        }

        var z = (Math.Abs((double)s) - 1) / Math.Sqrt(variance);
        return new MannKendall(s, Math.Min(1, 2 * Normal.Standard.UpperTail(z)), IsExact: false);
    }

    /// <summary>Twice the probability of at most so many falls when all n! orders are alike: the number of orders with k
    /// falls builds up one value at a time.</summary>
    private static double ExactPValue(int n, long falls)
    {
        double[] shares = [1];
        for (var size = 2; size <= n; size++)
        {
            var next = new double[shares.Length + size - 1];
            for (var k = 0; k < shares.Length; k++)
            {
                for (var placed = 0; placed < size; placed++)
                {
                    next[k + placed] += shares[k] / size;
                }
            }

            shares = next;
        }

        double tail = 0;
        for (var k = 0; k <= falls; k++)
        {
            tail += shares[k];
        }

        return Math.Min(1, 2 * tail);
    }

    /// <summary>The number of pairs in which the later value is the smaller, counted while merging; ties are no falls.</summary>
    private static long Falls(double[] values, double[] spare, int from, int to)
    {
        if (to - from < 2)
        {
            return 0;
        }

        var middle = (from + to) / 2;
        var falls = Falls(values, spare, from, middle) + Falls(values, spare, middle, to);
        var (left, right) = (from, middle);
        for (var i = from; i < to; i++)
        {
            if (right >= to || (left < middle && values[left] <= values[right]))
            {
                spare[i] = values[left++];
            }
            else
            {
                falls += middle - left;
                spare[i] = values[right++];
            }
        }

        Array.Copy(spare, from, values, from, to - from);
        return falls;
    }
}
