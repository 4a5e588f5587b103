using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>
/// Sums samples exactly at about the speed of reading them, those at even and at odd places apart, and finds the least
/// and the greatest on the way.
/// </summary>
/// <remarks>
/// A sample is added to 1.5 times a power of two, which rounds it to a grid of 2⁻⁵¹ of the power above the greatest
/// sample; within one power of two the bits of a double count the steps of that grid, so that sums are sums of whole
/// numbers (rump-2008, section 3, has the rounding). What that leaves, which is exact, goes the same way to a second grid,
/// 52 bits finer. What even that leaves is gathered in another pass; samples of meters have nothing there. So the result
/// is exact, and neither the powers of two nor the blocks leave a mark on it.
/// </remarks>
internal sealed class SampleSum
{
    // Even places alone make 2^11 terms of at most 2^51 steps, which fit in 63 bits.
    internal const int Block = 4096;
    private const int Stride = 16;
    private const int GridBits = 52;
    private const int LargestBound = 1000;
    private const int LeastBound = -900;
    private const long SignBit = long.MinValue;

    // Guesses, from the block before: its samples were below 2^bound, and one grid was too coarse for them.
    private int _bound = LeastBound;
    private bool _isFine;

    /// <summary>The sum of the samples at even places.</summary>
    internal ExactSum Even { get; private set; } = new();

    /// <summary>The sum of the samples at odd places.</summary>
    internal ExactSum Odd { get; private set; } = new();

    /// <summary>The least sample; positive infinity before there is one.</summary>
    internal double Least { get; private set; } = double.PositiveInfinity;

    /// <summary>The greatest sample; negative infinity before there is one.</summary>
    internal double Greatest { get; private set; } = double.NegativeInfinity;

    /// <summary>Adds terms, up to the first block of them in which one is not finite.</summary>
    /// <param name="terms">The terms.</param>
    /// <param name="from">Where to begin, at an even place.</param>
    /// <returns>The index behind the last one added.</returns>
    internal int Add<TTerms>(TTerms terms, int from = 0)
        where TTerms : struct, ITerms, allows ref struct
    {
        int at = from;
        while (terms.Count - at >= Stride)
        {
            int count = Math.Min(Block, terms.Count - at) / Stride * Stride;
            if (!AddBlock(terms, at, count))
            {
                return at;
            }

            at += count;
        }

        for (; at < terms.Count && double.IsFinite(terms.One(at)); at++)
        {
            AddOne(terms.One(at), (at - from) % 2 == 1);
        }

        return at;
    }

    /// <summary>A sum that starts from these.</summary>
    internal static SampleSum Of(ExactSum even, ExactSum odd) => new() { Even = even, Odd = odd };

    /// <summary>The sum of all samples.</summary>
    internal ExactSum Total()
    {
        ExactSum total = Even.Copy();
        total.Merge(Odd);
        return total;
    }

    /// <summary>Adds terms, the first at an even place.</summary>
    /// <exception cref="InvalidOperationException">A term is not finite.</exception>
    internal void AddAll(ReadOnlySpan<double> terms)
    {
        if (Add(new SampleTerms(terms)) < terms.Length)
        {
            throw new InvalidOperationException("Each area must be below 1.8E308; one was above it.");
        }
    }

    /// <summary>Adds a finite term.</summary>
    internal void AddOne(double term, bool isOdd)
    {
        (isOdd ? Odd : Even).AddFinite(term);
        See(term, term);
    }

    /// <summary>Notes extremes that were found elsewhere.</summary>
    internal void See(double least, double greatest)
    {
        Least = Math.Min(Least, least);
        Greatest = Math.Max(Greatest, greatest);
    }

    /// <summary>Exchanges even and odd where what comes next begins at an odd place.</summary>
    internal void ExchangeIf(bool isOdd)
    {
        if (isOdd)
        {
            (Even, Odd) = (Odd, Even);
        }
    }

    /// <summary>Adds all that another has, whose even places are odd ones here where asked for.</summary>
    internal void Merge(SampleSum other, bool isOdd)
    {
        // Apart, since the other may be this one.
        ExactSum even = other.Even.Copy();
        Even.Merge(isOdd ? other.Odd : other.Even);
        Odd.Merge(isOdd ? even : other.Odd);
        See(other.Least, other.Greatest);
    }

    internal void Write(ref StateWriter state)
    {
        state.Write(Even);
        state.Write(Odd);
        state.Write(Least);
        state.Write(Greatest);
    }

