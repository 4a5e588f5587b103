using System.Buffers;
using System.Runtime.InteropServices;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Resampling;

/// <summary>How far out the sum of the smaller sample is among the sums of as many of all values, which decides the
/// difference of means.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct MeanSplits
{
    private readonly double _centre;
    private readonly double _sum;
    private readonly double _slack;
    private readonly int _taken;
    private readonly bool _isFirst;

    private MeanSplits(double difference, int count, double centre, double sum, double slack, int taken, bool isFirst)
    {
        Difference = difference;
        Count = count;
        _centre = centre;
        _sum = sum;
        _slack = slack;
        _taken = taken;
        _isFirst = isFirst;
    }

    /// <summary>First mean less second mean.</summary>
    internal double Difference { get; }

    /// <summary>The number of values of both samples.</summary>
    internal int Count { get; }

    internal static MeanSplits Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double a = SquaredDeviations.MeanAlone(first);
        double b = SquaredDeviations.MeanAlone(second);
        int count = first.Length + second.Length;
        // About their common mean all values add up to 0, so that a sum of few says all and an offset costs no digits.
        double centre = a + (b - a) * ((double)second.Length / count);
        bool isFirst = first.Length <= second.Length;
        double sum = 0;
        foreach (double value in isFirst ? first : second)
        {
            sum += value - centre;
        }

        double magnitude = Magnitude(first, centre) + Magnitude(second, centre);
        Check.Representable(magnitude, "Sum", nameof(first));
        // What rounding the values' distances from the centre and the sums of both can add up to.
        double slack = 4 * Math.ScaleB(1, -52) * (magnitude + Math.Abs(centre)) * count;
        return new MeanSplits(a - b, count, centre, sum, slack, Math.Min(first.Length, second.Length), isFirst);
    }

    /// <summary>The share of all splits that is at least as far out.</summary>
    internal double ExactShare(ReadOnlySpan<double> first, ReadOnlySpan<double> second, Alternative alternative)
    {
        int half = Count / 2;
        int rest = Count - half;
        double[] pool = ArrayPool<double>.Shared.Rent(Count + (1 << half) + (1 << rest));
        int[] starts = ArrayPool<int>.Shared.Rent(2 * (Count + 4));
        try
        {
            Span<double> values = pool.AsSpan(0, Count);
            Fill(first, second, values);
            Span<double> a = pool.AsSpan(Count, 1 << half);
            Span<double> b = pool.AsSpan(Count + (1 << half), 1 << rest);
            Span<int> aStarts = starts.AsSpan(0, half + 2);
            Span<int> bStarts = starts.AsSpan(Count + 4, rest + 2);
            SubsetSums.Sort(values[..half], a, aStarts);
            SubsetSums.Sort(values[half..], b, bStarts);
            double all = 0;
            double below = 0;
            double above = 0;
            (double low, double high) = Limits(alternative);
            for (int fromA = Math.Max(0, _taken - rest); fromA <= Math.Min(half, _taken); fromA++)
            {
                ReadOnlySpan<double> left = a[aStarts[fromA]..aStarts[fromA + 1]];
                ReadOnlySpan<double> right = b[bStarts[_taken - fromA]..bStarts[_taken - fromA + 1]];
                all += (double)left.Length * right.Length;
                below += SubsetSums.PairsAtMost(left, right, low);
                above += (double)left.Length * right.Length - SubsetSums.PairsBelow(left, right, high);
            }

            return Math.Min(1, (below + above) / all);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(pool);
            ArrayPool<int>.Shared.Return(starts);
        }
    }

    /// <summary>The share of random splits that is at least as far out, the one seen among them.</summary>
    internal double RandomShare(ReadOnlySpan<double> first, ReadOnlySpan<double> second, PermutationOptions options)
    {
        double[] pool = ArrayPool<double>.Shared.Rent(Count);
        try
        {
            Span<double> values = pool.AsSpan(0, Count);
            Fill(first, second, values);
            (double low, double high) = Limits(options.Alternative);
            var random = RandomStream.Of(options.Seed);
            int farOut = 0;
            for (int split = 0; split < options.Resamples; split++)
            {
                double sum = 0;
                for (int i = 0; i < _taken; i++)
                {
                    int other = i + random.Index(Count - i);
                    (values[i], values[other]) = (values[other], values[i]);
                    sum += values[i];
                }

                farOut += sum <= low || sum >= high ? 1 : 0;
            }

            return (farOut + 1.0) / (options.Resamples + 1.0);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(pool);
        }
    }

    private static double Magnitude(ReadOnlySpan<double> values, double centre)
    {
        double sum = 0;
        foreach (double value in values)
        {
            sum += Math.Abs(value - centre);
        }

        return sum;
    }

    private void Fill(ReadOnlySpan<double> first, ReadOnlySpan<double> second, Span<double> values)
    {
        first.CopyTo(values);
        second.CopyTo(values[first.Length..]);
        for (int i = 0; i < values.Length; i++)
        {
            values[i] -= _centre;
        }
    }

    /// <summary>The sums from which on a split counts, at or below the one and at or above the other.</summary>
    private (double Low, double High) Limits(Alternative alternative)
    {
        if (alternative == Alternative.TwoSided)
        {
            double distance = Math.Abs(_sum) - _slack;
            // Where the sum seen is 0 but for rounding, every split counts.
            return distance <= 0 ? (double.PositiveInfinity, double.PositiveInfinity) : (-distance, distance);
        }

        // A greater first mean is a smaller sum where the sum is that of the second sample.
        return alternative == Alternative.Greater == _isFirst
            ? (double.NegativeInfinity, _sum - _slack)
            : (_sum + _slack, double.PositiveInfinity);
    }
}
