using System.Collections.Immutable;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Tables;

/// <summary>What the columns of a sort of table are: which must be there, and which hold quantities.</summary>
internal sealed class TableLayout<TColumn>
    where TColumn : struct, Enum
{
    public required ImmutableArray<TColumn> Required { get; init; }

    public required ImmutableDictionary<TColumn, QuantityKind> Quantities { get; init; }

    public static ImmutableArray<TColumn> All { get; } = [.. Enum.GetValues<TColumn>()];

    public QuantityKind? KindOf(TColumn column) => Quantities.GetValueOrDefault(column);
}
