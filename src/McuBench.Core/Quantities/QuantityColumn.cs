using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace McuBench.Core.Quantities;

/// <summary>Columns of quantities in a table whose heads give the unit: "time [ms]".</summary>
public static class QuantityColumn
{
    /// <summary>As many characters may a head have: 200.</summary>
    public const int MaxHeadLength = 200;

    /// <summary>Reads a head of the form <c>name [unit]</c>; the unit follows <see cref="QuantityText"/>.</summary>
    /// <typeparam name="TQuantity">One of the quantities that <see cref="QuantityText"/> reads.</typeparam>
    /// <param name="head">The head; white space around the name and the unit doesn't count.</param>
    /// <exception cref="QuantityFormatException">The head has no unit, an unknown one, or that of another kind of
    /// quantity.</exception>
    /// <exception cref="NotSupportedException">The quantity is none of those.</exception>
    public static QuantityColumn<TQuantity> OfHead<TQuantity>(ReadOnlySpan<char> head)
        where TQuantity : struct, IQuantity =>
        TryOfHead<TQuantity>(head, out var column, out var error) ? column : throw new QuantityFormatException(error);

    /// <summary>Reads a head or says why not; see <see cref="OfHead{TQuantity}"/>.</summary>
    /// <exception cref="NotSupportedException">The quantity is none of those that <see cref="QuantityText"/>
    /// reads.</exception>
    public static bool TryOfHead<TQuantity>(
        ReadOnlySpan<char> head,
        [NotNullWhen(true)] out QuantityColumn<TQuantity>? column,
        [NotNullWhen(false)] out QuantityTextError? error
    )
        where TQuantity : struct, IQuantity
    {
        var notation = QuantityNotation.For<TQuantity>();
        error = Read(head, notation.Kind, out var name, out var unit);
        column = error is null ? new QuantityColumn<TQuantity>(name.ToString(), unit!, notation) : null;
        return error is null;
    }

    private static QuantityTextError? Read(
        ReadOnlySpan<char> head,
        QuantityKind expected,
        out ReadOnlySpan<char> name,
        out Unit? unit
    )
    {
        name = default;
        unit = null;
        if (head.Length > MaxHeadLength)
        {
            return HeadDiagnosis.TooLong(head, expected);
        }

        var body = head.Trim();
        var open = body.LastIndexOf('[');
        if (open < 0 && !body.IsEmpty && !body.Contains(']'))
        {
            return HeadDiagnosis.NoUnit(head, body, expected);
        }

        if (open <= 0 || body[^1] != ']' || body[..open].IndexOfAny('[', ']') >= 0)
        {
            return HeadDiagnosis.Malformed(head, expected);
        }

        name = body[..open].TrimEnd();
        var symbol = body[(open + 1)..^1].Trim();
        if (symbol.IsEmpty)
        {
            return HeadDiagnosis.NoUnit(head, name, expected);
        }

        if (!UnitTable.TryFind(symbol, out unit, out var kind))
        {
            return HeadDiagnosis.UnknownUnit(head, name, symbol, expected);
        }

        return kind == expected ? null : HeadDiagnosis.WrongQuantity(head, name, unit, kind, expected);
    }
}
