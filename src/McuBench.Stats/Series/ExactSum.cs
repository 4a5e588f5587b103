using System.Buffers.Binary;

namespace McuBench.Stats.Series;

/// <summary>
/// A sum of doubles that is exact: nothing is rounded until <see cref="Value"/> is asked for, and then once. Adding the
/// same terms in any order, or in parts that are merged, gives the same bits.
/// </summary>
/// <remarks>
/// <para>The sum is held as a fixed-point number over the whole range of doubles, in digits of 32 bits with room for
/// carries (neal-2015). Up to 2⁶³ terms fit. Long spans go through <see cref="SampleSum"/> at about the speed of reading
/// them.</para>
/// <para>It changes as terms are added, and is not safe to change from two threads at once: give each its own and merge
/// them.</para>
/// </remarks>
public sealed class ExactSum
{
    private const int DigitBits = 32;

    // The weight of digit 0 is 2^-1088: below the least double.
    private const int Bias = 1088;
    private const int Digits = 71;
    private const int LeastExponent = -1074;
    private const int MantissaBits = 53;
    private const int HeadSize = 3;

    // Each addition changes a digit by less than 2^33, so that 2^29 of them stay below 2^62.
    private const int MostAdditions = 1 << 29;

    private readonly long[] _digits = new long[Digits];
    private int _additions;

    /// <summary>The sum, rounded once, to nearest with ties to even; 0 where nothing was added.</summary>
    /// <exception cref="InvalidOperationException">The sum is above the greatest double.</exception>
    public double Value => Rounded();

    /// <summary>How many bytes <see cref="Write"/> takes at present: 3 and 4 for each digit in use, some 20 for terms of
    /// like size.</summary>
    public int Size
    {
        get
        {
            _ = Magnitude(out _, out int count, stackalloc uint[Digits]);
            return HeadSize + count * sizeof(uint);
        }
    }

    /// <summary>Adds a term. O(1).</summary>
    /// <param name="term">The term.</param>
    /// <exception cref="ArgumentOutOfRangeException">The term is NaN or infinite; nothing is added.</exception>
    public void Add(double term)
    {
        Check.Finite(term, "Term");
        AddFinite(term);
    }

    /// <summary>Adds terms. O(n), at about the speed of reading them.</summary>
    /// <param name="terms">The terms; may be empty.</param>
    /// <exception cref="ArgumentOutOfRangeException">A term is NaN or infinite; the message names its index, and nothing
    /// is added.</exception>
    public void Add(ReadOnlySpan<double> terms)
    {
        if (terms.IsEmpty)
        {
            return;
        }

        Check.Finite(terms);
        var sum = new SampleSum();
        sum.Add(new SampleTerms(terms));
        Merge(sum.Even);
        Merge(sum.Odd);
    }

    /// <summary>Adds all that another sum holds; the other stays as it is. O(1).</summary>
    /// <param name="other">The other sum; itself is allowed, and doubles it.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public void Merge(ExactSum other)
    {
        ArgumentNullException.ThrowIfNull(other);
        MergeTimes(1, other);
    }

