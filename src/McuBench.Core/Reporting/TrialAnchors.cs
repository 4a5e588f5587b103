using McuBench.Core.Boards;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Where in a report the trials of each setup and workload stand.</summary>
internal sealed class TrialAnchors
{
    private readonly Dictionary<SetupSummary, string> bySummary = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, string> byWorkload = new(StringComparer.Ordinal);

    public TrialAnchors(StudyConclusions conclusions)
    {
        foreach (var summary in conclusions.Summaries)
        {
            bySummary.Add(summary, FormattableString.Invariant($"trials-{bySummary.Count + 1}"));
        }

        foreach (var workload in conclusions.Study.Workloads)
        {
            byWorkload.Add(workload.Name, FormattableString.Invariant($"trials-of-workload-{byWorkload.Count + 1}"));
        }
    }

    public string Of(SetupSummary summary) => bySummary[summary];

    public string Of(Workload workload) => byWorkload[workload.Name];

    /// <summary>A cell that names a setup and leads to its trials.</summary>
    public ReportCell Cell(SetupSummary summary) => new(summary.Setup.Name) { Target = Of(summary) };

    /// <summary>Links to the trials of setups, named after them.</summary>
    public IReadOnlyList<ReportLink> Links(params IEnumerable<SetupSummary> summaries) =>
        [.. summaries.Select(summary => new ReportLink(summary.Setup.Name, Of(summary)))];

    /// <summary>A sentence on a comparison, with links to the trials of both sides.</summary>
    public ReportItem Item(SetupComparison comparison, string sentence) =>
        new(sentence) { Links = Links(comparison.First, comparison.Second) };

    /// <summary>A picture with a link to the trials of its workload.</summary>
    public ReportFigure Linked(ReportFigure figure) =>
        figure.Workload is { } workload && byWorkload.TryGetValue(workload, out var anchor)
            ? figure with
            {
                Links = [.. figure.Links, new ReportLink(workload, anchor)],
            }
            : figure;
}
