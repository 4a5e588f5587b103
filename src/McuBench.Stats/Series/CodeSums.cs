using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>Sums of whole numbers of 16 bits or of their products, those at even and at odd places apart, and the extremes
/// among them. In whole numbers throughout.</summary>
internal readonly record struct CodeSums(long Even, long Odd, int Least, int Greatest)
{
    private const int Stride = 16;

    // Lanes of 32 bits hold that many terms of 16 bits.
    private const int Block = Stride << 15;
    private const int HalfBits = 15;

    /// <summary>The sums of numbers, at least one. O(n).</summary>
    internal static CodeSums Of(ReadOnlySpan<short> codes)
    {
        ref short first = ref MemoryMarshal.GetReference(codes);
        long even = 0;
        long odd = 0;
        Vector256<short> least = Vector256.Create(short.MaxValue);
        Vector256<short> greatest = Vector256.Create(short.MinValue);
        int whole = codes.Length / Stride * Stride;
        for (int from = 0; from < whole; from += Block)
        {
            Vector256<int> evens = Vector256<int>.Zero;
            Vector256<int> odds = Vector256<int>.Zero;
            int end = Math.Min(whole, from + Block);
            for (int i = from; i < end; i += Stride)
            {
                Vector256<short> sixteen = Vector256.LoadUnsafe(ref first, (nuint)i);
                least = Vector256.Min(least, sixteen);
                greatest = Vector256.Max(greatest, sixteen);
                evens += Evens(sixteen);
                odds += Odds(sixteen);
            }

            even += Sum(evens);
            odd += Sum(odds);
        }

        int lowest = LeastOf(Vector256.Min(Vector256.WidenLower(least), Vector256.WidenUpper(least)));
        int highest = GreatestOf(Vector256.Max(Vector256.WidenLower(greatest), Vector256.WidenUpper(greatest)));
        var sums = new CodeSums(even, odd, lowest, highest);
        for (int i = whole; i < codes.Length; i++)
        {
            sums = sums.With(codes[i], i % 2 == 1);
        }

        return sums;
    }

    /// <summary>The sums of products of numbers, at least one. O(n).</summary>
    internal static CodeSums OfProducts(ReadOnlySpan<short> codes, ReadOnlySpan<short> others)
    {
        ref short first = ref MemoryMarshal.GetReference(codes);
        ref short other = ref MemoryMarshal.GetReference(others);
        long even = 0;
        long odd = 0;
        Vector256<int> least = Vector256.Create(int.MaxValue);
        Vector256<int> greatest = Vector256.Create(int.MinValue);
        Vector256<int> lowHalf = Vector256.Create((1 << HalfBits) - 1);
        int whole = codes.Length / Stride * Stride;
        for (int from = 0; from < whole; from += Block)
        {
            // A product has 31 bits: its halves are summed apart.
            Vector256<int> evenHigh = Vector256<int>.Zero;
            Vector256<int> evenLow = Vector256<int>.Zero;
            Vector256<int> oddHigh = Vector256<int>.Zero;
            Vector256<int> oddLow = Vector256<int>.Zero;
            int end = Math.Min(whole, from + Block);
            for (int i = from; i < end; i += Stride)
            {
                Vector256<short> some = Vector256.LoadUnsafe(ref first, (nuint)i);
                Vector256<short> more = Vector256.LoadUnsafe(ref other, (nuint)i);
                Vector256<int> evens = Evens(some) * Evens(more);
                Vector256<int> odds = Odds(some) * Odds(more);
                least = Vector256.Min(least, Vector256.Min(evens, odds));
                greatest = Vector256.Max(greatest, Vector256.Max(evens, odds));
                evenHigh += evens >> HalfBits;
                evenLow += evens & lowHalf;
                oddHigh += odds >> HalfBits;
                oddLow += odds & lowHalf;
            }

            even += (Sum(evenHigh) << HalfBits) + Sum(evenLow);
            odd += (Sum(oddHigh) << HalfBits) + Sum(oddLow);
        }

        var sums = new CodeSums(even, odd, LeastOf(least), GreatestOf(greatest));
        for (int i = whole; i < codes.Length; i++)
        {
            sums = sums.With(codes[i] * others[i], i % 2 == 1);
        }

        return sums;
    }

    private CodeSums With(int term, bool isOdd) =>
        new(isOdd ? Even : Even + term, isOdd ? Odd + term : Odd, Math.Min(Least, term), Math.Max(Greatest, term));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<int> Evens(Vector256<short> codes) => codes.AsInt32() << 16 >> 16;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<int> Odds(Vector256<short> codes) => codes.AsInt32() >> 16;

    private static long Sum(Vector256<int> lanes) =>
        Vector256.Sum(Vector256.WidenLower(lanes) + Vector256.WidenUpper(lanes));

    private static int LeastOf(Vector256<int> lanes)
    {
        int least = int.MaxValue;
        for (int i = 0; i < Vector256<int>.Count; i++)
        {
            least = Math.Min(least, lanes[i]);
        }

        return least;
    }

    private static int GreatestOf(Vector256<int> lanes)
    {
        int greatest = int.MinValue;
        for (int i = 0; i < Vector256<int>.Count; i++)
        {
            greatest = Math.Max(greatest, lanes[i]);
        }

        return greatest;
    }
}
