using McuBench.Core.Quantities;

namespace McuBench.Core.Supply.Traces;

/// <summary>What stands at a place in the rows of a trace: where its numbers go, and their unit.</summary>
/// <param name="Column">What it holds; null for a column that is skipped.</param>
/// <param name="Head">Its head.</param>
/// <param name="Unit">Its unit; null for the marker and for what is skipped.</param>
/// <param name="Kind">Its kind of quantity; null likewise.</param>
internal sealed record TraceField(TraceColumn? Column, string Head, Unit? Unit, QuantityKind? Kind)
{
    /// <summary>The place of its number in a row.</summary>
    public int Slot { get; } = (int)(Column ?? TraceColumn.Time);
}