    /// <summary>Writes the sum in a form that is the same for the same sum on every machine.</summary>
    /// <param name="destination">Where to, at least <see cref="Size"/> bytes.</param>
    /// <returns>How many bytes were written.</returns>
    /// <exception cref="ArgumentException">The destination is too short.</exception>
    public int Write(Span<byte> destination)
    {
        Span<uint> digits = stackalloc uint[Digits];
        bool negative = Magnitude(out int low, out int count, digits);
        int size = HeadSize + count * sizeof(uint);
        if (destination.Length < size)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Destination must have at least {size} bytes for this sum; had {destination.Length}."
                ),
                nameof(destination)
            );
        }

        destination[0] = negative ? (byte)1 : (byte)0;
        destination[1] = (byte)low;
        destination[2] = (byte)count;
        for (int i = 0; i < count; i++)
        {
            BinaryPrimitives.WriteUInt32LittleEndian(destination[(HeadSize + i * sizeof(uint))..], digits[low + i]);
        }

        return size;
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <param name="source">The bytes; what follows the sum is not looked at.</param>
    /// <param name="size">How many bytes the sum took.</param>
    /// <exception cref="ArgumentException">The bytes are no sum, or end within it.</exception>
    public static ExactSum Read(ReadOnlySpan<byte> source, out int size)
    {
        if (
            source.Length < HeadSize
            || source[0] > 1
            || source[1] + source[2] > Digits
            || source.Length < HeadSize + source[2] * sizeof(uint)
        )
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Source must be a sum as written, of {HeadSize} bytes and 4 for each digit; was none, in {source.Length} bytes."
                ),
                nameof(source)
            );
        }

        var sum = new ExactSum();
        int low = source[1];
        for (int i = 0; i < source[2]; i++)
        {
            long digit = BinaryPrimitives.ReadUInt32LittleEndian(source[(HeadSize + i * sizeof(uint))..]);
            sum._digits[low + i] = source[0] == 1 ? -digit : digit;
        }

        sum._additions = 1;
        size = HeadSize + source[2] * sizeof(uint);
        return sum;
    }

    /// <summary>The most bytes that <see cref="Write"/> takes.</summary>
    internal static int LargestSize => HeadSize + Digits * sizeof(uint);

    /// <summary>Adds another sum times a small whole number.</summary>
    internal void MergeTimes(int factor, ExactSum other)
    {
        Carry();
        other.Carry();
        for (int i = 0; i < Digits; i++)
        {
            _digits[i] += factor * other._digits[i];
        }

        _additions += Math.Abs(factor) + 1;
    }

    /// <summary>A sum with the same value, that changes apart from this one.</summary>
    internal ExactSum Copy()
    {
        var copy = new ExactSum();
        copy.Merge(this);
        return copy;
    }

    /// <summary>Adds a term known to be finite.</summary>
    internal void AddFinite(double term)
    {
        long bits = BitConverter.DoubleToInt64Bits(term);
        int exponent = (int)(bits >> (MantissaBits - 1)) & 0x7FF;
        long mantissa = bits & ((1L << (MantissaBits - 1)) - 1);
        if (exponent == 0)
        {
            exponent = 1;
        }
        else
        {
            mantissa |= 1L << (MantissaBits - 1);
        }

        AddScaled(bits < 0 ? -mantissa : mantissa, exponent - 1 + LeastExponent);
    }

    /// <summary>Adds units · 2^exponent; the exponent from −1084 to 1023.</summary>
    internal void AddScaled(long units, int exponent)
    {
        if (++_additions >= MostAdditions)
        {
            Carry();
        }

        int place = exponent + Bias;
        int digit = place / DigitBits;
        Int128 shifted = (Int128)units << (place % DigitBits);
        Span<long> digits = _digits.AsSpan(digit, 3);
        digits[0] += (uint)(ulong)shifted;
        digits[1] += (uint)((ulong)shifted >> DigitBits);
        digits[2] += (long)(shifted >> (2 * DigitBits));
    }

    /// <summary>Brings every digit but the last into [0, 2^32); the last one has the sign of the whole.</summary>
    private void Carry()
    {
        for (int i = 0; i < Digits - 1; i++)
        {
            long carry = _digits[i] >> DigitBits;
            _digits[i] -= carry << DigitBits;
            _digits[i + 1] += carry;
        }

        _additions = 0;
    }

    /// <summary>The size of the sum as digits, and its sign; the digits in use are those from low on.</summary>
    private bool Magnitude(out int low, out int count, Span<uint> magnitude)
    {
        Carry();
        bool negative = _digits[Digits - 1] < 0;
        long carry = 0;
        low = Digits;
        int high = -1;
        for (int i = 0; i < Digits; i++)
        {
            long digit = (negative ? -_digits[i] : _digits[i]) + carry;
            carry = digit >> DigitBits;
            magnitude[i] = (uint)digit;
            if (magnitude[i] != 0)
            {
                low = Math.Min(low, i);
                high = i;
            }
        }

        low = high < 0 ? 0 : low;
        count = high < 0 ? 0 : high - low + 1;
        return negative;
    }

    private double Rounded()
    {
        Span<uint> digits = stackalloc uint[Digits];
        bool negative = Magnitude(out int low, out int count, digits);
        if (count == 0)
        {
            return 0;
        }

        int top = low + count - 1;
        int topBit = top * DigitBits + DigitBits - 1 - int.LeadingZeroCount((int)digits[top]);
        int lastBit = Math.Max(topBit - MantissaBits + 1, LeastExponent + Bias);
        ulong mantissa = 0;
        for (int i = topBit; i >= lastBit; i--)
        {
            mantissa = (mantissa << 1) | Bit(digits, i);
        }

        if (Bit(digits, lastBit - 1) == 1 && ((mantissa & 1) == 1 || AnyBelow(digits, lastBit - 1)))
        {
            mantissa++;
        }

        double size = Math.ScaleB((double)mantissa, lastBit - Bias);
        return double.IsFinite(size)
            ? (negative ? -size : size)
            : throw new InvalidOperationException("Sum must be below 1.8E308; was above it.");
    }

    private static uint Bit(ReadOnlySpan<uint> digits, int place) =>
        (digits[place / DigitBits] >> (place % DigitBits)) & 1;

    private static bool AnyBelow(ReadOnlySpan<uint> digits, int place) =>
        digits[..(place / DigitBits)].ContainsAnyExcept(0u)
        || (digits[place / DigitBits] & ((1u << (place % DigitBits)) - 1)) != 0;
}
