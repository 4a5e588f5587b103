using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Regression;

/// <summary>Order statistics of the slopes of all pairs of points in O(n log n) on average.</summary>
/// <remarks>Slopes still in question are the pairs that change order between two bounds. A sample of them gives closer bounds
/// around the wanted rank; when few are left they are listed. As exact as the slopes themselves, to a unit or two in
/// the last place.</remarks>
internal static class SlopeSelection
{
    private const int SampleSize = 4096;

    /// <summary>The slope of a rank, from 0 for the least.</summary>
    internal static double Select(SlopeOrder points, long rank)
    {
        int[] from = points.AtInfinity(positive: false);
        int[] to = points.AtInfinity(positive: true);
        long below = 0;
        long count = points.Slopes;
        long few = Math.Max(SampleSize, 4L * points.Count);
        long[] numbers = new long[SampleSize];
        var pairs = new (int, int)[SampleSize];
        double[] sample = new double[SampleSize];
        // A fixed seed: the draws decide how fast the answer is found, never what it is.
        ulong state = 0x9E3779B97F4A7C15;
        while (count > few)
        {
            DrawNumbers(numbers, count, ref state);
            Inversions.Find(from, to, numbers, pairs);
            for (int i = 0; i < sample.Length; i++)
            {
                sample[i] = points.Slope(pairs[i].Item1, pairs[i].Item2);
            }

            sample.AsSpan().Sort();
            double share = (rank - below + 0.5) / count;
            double centre = share * sample.Length;
            double reach = 3 * Math.Sqrt(sample.Length * share * (1 - share)) + 2;
            long before = count;
            if (centre - reach >= 0)
            {
                Cut(points, sample[(int)(centre - reach)], rank, ref from, ref to, ref below, ref count);
            }

            if (centre + reach < sample.Length)
            {
                Cut(points, sample[(int)(centre + reach)], rank, ref from, ref to, ref below, ref count);
            }

            // Many equal slopes can hide between the bounds: take them out by value.
            if (count > before / 2)
            {
                double pivot = sample[Math.Clamp((int)centre, 0, sample.Length - 1)];
                bool isBelow = Cut(points, Math.BitDecrement(pivot), rank, ref from, ref to, ref below, ref count);
                if (!isBelow && Cut(points, Math.BitIncrement(pivot), rank, ref from, ref to, ref below, ref count))
                {
                    return pivot;
                }
            }
        }

        return SelectRest(points, from, to, (int)count, (int)(rank - below));
    }

    /// <summary>The median slope.</summary>
    internal static double Median(SlopeOrder points)
    {
        long count = points.Slopes;
        double upper = Select(points, count / 2);
        return count % 2 == 1 ? upper : Location.Middle(Select(points, count / 2 - 1), upper);
    }

    /// <summary>Keeps the slopes up to a bound or those above it, whichever hold the rank.</summary>
    /// <returns>Whether it was those up to the bound.</returns>
    private static bool Cut(
        SlopeOrder points,
        double bound,
        long rank,
        ref int[] from,
        ref int[] to,
        ref long below,
        ref long count
    )
    {
        int[] order = points.After(bound);
        long lower = Inversions.Count(from, order);
        if (rank < below + lower)
        {
            (to, count) = (order, lower);
            return true;
        }

        (from, below, count) = (order, below + lower, Inversions.Count(order, to));
        return false;
    }

    private static double SelectRest(SlopeOrder points, int[] from, int[] to, int count, int rank)
    {
        long[] numbers = new long[count];
        for (int i = 0; i < count; i++)
        {
            numbers[i] = i;
        }

        var pairs = new (int First, int Second)[count];
        Inversions.Find(from, to, numbers, pairs);
        double[] slopes = new double[count];
        for (int i = 0; i < count; i++)
        {
            slopes[i] = points.Slope(pairs[i].First, pairs[i].Second);
        }

        return Selection.Nth(slopes, rank);
    }

    /// <summary>Draws numbers below a count, one from each of as many equal parts.</summary>
    private static void DrawNumbers(Span<long> numbers, long count, ref ulong state)
    {
        double part = (double)count / numbers.Length;
        for (int i = 0; i < numbers.Length; i++)
        {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            double place = (i + (state >> 11) * (1.0 / (1UL << 53))) * part;
            numbers[i] = Math.Min((long)place, count - 1);
        }
    }
}
