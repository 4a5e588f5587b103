namespace McuBench.Core.Reporting;

/// <summary>A paragraph.</summary>
/// <param name="Text">What it says.</param>
public sealed record ReportParagraph(string Text) : ReportBlock;
