using System.Globalization;

namespace McuBench.Stats.Uncertainty;

/// <summary>Writes plain numbers with their uncertainties: the uncertainty rounded to two digits, the value to the same
/// place (gum-2008, 7.2.2 and 7.2.6), in the invariant culture.</summary>
/// <remarks>
/// Ties go to the even digit, on the shortest decimal that stands for the number. From 0.001 to below 1,000,000 numbers
/// stand plain, as long as the uncertainty reaches below the unit; else a power of ten is split off: <c>1.2345(67)e7</c>.
/// </remarks>
public static class UncertaintyText
{
    private const int PlainFrom = -3;
    private const int PlainBelow = 6;
    private const int MostDigits = 4;

    /// <summary>The value with the digits of its standard uncertainty in brackets: <c>4.704(32)</c> for 4.7041 and
    /// 0.0318.</summary>
    /// <param name="value">The value, finite.</param>
    /// <param name="standardUncertainty">The standard uncertainty, above 0.</param>
    /// <param name="digits">The significant digits of the uncertainty, 1 to 4.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static string Concise(double value, double standardUncertainty, int digits = 2)
    {
        (DecimalDigits rounded, DecimalDigits spread, int power) = Rounded(
            value,
            standardUncertainty,
            "Standard uncertainty",
            digits,
            nameof(standardUncertainty)
        );
        return $"{rounded.Positional(power)}({Brackets(spread, power)}){Exponent(power)}";
    }

    /// <summary>The value with its expanded uncertainty and coverage factor: <c>4.704 ± 0.064 (k = 2)</c>.</summary>
    /// <param name="value">The value, finite.</param>
    /// <param name="expandedUncertainty">The expanded uncertainty, above 0.</param>
    /// <param name="coverageFactor">The coverage factor, above 0; shown to three digits at most.</param>
    /// <param name="digits">The significant digits of the uncertainty, 1 to 4.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static string Expanded(double value, double expandedUncertainty, double coverageFactor, int digits = 2)
    {
        Check.Positive(coverageFactor, "Coverage factor");
        (DecimalDigits rounded, DecimalDigits spread, int power) = Rounded(
            value,
            expandedUncertainty,
            "Expanded uncertainty",
            digits,
            nameof(expandedUncertainty)
        );
        string pair = $"{rounded.Positional(power)} \u00B1 {spread.Positional(power)}";
        string body = power == 0 ? pair : $"({pair}){Exponent(power)}";
        return string.Create(CultureInfo.InvariantCulture, $"{body} (k = {coverageFactor:G3})");
    }

    private static (DecimalDigits Value, DecimalDigits Spread, int Power) Rounded(
        double value,
        double uncertainty,
        string what,
        int digits,
        string name
    )
    {
        Check.Finite(value, "Value");
        Check.Positive(uncertainty, what, name);
        if (digits is < 1 or > MostDigits)
        {
            throw Check.OutOfRange(nameof(digits), "Number of significant digits", $"1 to {MostDigits}", digits);
        }

        DecimalDigits spread = DecimalDigits.Of(uncertainty).RoundedToDigits(digits);
        DecimalDigits rounded = DecimalDigits.Of(value).RoundedTo(spread.Place);
        int leading = Math.Max(rounded.Magnitude.IsZero ? int.MinValue : rounded.Leading, spread.Leading);
        bool plain = spread.Place <= 0 && leading >= PlainFrom && leading < PlainBelow;
        return (rounded, spread, plain ? 0 : leading);
    }

    /// <summary>The uncertainty in units of the last place of the value, as in 4.704(32); with a point of its own where it
    /// has one, as in 12.3(1.2), which bare digits would hide.</summary>
    private static string Brackets(DecimalDigits spread, int power) =>
        spread.Leading >= power && spread.Place < power ? spread.Positional(power) : spread.Bare;

    private static string Exponent(int power) =>
        power == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"e{power}");
}
