using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Tables;

/// <summary>Where a table has a property: in a column, whose head may give a unit, or as one value for all rows.</summary>
internal sealed record BoundColumn(int Index, string Head, Unit? Unit, string? Constant)
{
    /// <summary>Whether what is wrong with every row of it was said already: a missing unit, or a constant.</summary>
    public bool IsSaid { get; set; }
}
