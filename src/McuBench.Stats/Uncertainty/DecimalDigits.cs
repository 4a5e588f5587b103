using System.Globalization;
using System.Numerics;

namespace McuBench.Stats.Uncertainty;

/// <summary>A finite number as decimal digits, ±magnitude · 10^place, so that rounding happens on what a reader would
/// see.</summary>
internal readonly record struct DecimalDigits(bool IsNegative, BigInteger Magnitude, int Place)
{
    /// <summary>The power of ten of the first digit; that of the place for 0.</summary>
    internal int Leading => Text.Length - 1 + Place;

    private string Text => Magnitude.ToString(CultureInfo.InvariantCulture);

    /// <summary>The shortest digits that read back as this number.</summary>
    internal static DecimalDigits Of(double value)
    {
        string text = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture);
        int exponentAt = text.IndexOf('E', StringComparison.Ordinal);
        string mantissa = exponentAt < 0 ? text : text[..exponentAt];
        int exponent = exponentAt < 0 ? 0 : int.Parse(text.AsSpan(exponentAt + 1), CultureInfo.InvariantCulture);
        int point = mantissa.IndexOf('.', StringComparison.Ordinal);
        int decimals = point < 0 ? 0 : mantissa.Length - point - 1;
        string digits = mantissa.Replace(".", "", StringComparison.Ordinal);
        return new DecimalDigits(
            double.IsNegative(value),
            BigInteger.Parse(digits, CultureInfo.InvariantCulture),
            exponent - decimals
        );
    }

    /// <summary>The nearest multiple of 10^place, ties to even; a zero loses its sign.</summary>
    internal DecimalDigits RoundedTo(int place)
    {
        BigInteger magnitude;
        if (place <= Place)
        {
            magnitude = Magnitude * BigInteger.Pow(10, Place - place);
        }
        else
        {
            BigInteger unit = BigInteger.Pow(10, place - Place);
            magnitude = BigInteger.DivRem(Magnitude, unit, out BigInteger rest);
            int half = (2 * rest).CompareTo(unit);
            magnitude += half > 0 || (half == 0 && !magnitude.IsEven) ? 1 : 0;
        }

        return new DecimalDigits(IsNegative && !magnitude.IsZero, magnitude, place);
    }

    /// <summary>Rounded to significant digits; 0.0996 to two is 0.10.</summary>
    internal DecimalDigits RoundedToDigits(int digits)
    {
        DecimalDigits rounded = RoundedTo(Leading - digits + 1);
        return rounded.Leading > Leading ? rounded.RoundedTo(rounded.Place + 1) : rounded;
    }

    /// <summary>Half a unit of the last of so many significant digits of a positive number; 0 for 0.</summary>
    internal static double HalfUnitOfLastDigit(double value, int digits) =>
        value == 0 ? 0 : 0.5 * Math.Pow(10, Of(value).RoundedToDigits(digits).Place);

    /// <summary>The digits with the point where a power of ten is split off: "-0.064", "4700".</summary>
    internal string Positional(int power = 0)
    {
        int place = Place - power;
        int decimals = Math.Max(0, -place);
        string padded = Text.PadLeft(decimals + 1, '0') + (Magnitude.IsZero ? "" : new string('0', Math.Max(0, place)));
        string text = decimals == 0 ? padded : $"{padded[..^decimals]}.{padded[^decimals..]}";
        return IsNegative ? "-" + text : text;
    }

    /// <summary>The magnitude alone, as the digits in brackets of the short notation.</summary>
    internal string Bare => Text;
}
