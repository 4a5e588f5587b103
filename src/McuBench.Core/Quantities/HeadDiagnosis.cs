namespace McuBench.Core.Quantities;

/// <summary>Says what is wrong with a column's head.</summary>
internal static class HeadDiagnosis
{
    public static QuantityTextError Malformed(ReadOnlySpan<char> head, QuantityKind expected) =>
        Error(
            QuantityTextErrorKind.MalformedHead,
            head,
            expected,
            "is malformed; a name and a unit in brackets were expected.",
            $"Write {Head("name", Unit(expected))}."
        );

    public static QuantityTextError TooLong(ReadOnlySpan<char> head, QuantityKind expected) =>
        Error(
            QuantityTextErrorKind.TooLong,
            head,
            expected,
            $"has {head.Length} characters; at most {QuantityColumn.MaxHeadLength} were expected.",
            "Shorten the name."
        );

    public static QuantityTextError NoUnit(ReadOnlySpan<char> head, ReadOnlySpan<char> name, QuantityKind expected) =>
        Error(
            QuantityTextErrorKind.NoUnit,
            head,
            expected,
            $"has no unit; that of {expected.Noun} was expected.",
            $"Write the unit in brackets behind the name, such as {Head(name, Unit(expected))}."
        );

    public static QuantityTextError UnknownUnit(
        ReadOnlySpan<char> head,
        ReadOnlySpan<char> name,
        ReadOnlySpan<char> unit,
        QuantityKind expected
    ) =>
        Error(
            QuantityTextErrorKind.UnknownUnit,
            head,
            expected,
            $"has the unknown unit {Excerpt.Quoted(unit)}; that of {expected.Noun} was expected.",
            MendOfUnit(name, unit, expected)
        );

    public static QuantityTextError WrongQuantity(
        ReadOnlySpan<char> head,
        ReadOnlySpan<char> name,
        Unit unit,
        QuantityKind given,
        QuantityKind expected
    ) =>
        Error(
            QuantityTextErrorKind.WrongQuantity,
            head,
            expected,
            $"has {unit.Symbol}, the unit of {given.Noun}; that of {expected.Noun} was expected.",
            MendOfUnit(name, unit.Symbol, expected)
        );

    private static string MendOfUnit(ReadOnlySpan<char> name, ReadOnlySpan<char> unit, QuantityKind expected)
    {
        var meant = UnitDiagnosis.Meant(unit, expected);
        var written = name.ToString();
        return meant.Length > 0
            ? $"Write {string.Join(" or ", meant.Select(symbol => Head(written, symbol)))}{UnitDiagnosis.CaseNote(unit, meant)}."
            : $"Give the unit as one of {string.Join(", ", expected.Units.Select(known => known.Symbol))}.";
    }

    private static string Head(ReadOnlySpan<char> name, string symbol) => Excerpt.Quoted($"{name} [{symbol}]");

    private static string Unit(QuantityKind expected) => expected.Example.Split(' ')[1];

    private static QuantityTextError Error(
        QuantityTextErrorKind kind,
        ReadOnlySpan<char> head,
        QuantityKind expected,
        string problem,
        string mend
    ) => new(kind, Excerpt.Of(head), expected, $"Head {Excerpt.Quoted(head)} {problem}", mend);
}
