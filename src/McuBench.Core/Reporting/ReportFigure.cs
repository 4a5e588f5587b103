namespace McuBench.Core.Reporting;

/// <summary>A picture, drawn elsewhere and handed over as SVG.</summary>
/// <param name="Name">A short name, fit for a file: letters, digits and hyphens.</param>
/// <param name="Caption">What it shows, and how to read it.</param>
/// <param name="AlternativeText">What it says, for those who can't see it.</param>
/// <param name="Svg">The picture, a whole SVG document.</param>
public sealed record ReportFigure(string Name, string Caption, string AlternativeText, string Svg) : ReportBlock;
