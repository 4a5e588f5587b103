using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>Ranks of values, from 1 for the least.</summary>
public static class Ranks
{
    /// <summary>The ranks in the order of the values. O(n log n).</summary>
    /// <param name="values">At least one value, each finite; 0 and −0 are equal.</param>
    /// <param name="ties">Which rank equal values get.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the rule is not a named one.</exception>
    public static double[] Of(ReadOnlySpan<double> values, TieRule ties = TieRule.Average)
    {
        Check.Finite(values);
        Check.Named(ties);
        double[] ranks = new double[values.Length];
        Fill(values, ranks, ties);
        return ranks;
    }

    /// <summary>Ranks finite values into a span of the same length, with pooled scratch.</summary>
    /// <returns>The sum of t³ − t over the groups of t equal values, which corrects the variance of rank sums.</returns>
    internal static double Fill(ReadOnlySpan<double> values, Span<double> ranks, TieRule ties = TieRule.Average)
    {
        int n = values.Length;
        double[] keys = ArrayPool<double>.Shared.Rent(n);
        int[] order = ArrayPool<int>.Shared.Rent(n);
        for (int i = 0; i < n; i++)
        {
            // Adding 0 turns −0 into 0, which sorting would otherwise keep apart.
            keys[i] = values[i] + 0.0;
            order[i] = i;
        }

        keys.AsSpan(0, n).Sort(order.AsSpan(0, n));
        double tieTerm = 0;
        int groups = 0;
        int first = 0;
        while (first < n)
        {
            int next = first + 1;
            while (next < n && keys[next] == keys[first])
            {
                next++;
            }

            groups++;
            double t = next - first;
            tieTerm += t * t * t - t;
            Span<int> equal = order.AsSpan(first, next - first);
            if (ties == TieRule.InOrder)
            {
                equal.Sort();
            }

            for (int k = 0; k < equal.Length; k++)
            {
                ranks[equal[k]] = ties switch
                {
                    TieRule.Average => (first + 1 + next) / 2.0,
                    TieRule.Minimum => first + 1,
                    TieRule.Maximum => next,
                    TieRule.InOrder => first + 1 + k,
                    _ => groups,
                };
            }

            first = next;
        }

        ArrayPool<double>.Shared.Return(keys);
        ArrayPool<int>.Shared.Return(order);
        return tieTerm;
    }
}
