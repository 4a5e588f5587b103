using System.Numerics;

namespace McuBench.Stats.Resampling;

/// <summary>The sums of all subsets of a few values, by size and in rising order (horowitz-sahni-1974).</summary>
internal static class SubsetSums
{
    /// <summary>Fills in the 2^n sums, those of subsets of k values from <c>starts[k]</c> to before <c>starts[k + 1]</c>,
    /// sorted. O(n·2^n).</summary>
    internal static void Sort(ReadOnlySpan<double> values, Span<double> sums, Span<int> starts)
    {
        int n = values.Length;
        long size = 1;
        starts[0] = 0;
        for (int k = 0; k <= n; k++)
        {
            starts[k + 1] = starts[k] + (int)size;
            size = size * (n - k) / (k + 1);
        }

        Span<int> next = stackalloc int[n + 1];
        starts[..(n + 1)].CopyTo(next);
        for (uint subset = 0; subset < sums.Length; subset++)
        {
            double sum = 0;
            for (uint left = subset; left != 0; left &= left - 1)
            {
                sum += values[BitOperations.TrailingZeroCount(left)];
            }

            sums[next[BitOperations.PopCount(subset)]++] = sum;
        }

        for (int k = 0; k <= n; k++)
        {
            sums[starts[k]..starts[k + 1]].Sort();
        }
    }

    /// <summary>The number of pairs whose sum is at most a limit, of two sorted lists. O(n + m).</summary>
    internal static double PairsAtMost(ReadOnlySpan<double> left, ReadOnlySpan<double> right, double limit)
    {
        double pairs = 0;
        int fitting = right.Length;
        foreach (double value in left)
        {
            while (fitting > 0 && value + right[fitting - 1] > limit)
            {
                fitting--;
            }

            pairs += fitting;
        }

        return pairs;
    }

    /// <summary>The number of pairs whose sum is below a limit, of two sorted lists. O(n + m).</summary>
    internal static double PairsBelow(ReadOnlySpan<double> left, ReadOnlySpan<double> right, double limit)
    {
        double pairs = 0;
        int fitting = right.Length;
        foreach (double value in left)
        {
            while (fitting > 0 && value + right[fitting - 1] >= limit)
            {
                fitting--;
            }

            pairs += fitting;
        }

        return pairs;
    }
}
