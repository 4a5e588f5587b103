using System.Globalization;

namespace McuBench.Core.Quantities;

/// <summary>Says what is wrong with the number of a refused text.</summary>
internal static class NumberDiagnosis
{
    private const int GroupLength = 3;

    public static QuantityTextError Empty(QuantityKind expected, Unit? columnUnit) =>
        new(
            QuantityTextErrorKind.Empty,
            "",
            expected,
            $"Nothing was given; {expected.Noun} was expected.",
            $"Write {Form(expected, columnUnit)}."
        );

    public static QuantityTextError TooLong(ReadOnlySpan<char> text, QuantityKind expected) =>
        QuantityTextError.About(
            QuantityTextErrorKind.TooLong,
            text,
            expected,
            string.Create(
                CultureInfo.InvariantCulture,
                $"has {text.Length} characters; {expected.Noun} of at most {QuantityParser.MaxLength} was expected."
            ),
            "Write fewer digits: a double holds 17."
        );

    public static QuantityTextError OutOfRange(ReadOnlySpan<char> text, QuantityKind expected) =>
        QuantityTextError.About(
            QuantityTextErrorKind.OutOfRange,
            text,
            expected,
            string.Create(
                CultureInfo.InvariantCulture,
                $"cannot be held; {expected.Noun} of size 0 or {expected.Smallest:0.0e+0} to {expected.Largest:0.0e+0} in the SI unit was expected."
            ),
            "Check the exponent."
        );

    /// <summary>Whether more of a number follows the one that was read: another digit behind a mark or a space.</summary>
    public static bool GoesOn(ReadOnlySpan<char> body, int read)
    {
        if (read == body.Length || !(IsMark(body[read]) || char.IsAsciiDigit(body[read])))
        {
            return false;
        }

        var rest = body[read..].TrimStart();
        return char.IsAsciiDigit(rest[0]) || (rest.Length > 1 && IsMark(rest[0]) && char.IsAsciiDigit(rest[1]));
    }

    /// <summary>Why a text does not begin with one plain number.</summary>
    public static QuantityTextError NotPlain(ReadOnlySpan<char> body, QuantityKind expected, Unit? columnUnit)
    {
        if (NamesNoFiniteNumber(body))
        {
            return QuantityTextError.About(
                QuantityTextErrorKind.NotFinite,
                body,
                expected,
                $"is no finite number; {expected.Noun} was expected.",
                "Leave out what was not measured."
            );
        }

        var start = body[0] is '+' or '-' or '\u2212' ? 1 : 0;
        var end = start;
        while (
            end < body.Length
            && (
                char.IsAsciiDigit(body[end])
                || (IsMark(body[end]) && end + 1 < body.Length && char.IsAsciiDigit(body[end + 1]))
            )
        )
        {
            end++;
        }

        return Marks(body, start, end, expected)
            ?? QuantityTextError.About(
                QuantityTextErrorKind.NoNumber,
                body,
                expected,
                $"does not begin with one plain number; {expected.Noun} was expected.",
                $"Write {Form(expected, columnUnit)}."
            );
    }

    /// <summary>Commas and grouped digits, where the marks between the digits make sense as such.</summary>
    private static QuantityTextError? Marks(ReadOnlySpan<char> body, int start, int end, QuantityKind expected)
    {
        var number = body[start..end];
        var last = LastMark(number);
        if (last < 0 || last == 0)
        {
            return null;
        }

        var whole = number[..last];
        var decimals = number[(last + 1)..];
        var separator = number[last];
        var sign = body[..start];
        var tail = body[end..];
        var joined = $"{sign}{Digits(whole)}.{decimals}{tail}";
        var wholeMark = LastMark(whole);

        // One decimal comma: "31,5", "0,125", "1.234,5".
        var isSingle = wholeMark < 0;
        var isGrouped = AreGroups(whole) && decimals.Length == GroupLength;
        if (separator == ',' && (isSingle ? !isGrouped || whole is "0" : AreGroups(whole) && whole[wholeMark] != ','))
        {
            return QuantityTextError.About(
                QuantityTextErrorKind.DecimalComma,
                body,
                expected,
                "has a decimal comma; a decimal point was expected.",
                $"Write {Excerpt.Quoted(joined)}."
            );
        }

        // Groups and then a decimal point: "1,234.5".
        if (separator == '.' && !isSingle && whole[wholeMark] != '.' && AreGroups(whole))
        {
            return Grouping(body, expected, $"Write {Excerpt.Quoted(joined)}.");
        }

        // Groups alone: "1,234,567", "1 000". A single comma before three digits can mean either.
        if (isGrouped && (isSingle || whole[wholeMark] == separator))
        {
            var ungrouped = Excerpt.Quoted($"{sign}{Digits(number)}{tail}");
            return Grouping(
                body,
                expected,
                separator == ',' && isSingle
                    ? $"Write {ungrouped}, or {Excerpt.Quoted(joined)} if the comma is a decimal one."
                    : $"Write {ungrouped}."
            );
        }

        return null;
    }

    private static string Form(QuantityKind expected, Unit? columnUnit) =>
        columnUnit is null
            ? $"one number and its unit, such as {expected.Example}"
            : $"one bare number, in the {columnUnit.Symbol} of the column's head";

    private static QuantityTextError Grouping(ReadOnlySpan<char> body, QuantityKind expected, string mend) =>
        QuantityTextError.About(
            QuantityTextErrorKind.DigitGrouping,
            body,
            expected,
            "has grouped digits; digits without marks between them were expected.",
            mend
        );

    private static bool NamesNoFiniteNumber(ReadOnlySpan<char> body)
    {
        var word = body[0] is '+' or '-' or '\u2212' ? body[1..].TrimStart() : body;
        return word.StartsWith("nan", StringComparison.OrdinalIgnoreCase)
            || word.StartsWith("inf", StringComparison.OrdinalIgnoreCase)
            || word.StartsWith('\u221E');
    }

    /// <summary>One to three digits, then groups of three, all behind the same mark.</summary>
    private static bool AreGroups(ReadOnlySpan<char> digits)
    {
        var mark = LastMark(digits);
        var lead = digits.Length % (GroupLength + 1);
        if (mark < 0)
        {
            return digits.Length is > 0 and <= GroupLength;
        }

        for (var i = 0; i < digits.Length; i++)
        {
            var isMarkPlace = i % (GroupLength + 1) == lead;
            if (isMarkPlace ? digits[i] != digits[mark] : !char.IsAsciiDigit(digits[i]))
            {
                return false;
            }
        }

        return lead > 0;
    }

    private static bool IsMark(char c) => c is '.' or ',' or '\'' or '\u2019' or '_' || char.IsWhiteSpace(c);

    private static int LastMark(ReadOnlySpan<char> text)
    {
        for (var i = text.Length - 1; i >= 0; i--)
        {
            if (IsMark(text[i]))
            {
                return i;
            }
        }

        return -1;
    }

    private static string Digits(ReadOnlySpan<char> text) => string.Concat(text.ToArray().Where(char.IsAsciiDigit));
}
