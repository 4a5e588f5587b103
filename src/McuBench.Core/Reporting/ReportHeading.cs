namespace McuBench.Core.Reporting;

/// <summary>A heading.</summary>
/// <param name="Level">Its level, 2 (a section) or 3 (within one); level 1 is the report's title.</param>
/// <param name="Text">What it says.</param>
public sealed record ReportHeading(int Level, string Text) : ReportBlock
{
    /// <summary>The name that links lead to, one of its own in the report: letters, digits and hyphens. Null where only
    /// the list of contents does.</summary>
    public string? Anchor { get; init; }
}
