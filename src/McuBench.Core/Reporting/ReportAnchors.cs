namespace McuBench.Core.Reporting;

/// <summary>The names within a report that links lead to.</summary>
internal static class ReportAnchors
{
    /// <summary>Refuses a report in which a name stands twice, or a link leads nowhere. O(n) in its blocks.</summary>
    public static void Check(Report report)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var anchor in All(report.Blocks).Select(AnchorOf).OfType<string>())
        {
            if (!known.Add(anchor))
            {
                throw new ArgumentException(
                    $"Anchors must be distinct in a report; \"{anchor}\" stands twice.",
                    nameof(report)
                );
            }
        }

        foreach (var target in All(report.Blocks).SelectMany(Targets))
        {
            if (!known.Contains(target))
            {
                throw new ArgumentException(
                    $"Links must lead to an anchor of the report; none is named \"{target}\".",
                    nameof(report)
                );
            }
        }
    }

    private static IEnumerable<ReportBlock> All(IEnumerable<ReportBlock> blocks) =>
        blocks.SelectMany(block => block is ReportDetails details ? All(details.Blocks).Prepend(details) : [block]);

    private static string? AnchorOf(ReportBlock block) =>
        block switch
        {
            ReportHeading heading => heading.Anchor,
            ReportDetails details => details.Anchor,
            _ => null,
        };

    private static IEnumerable<string> Targets(ReportBlock block) =>
        block switch
        {
            ReportList list => list.Items.SelectMany(item => item.Links).Select(link => link.Target),
            ReportTable table => table.Rows.SelectMany(row => row).Select(cell => cell.Target).OfType<string>(),
            ReportFigure figure => figure.Links.Select(link => link.Target),
            _ => [],
        };
}
