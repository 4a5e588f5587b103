using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Descriptive;

/// <summary>
/// Order statistics of values that are left as they are: a sorted sample brackets the wanted rank (floyd-rivest-1975), one pass
/// counts what lies below the bracket and copies what lies within, and the rest is selection among those few.
/// </summary>
/// <remarks>The sample decides how fast the answer is found, never what it is: where a bracket misses, or ties fill it, all
/// values are copied and selected from. It changes as it is asked,
/// so hand it on by reference; <see cref="Return"/> gives the pooled scratch back.</remarks>
internal ref struct SampledOrder
{
    // Below this, copying everything is as fast.
    private const int Few = 1 << 13;
    private const int SampleSize = 1 << 12;

    private readonly ReadOnlySpan<double> _values;
    private readonly double[] _sample;
    private double[] _scratch = [];

    /// <summary>Samples values, of which there is at least one and none NaN.</summary>
    internal SampledOrder(ReadOnlySpan<double> values)
    {
        _values = values;
        if (values.Length < Few)
        {
            _sample = [];
            return;
        }

        _sample = ArrayPool<double>.Shared.Rent(SampleSize);
        double part = (double)values.Length / SampleSize;
        ulong state = 0x9E3779B97F4A7C15;
        for (int i = 0; i < SampleSize; i++)
        {
            // One from each of as many equal parts, at a place of its own so that no period of the data is followed.
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            double place = (i + (state >> 11) * (1.0 / (1UL << 53))) * part;
            _sample[i] = values[Math.Min((int)place, values.Length - 1)];
        }

        _sample.AsSpan(0, SampleSize).Sort();
    }

    /// <summary>The values of a rank, from 0 for the least, and of the next rank (the same one again for the last). O(n).</summary>
    internal (double At, double Next) Of(int rank)
    {
        int next = Math.Min(rank + 1, _values.Length - 1);
        if (_sample.Length > 0 && Bracketed(rank, next) is { } found)
        {
            return found;
        }

        Span<double> copy = Scratch(_values.Length);
        _values.CopyTo(copy);
        return Pair(copy, rank, next);
    }

    /// <summary>Gives the scratch back; the order can't be asked any more.</summary>
    internal readonly void Return()
    {
        if (_sample.Length > 0)
        {
            ArrayPool<double>.Shared.Return(_sample);
        }

        if (_scratch.Length > 0)
        {
            ArrayPool<double>.Shared.Return(_scratch);
        }
    }

    private (double, double)? Bracketed(int rank, int next)
    {
        double centre = (rank + 0.5) / _values.Length * SampleSize;
        double reach = 4 * Math.Sqrt(centre * (1 - centre / SampleSize)) + 4;
        double low = centre < reach ? double.NegativeInfinity : _sample[(int)(centre - reach)];
        double high = centre + reach >= SampleSize ? double.PositiveInfinity : _sample[(int)(centre + reach)];
        Span<double> within = Scratch(_values.Length / 4);
        (long below, int count) = Collect(low, high, within);
        return rank >= below && next < below + count && count <= within.Length
            ? Pair(within[..count], rank - (int)below, next - (int)below)
            : null;
    }

    /// <summary>Counts the values below a bracket and copies those within; stops where they are too many.</summary>
    private readonly (long Below, int Count) Collect(double low, double high, Span<double> within)
    {
        var lows = Vector256.Create(low);
        var highs = Vector256.Create(high);
        Vector256<long> below = Vector256<long>.Zero;
        int count = 0;
        ReadOnlySpan<Vector256<double>> fours = MemoryMarshal.Cast<double, Vector256<double>>(_values);
        foreach (Vector256<double> four in fours)
        {
            // A comparison that holds is −1 in whole numbers.
            below -= Vector256.LessThan(four, lows).AsInt64();
            uint inside = (
                Vector256.GreaterThanOrEqual(four, lows) & Vector256.LessThanOrEqual(four, highs)
            ).ExtractMostSignificantBits();
            if (inside == 0)
            {
                continue;
            }

            if (count + Vector256<double>.Count > within.Length)
            {
                return (0, int.MaxValue);
            }

            for (; inside != 0; inside &= inside - 1)
            {
                within[count++] = four[BitOperations.TrailingZeroCount(inside)];
            }
        }

        long total = Vector256.Sum(below);
        foreach (double value in _values[(fours.Length * Vector256<double>.Count)..])
        {
            total += value < low ? 1 : 0;
            if (value >= low && value <= high)
            {
                if (count == within.Length)
                {
                    return (0, int.MaxValue);
                }

                within[count++] = value;
            }
        }

        return (total, count);
    }

    private static (double At, double Next) Pair(Span<double> values, int rank, int next)
    {
        double at = Selection.Nth(values, rank);
        if (next == rank)
        {
            return (at, at);
        }

        double least = values[next];
        foreach (double value in values[next..])
        {
            least = Math.Min(least, value);
        }

        return (at, least);
    }

    private Span<double> Scratch(int length)
    {
        if (_scratch.Length < length)
        {
            if (_scratch.Length > 0)
            {
                ArrayPool<double>.Shared.Return(_scratch);
            }

            _scratch = ArrayPool<double>.Shared.Rent(length);
        }

        return _scratch.AsSpan(0, length);
    }
}
