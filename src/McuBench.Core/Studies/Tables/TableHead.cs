using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Tables;

/// <summary>The head of a column: its name, and the unit in brackets behind it, if any.</summary>
internal readonly record struct TableHead(string Text, string Name, string? UnitText)
{
    public static TableHead Of(string text)
    {
        var open = text.LastIndexOf('[');
        return open >= 0 && text[^1] == ']'
            ? new TableHead(text, text[..open].Trim(), text[(open + 1)..^1].Trim())
            : new TableHead(text, text, null);
    }

    /// <summary>Whether this is the column that a map's head means, given with its unit or without.</summary>
    public bool IsMeantBy(string mapped) =>
        string.Equals(Text, mapped, StringComparison.OrdinalIgnoreCase)
        || string.Equals(Name, mapped, StringComparison.OrdinalIgnoreCase);

    /// <summary>The unit of a kind of quantity, or a fault; null without a fault where the head gives no unit.</summary>
    public Unit? UnitOf(QuantityKind kind, Action<QuantityTextError> fault)
    {
        if (UnitText is null)
        {
            return null;
        }

        if (!UnitTable.TryFind(UnitText, out var unit, out var found))
        {
            fault(HeadDiagnosis.UnknownUnit(Text, Name, UnitText, kind));
            return null;
        }

        if (found != kind)
        {
            fault(HeadDiagnosis.WrongQuantity(Text, Name, unit, found, kind));
            return null;
        }

        return unit;
    }
}
