namespace McuBench.Core.Quantities;

/// <summary>Says what is wrong with the unit of a refused text.</summary>
internal static class UnitDiagnosis
{
    /// <summary>What writers put for a unit that has another symbol, by the kind that was expected.</summary>
    private static readonly (QuantityKind Kind, string Written, string[] Meant)[] Slips =
    [
        (QuantityKind.Duration, "m", ["min", "ms"]),
        (QuantityKind.Duration, "sec", ["s"]),
        (QuantityKind.Duration, "secs", ["s"]),
        (QuantityKind.Duration, "second", ["s"]),
        (QuantityKind.Duration, "seconds", ["s"]),
        (QuantityKind.Duration, "msec", ["ms"]),
        (QuantityKind.Duration, "usec", ["us"]),
        (QuantityKind.Duration, "nsec", ["ns"]),
        (QuantityKind.Duration, "mins", ["min"]),
        (QuantityKind.Duration, "minute", ["min"]),
        (QuantityKind.Duration, "minutes", ["min"]),
        (QuantityKind.Duration, "hr", ["h"]),
        (QuantityKind.Duration, "hrs", ["h"]),
        (QuantityKind.Duration, "hour", ["h"]),
        (QuantityKind.Duration, "hours", ["h"]),
        (QuantityKind.Duration, "day", ["d"]),
        (QuantityKind.Duration, "days", ["d"]),
        (QuantityKind.Frequency, "M", ["MHz"]),
        (QuantityKind.Frequency, "mHz", ["MHz"]),
        (QuantityKind.Current, "m", ["mA"]),
        (QuantityKind.Current, "amp", ["A"]),
        (QuantityKind.Current, "amps", ["A"]),
        (QuantityKind.Voltage, "volt", ["V"]),
        (QuantityKind.Voltage, "volts", ["V"]),
        (QuantityKind.Temperature, "C", ["degC"]),
        (QuantityKind.Temperature, "c", ["degC"]),
        (QuantityKind.Temperature, "\u00B0", ["degC"]),
        (QuantityKind.Temperature, "\u00B0K", ["K"]),
        (QuantityKind.Resistance, "R", ["ohm"]),
        (QuantityKind.Resistance, "ohms", ["ohm"]),
        (QuantityKind.Resistance, "k", ["kohm"]),
        (QuantityKind.Resistance, "K", ["kohm"]),
        (QuantityKind.Resistance, "M", ["Mohm"]),
        (QuantityKind.Resistance, "m", ["mohm"]),
        (QuantityKind.Ratio, "percent", ["%"]),
    ];

    public static QuantityTextError NoUnit(ReadOnlySpan<char> text, ReadOnlySpan<char> number, QuantityKind expected)
    {
        var unit = expected.Example[(expected.Example.IndexOf(' ', StringComparison.Ordinal) + 1)..];
        return QuantityTextError.About(
            QuantityTextErrorKind.NoUnit,
            text,
            expected,
            $"has no unit; {expected.Noun} was expected.",
            $"Write the unit behind the number, such as {With(number, unit)}."
        );
    }

    public static QuantityTextError WrongQuantity(
        ReadOnlySpan<char> text,
        ReadOnlySpan<char> number,
        Unit unit,
        QuantityKind given,
        QuantityKind expected
    ) =>
        QuantityTextError.About(
            QuantityTextErrorKind.WrongQuantity,
            text,
            expected,
            $"is {given.Noun}; {expected.Noun} was expected.",
            MendOfWrongQuantity(number, unit.Symbol, expected)
        );

    public static QuantityTextError UnitInCell(
        ReadOnlySpan<char> text,
        ReadOnlySpan<char> number,
        ReadOnlySpan<char> rest,
        Unit unit,
        QuantityKind expected
    ) =>
        QuantityTextError.About(
            QuantityTextErrorKind.UnitInCell,
            text,
            expected,
            $"has {Excerpt.Quoted(rest)} behind the number; a bare number was expected, as the column's head gives {unit.Symbol}.",
            $"Write {Excerpt.Quoted(number)} if it is in {unit.Symbol}, or convert it."
        );

    /// <summary>Why what follows the number is not one known unit.</summary>
    public static QuantityTextError NotAUnit(
        ReadOnlySpan<char> text,
        ReadOnlySpan<char> number,
        ReadOnlySpan<char> unitText,
        QuantityKind expected
    )
    {
        var length = LeadingUnit(unitText);
        var isSecondValue = length == 0 && !char.IsLetter(unitText[0]) && unitText.ContainsAnyInRange('0', '9');
        if (length == 0 && !isSecondValue)
        {
            return Unknown(text, number, unitText, expected);
        }

        var first = unitText[..length];
        var more = unitText[length..].TrimStart();
        return isSecondValue || char.IsAsciiDigit(more[0]) || LeadingUnit(more.TrimStart("/*\u00B7\u22C5 ")) > 0
            ? QuantityTextError.About(
                QuantityTextErrorKind.TwoUnits,
                text,
                expected,
                $"has more than one unit or value; {expected.Noun} was expected.",
                $"Write one number and one unit, such as {expected.Example}."
            )
            : QuantityTextError.About(
                QuantityTextErrorKind.TrailingText,
                text,
                expected,
                $"goes on behind the unit, with {Excerpt.Quoted(more)}; nothing was expected there.",
                $"Write {With(number, first)}."
            );
    }