    internal static SampleSum Read(ref StateReader state) =>
        new()
        {
            Even = state.ReadSum(),
            Odd = state.ReadSum(),
            Least = state.ReadNumber(),
            Greatest = state.ReadNumber(),
        };

    private bool AddBlock<TTerms>(TTerms terms, int from, int count)
        where TTerms : struct, ITerms, allows ref struct
    {
        BlockSums sums = Sums(terms, from, count);
        if (!sums.IsInRange || !sums.IsExact)
        {
            double largest = Largest(terms, from, count);
            if (!double.IsFinite(largest))
            {
                return false;
            }

            int bound = largest == 0 ? LeastBound : Math.Max(Math.ILogB(largest) + 1, LeastBound);
            if (bound > LargestBound)
            {
                AddEach(terms, from, count);
                return true;
            }

            // The smallest bound that holds may make one grid enough; where it doesn't, it takes both.
            bool isTighter = bound != _bound;
            _bound = bound;
            sums = isTighter ? Sums(terms, from, count) : sums;
            if (!sums.IsExact && !_isFine)
            {
                _isFine = true;
                sums = Sums(terms, from, count);
            }
        }

        if (!sums.IsExact)
        {
            AddRests(terms, from, count);
        }

        Even.AddScaled(sums.EvenCoarse, CoarseStep);
        Odd.AddScaled(sums.OddCoarse, CoarseStep);
        Even.AddScaled(sums.EvenFine, FineStep);
        Odd.AddScaled(sums.OddFine, FineStep);
        See(sums.Least, sums.Greatest);
        return true;
    }

    private int CoarseStep => _bound + 1 - GridBits;

    private int FineStep => CoarseStep - GridBits;

    private double CoarseStart => Math.ScaleB(1.5, CoarseStep + GridBits);

    private double FineStart => Math.ScaleB(1.5, FineStep + GridBits);

    private BlockSums Sums<TTerms>(TTerms terms, int from, int count)
        where TTerms : struct, ITerms, allows ref struct =>
        _isFine
            ? Sums<TTerms, TwoGrids>(terms, from, count, CoarseStart, FineStart)
            : Sums<TTerms, SingleGrid>(terms, from, count, CoarseStart, FineStart);

    private static BlockSums Sums<TTerms, TGrids>(
        TTerms terms,
        int from,
        int count,
        double coarseStart,
        double fineStart
    )
        where TTerms : struct, ITerms, allows ref struct
        where TGrids : struct, IGrids
    {
        Vector256<double> coarse = Vector256.Create(coarseStart);
        Vector256<double> fine = Vector256.Create(fineStart);
        Vector256<long> coarseSteps = Vector256<long>.Zero;
        Vector256<long> fineSteps = Vector256<long>.Zero;
        Vector256<long> range = Vector256<long>.Zero;
        Vector256<long> rest = Vector256<long>.Zero;
        Vector256<long> ignored = Vector256<long>.Zero;
        Vector256<double> least = Vector256.Create(double.PositiveInfinity);
        Vector256<double> greatest = -least;
        Vector256<float> leastSingle = Vector256.Create(float.PositiveInfinity);
        Vector256<float> greatestSingle = -leastSingle;
        for (int i = from; i < from + count; i += Stride)
        {
            Vector256<double> t0 = terms.Four(i);
            Vector256<double> t1 = terms.Four(i + 4);
            Vector256<double> t2 = terms.Four(i + 8);
            Vector256<double> t3 = terms.Four(i + 12);
            if (TTerms.IsNarrow)
            {
                Vector256<float> s0 = terms.Eight(i);
                Vector256<float> s1 = terms.Eight(i + 8);
                leastSingle = Vector256.MinNative(leastSingle, Vector256.MinNative(s0, s1));
                greatestSingle = Vector256.MaxNative(greatestSingle, Vector256.MaxNative(s0, s1));
            }
            else
            {
                least = Vector256.MinNative(
                    least,
                    Vector256.MinNative(Vector256.MinNative(t0, t1), Vector256.MinNative(t2, t3))
                );
                greatest = Vector256.MaxNative(
                    greatest,
                    Vector256.MaxNative(Vector256.MaxNative(t0, t1), Vector256.MaxNative(t2, t3))
                );
            }

            if (TGrids.AreTwo)
            {
                t0 = Left(t0, coarse, ref coarseSteps, ref range);
                t1 = Left(t1, coarse, ref coarseSteps, ref range);
                t2 = Left(t2, coarse, ref coarseSteps, ref range);
                t3 = Left(t3, coarse, ref coarseSteps, ref range);
                rest |= Missed(t0, fine, ref fineSteps, ref ignored);
                rest |= Missed(t1, fine, ref fineSteps, ref ignored);
                rest |= Missed(t2, fine, ref fineSteps, ref ignored);
                rest |= Missed(t3, fine, ref fineSteps, ref ignored);
            }
            else
            {
                rest |= Missed(t0, coarse, ref coarseSteps, ref range);
                rest |= Missed(t1, coarse, ref coarseSteps, ref range);
                rest |= Missed(t2, coarse, ref coarseSteps, ref range);
                rest |= Missed(t3, coarse, ref coarseSteps, ref range);
            }
        }

        // The bits of the starts were added with each term; both sums wrap, and their difference is right.
        coarseSteps -= coarse.AsInt64() * (count / Vector256<long>.Count);
        fineSteps -= TGrids.AreTwo ? fine.AsInt64() * (count / Vector256<long>.Count) : Vector256<long>.Zero;
        return new BlockSums(
            coarseSteps[0] + coarseSteps[2],
            coarseSteps[1] + coarseSteps[3],
            fineSteps[0] + fineSteps[2],
            fineSteps[1] + fineSteps[3],
            // Sign and exponent are the start's for all that is below the bound, and for nothing else.
            IsInRange: (range >>> GridBits) == Vector256<long>.Zero,
            // Zeros may have a sign.
            IsExact: (rest & Vector256.Create(~SignBit)) == Vector256<long>.Zero,
            TTerms.IsNarrow ? Lanes.Least(leastSingle) : Lanes.Least(least),
            TTerms.IsNarrow ? Lanes.Greatest(greatestSingle) : Lanes.Greatest(greatest)
        );
    }

