namespace McuBench.Core.Reporting;

/// <summary>A picture, drawn elsewhere and handed over as SVG.</summary>
/// <param name="Name">A short name, fit for a file: letters, digits and hyphens.</param>
/// <param name="Caption">What it shows, and how to read it.</param>
/// <param name="AlternativeText">What it says, for those who can't see it.</param>
/// <param name="Svg">The picture, a whole SVG document.</param>
/// <remarks>Immutable; equal when all properties are equal, links in order.</remarks>
public sealed record ReportFigure(string Name, string Caption, string AlternativeText, string Svg) : ReportBlock
{
    private readonly ValueList<ReportLink> links = ValueList<ReportLink>.Empty;

    /// <summary>The name of the workload that it is of, so that it finds its place; null where it is of none or of several.</summary>
    public string? Workload { get; init; }

    /// <summary>Where it leads: to the trials behind it.</summary>
    public IReadOnlyList<ReportLink> Links
    {
        get => links;
        init => links = ValueList<ReportLink>.Of(value, "Links", nameof(Links));
    }
}
