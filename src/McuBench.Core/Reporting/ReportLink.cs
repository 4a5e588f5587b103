namespace McuBench.Core.Reporting;

/// <summary>A link to another place of the report.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Target">The anchor of the block that it leads to.</param>
public sealed record ReportLink(string Text, string Target);
