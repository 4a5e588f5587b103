namespace McuBench.Core.Reporting;

/// <summary>A cell of a report's table: what it shows, what it is sorted by, and where it leads.</summary>
/// <param name="Text">What it shows.</param>
/// <remarks>A text alone is a cell too. Immutable; equal when all properties are equal.</remarks>
public sealed record ReportCell(string Text)
{
    /// <summary>The number that stands for it when rows are sorted, in the SI unit: 0.4649 for "464.9 ms". Null where the
    /// text itself is sorted by.</summary>
    public double? Order { get; init; }

    /// <summary>The anchor of the block that it leads to, on the same page; null where it leads nowhere.</summary>
    public string? Target { get; init; }

    /// <summary>A cell of a text alone.</summary>
    /// <param name="text">What it shows.</param>
    public static implicit operator ReportCell(string text) => new(text);
}
