using System.Text;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core;

/// <summary>The checks at the door of the domain types: what they let through is finite, in range and held in SI
/// units; what they refuse is named with its value and the rule.</summary>
internal static class Require
{
    /// <summary>How long a name may be.</summary>
    public const int LongestName = 200;

    /// <summary>How long a description may be.</summary>
    public const int LongestDescription = 2000;

    /// <summary>A name: not blank, on one line, of at most <see cref="LongestName"/> characters, without white space at its ends.</summary>
    public static string Name(string value, string what, string parameter) => Line(value, LongestName, what, parameter);

    /// <summary>A name that may be absent.</summary>
    public static string? OptionalName(string? value, string what, string parameter) =>
        value is null ? null : Name(value, what, parameter);

    /// <summary>A description that may be absent: a name's rules, at greater length.</summary>
    public static string? OptionalDescription(string? value, string what, string parameter) =>
        value is null ? null : Line(value, LongestDescription, what, parameter);

    public static T Given<T>(T value, string parameter)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, parameter);
        return value;
    }

    public static T Defined<T>(T value, string what, string parameter)
        where T : struct, Enum =>
        Enum.IsDefined(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{what} must be one of {string.Join(", ", Enum.GetNames<T>())}; was {value}."
            );

    public static long AtLeast(long value, long least, string what, string parameter) =>
        value >= least
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                value,
                FormattableString.Invariant($"{what} must be at least {least}; was {value}.")
            );

    public static Duration Positive(Duration value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Positive(normalized, Si.Seconds(normalized), QuantityText.Format, what, parameter);
    }

    public static Frequency Positive(Frequency value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Positive(normalized, Si.Hertz(normalized), QuantityText.Format, what, parameter);
    }

    public static ElectricCurrent Positive(ElectricCurrent value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Positive(normalized, Si.Amperes(normalized), QuantityText.Format, what, parameter);
    }

    public static ElectricPotential Positive(ElectricPotential value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Positive(normalized, Si.Volts(normalized), QuantityText.Format, what, parameter);
    }

    public static ElectricCharge Positive(ElectricCharge value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Positive(normalized, Si.Coulombs(normalized), QuantityText.Format, what, parameter);
    }

    public static ElectricCurrent NotNegative(ElectricCurrent value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return NotNegative(normalized, Si.Amperes(normalized), QuantityText.Format, what, parameter);
    }

    public static ElectricPotential NotNegative(ElectricPotential value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return NotNegative(normalized, Si.Volts(normalized), QuantityText.Format, what, parameter);
    }

    /// <summary>A share of 0 up to, but not including, 1: tolerances and accuracies.</summary>
    public static Ratio Share(Ratio value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Si.Fraction(normalized) is >= 0 and < 1
            ? normalized
            : throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{what} must be at least 0 % and below 100 %; was {QuantityText.Format(normalized)}."
            );
    }

    /// <summary>A share above 0 up to 1: usable parts and efficiencies.</summary>
    public static Ratio Part(Ratio value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Si.Fraction(normalized) is > 0 and <= 1
            ? normalized
            : throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{what} must be above 0 % and at most 100 %; was {QuantityText.Format(normalized)}."
            );
    }

    private static T Positive<T>(T normalized, double si, Func<T, string> shown, string what, string parameter)
        where T : struct =>
        si > 0
            ? normalized
            : throw new ArgumentOutOfRangeException(
                parameter,
                normalized,
                $"{what} must be above zero; was {shown(normalized)}."
            );

    private static T NotNegative<T>(T normalized, double si, Func<T, string> shown, string what, string parameter)
        where T : struct =>
        si >= 0
            ? normalized
            : throw new ArgumentOutOfRangeException(
                parameter,
                normalized,
                $"{what} must not be negative; was {shown(normalized)}."
            );

    private static string Line(string value, int longest, string what, string parameter)
    {
        ArgumentNullException.ThrowIfNull(value, parameter);
        if (string.IsNullOrWhiteSpace(value))
        {
            throw new ArgumentException($"{what} must hold a visible character; was \"{Shown(value)}\".", parameter);
        }

        if (char.IsWhiteSpace(value[0]) || char.IsWhiteSpace(value[^1]))
        {
            throw new ArgumentException(
                $"{what} must not begin or end with white space; was \"{Shown(value)}\".",
                parameter
            );
        }

        if (value.Length > longest)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"{what} must have at most {longest} characters; had {value.Length}: \"{Shown(value)}\"."
                ),
                parameter
            );
        }

        for (var i = 0; i < value.Length; i++)
        {
            if (char.IsControl(value[i]))
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"{what} must hold no control character; U+{(int)value[i]:X4} in \"{Shown(value)}\"."
                    ),
                    parameter
                );
            }

            if (char.IsSurrogatePair(value, i))
            {
                i++;
            }
            else if (char.IsSurrogate(value[i]))
            {
                // No file in UTF-8 can hold it, so that it would come back as another name.
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"{what} must hold whole characters; U+{(int)value[i]:X4} is half of one, in \"{Shown(value)}\"."
                    ),
                    parameter
                );
            }
        }

        return value;
    }

    /// <summary>Text fit for a message: on one line and short.</summary>
    private static string Shown(string value)
    {
        const int most = 40;
        var shown = value.Length > most ? value[..most] + "…" : value;
        return string.Concat(shown.EnumerateRunes().Select(r => Rune.IsControl(r) ? Rune.ReplacementChar : r));
    }
}
