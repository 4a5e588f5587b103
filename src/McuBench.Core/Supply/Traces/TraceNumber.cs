using System.Buffers.Binary;
using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using McuBench.Core.Quantities;

namespace McuBench.Core.Supply.Traces;

/// <summary>Reads plain decimals from bytes, to the double nearest to the value in the SI unit: the same bits as
/// <see cref="QuantityParser"/> gives, for the forms that meters write, at a nanosecond a digit.</summary>
internal readonly struct TraceNumber(byte point)
{
    private const ulong ExactIntegers = 1UL << 53;
    private const int ExactPowers = 22;
    private const int MostDigits = 19;
    private const int MostExponentDigits = 3;
    private const int LongestRewritten = 64;

    // Integers up to 2^53 and these powers are exact doubles, so that one division or product rounds once.
    private static readonly double[] Powers =
    [
        1e0,
        1e1,
        1e2,
        1e3,
        1e4,
        1e5,
        1e6,
        1e7,
        1e8,
        1e9,
        1e10,
        1e11,
        1e12,
        1e13,
        1e14,
        1e15,
        1e16,
        1e17,
        1e18,
        1e19,
        1e20,
        1e21,
        1e22,
    ];

    private static readonly ulong[] WholePowers =
    [
        1,
        10,
        100,
        1_000,
        10_000,
        100_000,
        1_000_000,
        10_000_000,
        100_000_000,
    ];

    /// <summary>Reads a number that begins at a place; a byte that is part of none must follow somewhere, and seven bytes
    /// behind that must be there.</summary>
    /// <param name="bytes">The first byte.</param>
    /// <param name="begin">Where to begin.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="si">The value in the SI unit.</param>
    /// <returns>The place behind the number; −1 where it is none in a form that is read here, and another reader has to
    /// look.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal int Read(ref byte bytes, int begin, Unit unit, out double si)
    {
        var place = begin;
        var isNegative = Unsafe.Add(ref bytes, place) == '-';
        place += isNegative ? 1 : 0;
        var firstDigit = place;
        ulong mantissa = 0;
        ReadDigits(ref bytes, ref place, ref mantissa);
        var digits = place - firstDigit;
        var power = unit.PowerOfTen;
        if (Unsafe.Add(ref bytes, place) == point)
        {
            var firstDecimal = ++place;
            ReadDigits(ref bytes, ref place, ref mantissa);
            digits += place - firstDecimal;
            power -= place - firstDecimal;
        }

        si = 0;
        if (digits == 0 || unit.IsCelsius)
        {
            return -1;
        }

        var mantissaEnd = place;
        if ((Unsafe.Add(ref bytes, place) | 0x20) == 'e')
        {
            // In variables of their own, so that the others can stay in registers.
            var (behind, exponent) = (place, 0);
            if (!TryExponent(ref bytes, ref behind, ref exponent))
            {
                return -1;
            }

            place = behind;
            power += exponent;
        }

        if (digits <= MostDigits && mantissa <= ExactIntegers && mantissa * (ulong)unit.Factor <= ExactIntegers)
        {
            var whole = (double)(mantissa * (ulong)unit.Factor);
            if ((uint)-power <= ExactPowers)
            {
                si = isNegative ? -whole / Powers[-power] : whole / Powers[-power];
                return place;
            }

            if ((uint)power <= ExactPowers)
            {
                si = isNegative ? -whole * Powers[power] : whole * Powers[power];
                return place;
            }
        }

        return Rewritten(ref bytes, begin, mantissaEnd, power, unit, out si) ? place : -1;
    }

    private static bool TryExponent(ref byte bytes, ref int place, ref int power)
    {
        place++;
        var sign = Unsafe.Add(ref bytes, place);
        place += sign is (byte)'-' or (byte)'+' ? 1 : 0;
        var begin = place;
        var exponent = 0;
        uint digit;
        while ((digit = (uint)Unsafe.Add(ref bytes, place) - '0') <= 9 && place - begin <= MostExponentDigits)
        {
            exponent = exponent * 10 + (int)digit;
            place++;
        }

        power += sign == '-' ? -exponent : exponent;
        return place > begin && place - begin <= MostExponentDigits;
    }

    /// <summary>Numbers of more digits than a double holds, or far powers: the platform rounds them, with the unit's power
    /// of ten in the exponent.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool Rewritten(ref byte bytes, int begin, int end, int power, Unit unit, out double si)
    {
        si = 0;
        var length = end - begin;
        if (unit.Factor != 1 || length > LongestRewritten)
        {
            return false;
        }

        Span<byte> text = stackalloc byte[LongestRewritten + 8];
        var written = 0;
        for (var i = begin; i < end; i++)
        {
            // All digits before the exponent: the point is in the power already.
            var one = Unsafe.Add(ref bytes, i);
            if (one != point)
            {
                text[written++] = one;
            }
        }

        text[written++] = (byte)'e';
        if (!power.TryFormat(text[written..], out var more, default, CultureInfo.InvariantCulture))
        {
            return false;
        }

        // What is beyond a double, or lost below it, is for the other reader to refuse.
        return double.TryParse(text[..(written + more)], NumberStyles.Float, CultureInfo.InvariantCulture, out si)
            && double.IsNormal(si);
    }

    /// <summary>Reads digits, eight bytes at a time, as many as there are.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void ReadDigits(ref byte bytes, ref int place, ref ulong mantissa)
    {
        int count;
        do
        {
            var eight = Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref bytes, place));
            if (!BitConverter.IsLittleEndian)
            {
                eight = BinaryPrimitives.ReverseEndianness(eight);
            }

            // A digit is 0 to 9 now, and the first byte that is none has its highest bit set by the addition.
            eight ^= 0x3030303030303030;
            var others = (eight | (eight + 0x7676767676767676)) & 0x8080808080808080;
            count = BitOperations.TrailingZeroCount(others) / 8;
            if (count == 0)
            {
                return;
            }

            // Those digits with zeros before them; then neighbours are put together: eight digits, four pairs, two fours.
            eight <<= 64 - 8 * count;
            eight = eight * 10 + (eight >> 8);
            eight =
                (
                    (eight & 0x000000FF000000FF) * 0x000F424000000064
                    + ((eight >> 16) & 0x000000FF000000FF) * 0x0000271000000001
                ) >> 32;
            mantissa = mantissa * WholePowers[count] + eight;
            place += count;
        } while (count == 8);
    }
}