    private static QuantityTextError Unknown(
        ReadOnlySpan<char> text,
        ReadOnlySpan<char> number,
        ReadOnlySpan<char> unitText,
        QuantityKind expected
    )
    {
        var meant = Meant(unitText, expected);
        var mend =
            meant.Length > 0
                ? $"Write {Alternatives(number, meant)}{CaseNote(unitText, meant)}."
                : $"Write one of {string.Join(", ", expected.Units.Select(unit => unit.Symbol))}.";
        return QuantityTextError.About(
            QuantityTextErrorKind.UnknownUnit,
            text,
            expected,
            $"has the unknown unit {Excerpt.Quoted(unitText)}; {expected.Noun} was expected.",
            mend
        );
    }

    private static string MendOfWrongQuantity(ReadOnlySpan<char> number, string symbol, QuantityKind expected)
    {
        var meant = Slip(symbol, expected);
        if (meant.Length > 0)
        {
            return $"Write {Alternatives(number, meant)} if that is meant.";
        }

        // Charge for current and energy for power, and the other way round: the hour was added or forgotten.
        if (symbol is [.., 'h' or 's'] && IsUnitOf(expected, symbol[..^1]))
        {
            return $"Write {With(number, symbol.AsSpan(..^1))} if that is meant, or divide by the time it took.";
        }

        return IsUnitOf(expected, symbol + "h")
            ? $"Write {With(number, symbol + "h")} if that is meant, or multiply by the time it lasted."
            : $"Write {expected.Noun}, such as {expected.Example}.";
    }

    /// <summary>The reminder for a writer whose unit is right but for its capitals.</summary>
    public static string CaseNote(ReadOnlySpan<char> written, string[] meant) =>
        meant.Contains(WithPlainMicro(written), StringComparer.OrdinalIgnoreCase) ? "; capitals count in units" : "";

    /// <summary>The units of this kind that the writer may have meant, nearest first; none where none is near.</summary>
    public static string[] Meant(ReadOnlySpan<char> written, QuantityKind expected)
    {
        var slip = Slip(written, expected);
        if (slip.Length > 0)
        {
            return slip;
        }

        var symbols = expected.Units.Select(unit => unit.Symbol).ToArray();
        var plain = WithPlainMicro(written);
        var caseSlips = symbols
            .Where(symbol => string.Equals(symbol, plain, StringComparison.OrdinalIgnoreCase))
            .ToArray();
        return caseSlips.Length > 0 || plain.Length < 2
            ? caseSlips
            : [.. symbols.Where(symbol => symbol.Length > 1 && DifferByOne(symbol, plain))];
    }

    private static string WithPlainMicro(ReadOnlySpan<char> symbol) =>
        symbol.ToString().Replace('\u00B5', 'u').Replace('\u03BC', 'u');

    private static string[] Slip(ReadOnlySpan<char> written, QuantityKind expected)
    {
        foreach (var (kind, slip, meant) in Slips)
        {
            if (kind == expected && written.SequenceEqual(slip))
            {
                return meant;
            }
        }

        return [];
    }

    private static bool IsUnitOf(QuantityKind kind, string symbol) =>
        UnitTable.TryFind(symbol, out _, out var found) && found == kind;

    /// <summary>The length of the longest unit that the text begins with and that no letter follows.</summary>
    private static int LeadingUnit(ReadOnlySpan<char> text)
    {
        for (var length = text.Length; length > 0; length--)
        {
            var ends = length == text.Length || !char.IsLetter(text[length]);
            if (ends && UnitTable.TryFind(text[..length], out _, out _))
            {
                return length;
            }
        }

        return 0;
    }

    /// <summary>Whether one character added, left out or put for another turns one into the other, case aside.</summary>
    private static bool DifferByOne(string a, string b)
    {
        var (shorter, longer) = a.Length <= b.Length ? (a, b) : (b, a);
        var same = 0;
        while (same < shorter.Length && Same(shorter[same], longer[same]))
        {
            same++;
        }

        var restOfShorter = shorter.Length == longer.Length ? Math.Min(same + 1, shorter.Length) : same;
        return string.Equals(
            shorter[restOfShorter..],
            longer[Math.Min(same + 1, longer.Length)..],
            StringComparison.OrdinalIgnoreCase
        );

        static bool Same(char x, char y) => char.ToUpperInvariant(x) == char.ToUpperInvariant(y);
    }

    private static string Alternatives(ReadOnlySpan<char> number, string[] symbols)
    {
        var written = number.ToString();
        return string.Join(" or ", symbols.Select(symbol => With(written, symbol)));
    }

    private static string With(ReadOnlySpan<char> number, ReadOnlySpan<char> symbol) =>
        Excerpt.Quoted($"{number} {symbol}");
}
