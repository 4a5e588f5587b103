namespace McuBench.Core.Quantities;

/// <summary>Reads a number and a unit into the SI double; every refusal goes to the diagnoses.</summary>
internal static class QuantityParser
{
    public const int MaxLength = 64;

    /// <summary>Reads "412.1 ms" for a kind of quantity.</summary>
    /// <returns>Null where the text was read; why it was not otherwise.</returns>
    public static QuantityTextError? Read(ReadOnlySpan<char> text, QuantityKind expected, out double si)
    {
        si = 0;
        if (ReadNumber(text, expected, null, out var number, out var written, out var unitText) is { } numberError)
        {
            return numberError;
        }

        if (unitText.IsEmpty)
        {
            return UnitDiagnosis.NoUnit(text, written, expected);
        }

        if (!UnitTable.TryFind(unitText, out var unit, out var kind))
        {
            return UnitDiagnosis.NotAUnit(text, written, unitText, expected);
        }

        return kind == expected
            ? ToSi(text, number, unit, expected, out si)
            : UnitDiagnosis.WrongQuantity(text, written, unit, kind, expected);
    }

    /// <summary>Reads a bare number whose unit is known, as in a column of a table.</summary>
    public static QuantityTextError? ReadBare(ReadOnlySpan<char> text, Unit unit, QuantityKind expected, out double si)
    {
        si = 0;
        if (ReadNumber(text, expected, unit, out var number, out var written, out var rest) is { } error)
        {
            return error;
        }

        return rest.IsEmpty
            ? ToSi(text, number, unit, expected, out si)
            : UnitDiagnosis.UnitInCell(text, written, rest, unit, expected);
    }

    private static QuantityTextError? ReadNumber(
        ReadOnlySpan<char> text,
        QuantityKind expected,
        Unit? columnUnit,
        out DecimalNumber number,
        out ReadOnlySpan<char> written,
        out ReadOnlySpan<char> rest
    )
    {
        number = default;
        written = rest = default;
        if (text.Length > MaxLength)
        {
            return NumberDiagnosis.TooLong(text, expected);
        }

        var body = text.Trim();
        if (body.IsEmpty)
        {
            return NumberDiagnosis.Empty(expected, columnUnit);
        }

        var length = DecimalNumber.ReadPrefix(body, out number);
        written = body[..length];
        rest = body[length..].TrimStart();
        return length == 0 || NumberDiagnosis.GoesOn(body, length)
            ? NumberDiagnosis.NotPlain(body, expected, columnUnit)
            : null;
    }

    private static QuantityTextError? ToSi(
        ReadOnlySpan<char> text,
        DecimalNumber number,
        Unit unit,
        QuantityKind expected,
        out double si
    )
    {
        si = unit.ToSi(number).ToDouble();
        var size = Math.Abs(si);
        return size > expected.Largest || (size < expected.Smallest && !(number.IsZero || unit.IsCelsius))
            ? NumberDiagnosis.OutOfRange(text, expected)
            : null;
    }
}
