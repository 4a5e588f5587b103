namespace McuBench.Core.Reporting;

/// <summary>A report as text: a title and blocks in order, ready to be written as HTML, Markdown or plain text.</summary>
/// <remarks>Immutable; equal when title and blocks are equal. Safe to use from many threads.</remarks>
public sealed record Report
{
    /// <summary>Makes a report.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="blocks">Its blocks, in reading order.</param>
    public Report(string title, IEnumerable<ReportBlock> blocks)
    {
        Title = Require.Given(title, nameof(title));
        Blocks = ValueList<ReportBlock>.Of(blocks, "Blocks", nameof(blocks));
    }

    /// <summary>Its title.</summary>
    public string Title { get; }

    /// <summary>Its blocks, in reading order.</summary>
    public IReadOnlyList<ReportBlock> Blocks { get; }
}