    /// <summary>Adds what both grids leave, term by term.</summary>
    private void AddRests<TTerms>(TTerms terms, int from, int count)
        where TTerms : struct, ITerms, allows ref struct
    {
        for (int i = from; i < from + count; i++)
        {
            double term = terms.One(i);
            double left = term - (term + CoarseStart - CoarseStart);
            double rest = left - (left + FineStart - FineStart);
            if (rest != 0)
            {
                ((i - from) % 2 == 1 ? Odd : Even).AddFinite(rest);
            }
        }
    }

    private void AddEach<TTerms>(TTerms terms, int from, int count)
        where TTerms : struct, ITerms, allows ref struct
    {
        for (int i = from; i < from + count; i++)
        {
            AddOne(terms.One(i), (i - from) % 2 == 1);
        }
    }

    private static double Largest<TTerms>(TTerms terms, int from, int count)
        where TTerms : struct, ITerms, allows ref struct
    {
        double largest = 0;
        for (int i = from; i < from + count; i++)
        {
            // Of a number and NaN, this is NaN.
            largest = Math.Max(largest, Math.Abs(terms.One(i)));
        }

        return largest;
    }

    /// <summary>Counts a term in steps of a grid, and gives what is left of it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Left(
        Vector256<double> term,
        Vector256<double> start,
        ref Vector256<long> steps,
        ref Vector256<long> range
    )
    {
        Vector256<double> moved = start + term;
        steps += moved.AsInt64();
        range |= moved.AsInt64() ^ start.AsInt64();
        return term - (moved - start);
    }

    /// <summary>Counts a term in steps of a grid, and gives bits other than those of 0 where something is left of
    /// it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<long> Missed(
        Vector256<double> term,
        Vector256<double> start,
        ref Vector256<long> steps,
        ref Vector256<long> range
    )
    {
        Vector256<double> moved = start + term;
        steps += moved.AsInt64();
        range |= moved.AsInt64() ^ start.AsInt64();
        return (moved - start).AsInt64() ^ term.AsInt64();
    }

    private interface IGrids
    {
        static abstract bool AreTwo { get; }
    }

    private readonly struct SingleGrid : IGrids
    {
        public static bool AreTwo => false;
    }

    private readonly struct TwoGrids : IGrids
    {
        public static bool AreTwo => true;
    }

    private readonly record struct BlockSums(
        long EvenCoarse,
        long OddCoarse,
        long EvenFine,
        long OddFine,
        bool IsInRange,
        bool IsExact,
        double Least,
        double Greatest
    );
}
