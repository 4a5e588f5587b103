namespace McuBench.Core.Reporting;

/// <summary>One piece of a report, in words or figures already made: headings, paragraphs, lists, tables, pictures.</summary>
/// <remarks>The blocks hold text only; what to escape is the business of the renderer that writes them out.</remarks>
public abstract record ReportBlock
{
    private protected ReportBlock() { }
}
