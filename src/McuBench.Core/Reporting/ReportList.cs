namespace McuBench.Core.Reporting;

/// <summary>A list of points, in order.</summary>
public sealed record ReportList : ReportBlock
{
    /// <summary>Makes a list of sentences.</summary>
    /// <param name="items">The points, a sentence or two each.</param>
    public ReportList(IEnumerable<string> items)
        : this(items.Select(text => new ReportItem(text))) { }

    /// <summary>Makes a list.</summary>
    /// <param name="items">The points.</param>
    public ReportList(IEnumerable<ReportItem> items) =>
        Items = ValueList<ReportItem>.Of(items, "List items", nameof(items));

    /// <summary>The points.</summary>
    public IReadOnlyList<ReportItem> Items { get; }
}
