using System.Diagnostics;
using System.Globalization;
using System.Numerics;

namespace McuBench.Core.Quantities;

/// <summary>
/// A finite decimal, sign · magnitude · 10^power, on which a change of unit is exact: the one rounding is the last
/// step, <see cref="ToDouble"/>.
/// </summary>
/// <remarks>
/// 412.1 ms read as a double and multiplied by 0.001 is off in its last bits; the digits 4121 with the power of ten
/// moved from −1 to −4 are not. The sign stands apart so that −0 survives.
/// </remarks>
internal readonly record struct DecimalNumber(bool IsNegative, BigInteger Magnitude, int PowerOfTen)
{
    /// <summary>Exponents in text are held to this, far outside the range of a double on either side.</summary>
    private const int ExponentLimit = 9999;

    // Integers up to 2^53 and these powers are exact doubles, so that one division or product rounds once.
    private static readonly double[] ExactPowersOfTen =
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

    private const ulong ExactIntegers = 1UL << 53;

    public bool IsZero => Magnitude.IsZero;

    /// <summary>The power of ten of the first digit; without meaning for zero.</summary>
    public int LeadingPower => Magnitude.ToString(CultureInfo.InvariantCulture).Length - 1 + PowerOfTen;

    /// <summary>The shortest decimal that reads back as this finite double: what a writer of source code wrote.</summary>
    public static DecimalNumber Of(double value) =>
        double.IsFinite(value)
            ? Read(value.ToString("R", CultureInfo.InvariantCulture))
            : throw new ArgumentOutOfRangeException(nameof(value), value, "Number must be finite.");

    /// <summary>The decimal itself, exactly.</summary>
    public static DecimalNumber Of(decimal value) => Read(value.ToString(CultureInfo.InvariantCulture));

    /// <summary>
    /// Reads the number that <paramref name="text"/> begins with: <c>[+-]digits[.digits][e[+-]digits]</c>, with a
    /// digit on one side of the point at least, the Unicode minus (U+2212) as good as the hyphen.
    /// </summary>
    /// <returns>The count of characters read; 0 where the text does not begin with a number.</returns>
    public static int ReadPrefix(ReadOnlySpan<char> text, out DecimalNumber number)
    {
        number = default;
        var position = 0;
        var negative = false;
        if (text.Length > 0 && text[0] is '+' or '-' or '\u2212')
        {
            negative = text[0] != '+';
            position = 1;
        }

        var small = 0UL;
        var large = BigInteger.Zero;
        var digits = 0;
        var decimals = 0;
        var pointSeen = false;
        for (; position < text.Length; position++)
        {
            var c = text[position];
            if (c == '.' && !pointSeen)
            {
                pointSeen = true;
                continue;
            }

            if (!char.IsAsciiDigit(c))
            {
                break;
            }

            digits++;
            decimals += pointSeen ? 1 : 0;
            if (digits <= 19)
            {
                small = (small * 10) + (ulong)(c - '0');
            }
            else
            {
                large = ((digits == 20 ? small : large) * 10) + (c - '0');
            }
        }

        if (digits == 0)
        {
            return 0;
        }

        position += ReadExponent(text[position..], out var exponent);
        number = new DecimalNumber(negative, digits <= 19 ? small : large, exponent - decimals);
        return position;
    }

    /// <summary>This number multiplied by <paramref name="factor"/> · 10^<paramref name="powerOfTen"/>, exactly.</summary>
    public DecimalNumber Scaled(int factor, int powerOfTen) =>
        this with
        {
            Magnitude = Magnitude * factor,
            PowerOfTen = PowerOfTen + powerOfTen,
        };

    /// <summary>The exact sum.</summary>
    public DecimalNumber Plus(DecimalNumber other)
    {
        var power = Math.Min(PowerOfTen, other.PowerOfTen);
        var sum = Signed(this, power) + Signed(other, power);
        return new DecimalNumber(sum.Sign < 0, BigInteger.Abs(sum), power);

        static BigInteger Signed(DecimalNumber number, int power)
        {
            var aligned = number.Magnitude * BigInteger.Pow(10, number.PowerOfTen - power);
            return number.IsNegative ? -aligned : aligned;
        }
    }

    /// <summary>The number without its sign.</summary>
    public DecimalNumber Absolute() => this with { IsNegative = false };

    /// <summary>The same number without trailing zeros.</summary>
    public DecimalNumber Trimmed()
    {
        var (magnitude, power) = (Magnitude, PowerOfTen);
        while (!magnitude.IsZero && BigInteger.DivRem(magnitude, 10) is { Remainder.IsZero: true } tenth)
        {
            (magnitude, power) = (tenth.Quotient, power + 1);
        }

        return new DecimalNumber(IsNegative, magnitude, magnitude.IsZero ? 0 : power);
    }

    /// <summary>The nearest multiple of 10^<paramref name="place"/>, ties to even (<c>iso-80000-1-rounding</c>),
    /// with its zeros up to that place; a zero loses its sign.</summary>
    public DecimalNumber RoundedTo(int place)
    {
        if (place <= PowerOfTen)
        {
            var magnitude = Magnitude * BigInteger.Pow(10, PowerOfTen - place);
            return new DecimalNumber(IsNegative && !magnitude.IsZero, magnitude, place);
        }

        var unit = BigInteger.Pow(10, place - PowerOfTen);
        var (quotient, remainder) = BigInteger.DivRem(Magnitude, unit);
        var half = (remainder * 2).CompareTo(unit);
        quotient += half > 0 || (half == 0 && !quotient.IsEven) ? 1 : 0;
        return new DecimalNumber(IsNegative && !quotient.IsZero, quotient, place);
    }

    /// <summary>Rounded to so many significant digits: 0.0996 to two is 0.10.</summary>
    public DecimalNumber RoundedToDigits(int digits)
    {
        var rounded = RoundedTo(LeadingPower - digits + 1);
        return rounded.LeadingPower > LeadingPower ? rounded.RoundedTo(rounded.PowerOfTen + 1) : rounded;
    }

    /// <summary>The digits with the point in its place and the zeros that this takes: "-0.064", "4700".</summary>
    public string ToPositional()
    {
        var digits = Magnitude.ToString(CultureInfo.InvariantCulture);
        var decimals = Math.Max(0, -PowerOfTen);
        var padded = digits.PadLeft(decimals + 1, '0');
        var whole = Magnitude.IsZero ? "0" : padded[..^decimals] + new string('0', Math.Max(0, PowerOfTen));
        var text = decimals == 0 ? whole : $"{whole}.{padded.AsSpan(^decimals..)}";
        return IsNegative ? "-" + text : text;
    }

    /// <summary>The double nearest to this number, ties to even; infinite beyond the range of a double.</summary>
    public double ToDouble()
    {
        var magnitude =
            Magnitude <= ExactIntegers && Math.Abs(PowerOfTen) < ExactPowersOfTen.Length
                ? Short((double)(ulong)Magnitude, PowerOfTen)
                // The runtime's parser rounds correctly for any count of digits.
                : double.Parse(
                    string.Create(CultureInfo.InvariantCulture, $"{Magnitude}E{PowerOfTen}"),
                    NumberStyles.AllowExponent,
                    CultureInfo.InvariantCulture
                );
        return IsNegative ? -magnitude : magnitude;

        static double Short(double integer, int power) =>
            power < 0 ? integer / ExactPowersOfTen[-power] : integer * ExactPowersOfTen[power];
    }

    private static int ReadExponent(ReadOnlySpan<char> text, out int exponent)
    {
        exponent = 0;
        if (text.Length < 2 || text[0] is not ('e' or 'E'))
        {
            return 0;
        }

        var position = 1;
        var negative = false;
        if (text[1] is '+' or '-' or '\u2212')
        {
            negative = text[1] != '+';
            position = 2;
        }

        var first = position;
        for (; position < text.Length && char.IsAsciiDigit(text[position]); position++)
        {
            exponent = Math.Min((exponent * 10) + (text[position] - '0'), ExponentLimit);
        }

        exponent = negative ? -exponent : exponent;
        return position == first ? 0 : position;
    }

    private static DecimalNumber Read(string text)
    {
        var read = ReadPrefix(text, out var number);
        Debug.Assert(read == text.Length, "A printed number is a number.");
        return number;
    }
}
