namespace McuBench.Core.Reporting;

/// <summary>A list of points, in order.</summary>
public sealed record ReportList : ReportBlock
{
    /// <summary>Makes a list.</summary>
    /// <param name="items">The points, a sentence or two each.</param>
    public ReportList(IEnumerable<string> items) => Items = ValueList<string>.Of(items, "List items", nameof(items));

    /// <summary>The points, a sentence or two each.</summary>
    public IReadOnlyList<string> Items { get; }
}
