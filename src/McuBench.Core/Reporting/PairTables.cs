using McuBench.Core.Boards;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>A matrix a workload: every setup against every other, by run time.</summary>
internal static class PairTables
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions)
    {
        if (conclusions.Comparisons.Count == 0)
        {
            yield break;
        }

        yield return new ReportHeading(2, "Setup against setup");
        yield return new ReportParagraph(
            "Each cell is the run time of the setup at the left divided by that of the setup above: 0.80 means 20 % less time, or 1.25 times as fast. In brackets: this data does not resolve a difference. A dash: no verdict. Numbers above stand for the setups at the left, in order."
        );
        foreach (var workload in conclusions.Study.Workloads)
        {
            var summaries = conclusions.Summaries.Where(summary => summary.Workload == workload).ToArray();
            if (summaries.Length > 1)
            {
                yield return Matrix(conclusions, workload, summaries);
            }
        }

        yield return new ReportHeading(3, "In words");
        foreach (var workload in conclusions.Study.Workloads)
        {
            var lead = conclusions.Comparisons.Where(comparison => comparison.Workload == workload).ToArray();
            if (lead.Length > 0)
            {
                yield return new ReportList(lead.Select(ComparisonStatement.Of));
            }
        }
    }

    private static ReportTable Matrix(StudyConclusions conclusions, Workload workload, SetupSummary[] summaries)
    {
        var index = new PairIndex(conclusions, workload);
        return new ReportTable(
            $"Ratio of run times, {workload.Name}.",
            summaries
                .Select((_, i) => new ReportColumn(Phrase.Number(i + 1), true))
                .Prepend(new ReportColumn("setup", false)),
            summaries.Select<SetupSummary, IReadOnlyList<string>>(
                (row, i) =>
                    [
                        $"{Phrase.Number(i + 1)}. {row.Setup.Name}",
                        .. summaries.Select(column => ReferenceEquals(row, column) ? "" : Cell(index, row, column)),
                    ]
            )
        );
    }

    private static string Cell(PairIndex index, SetupSummary row, SetupSummary column)
    {
        if (index.Find(row, column) is not { } comparison)
        {
            return "–";
        }

        var ratio = Phrase.Value(
            ReferenceEquals(comparison.First, row) ? comparison.RunTime.Ratio : comparison.SpeedRatio
        );
        return comparison.RunTime.Verdict switch
        {
            Verdict.NoVerdict => "–",
            Verdict.NotResolved => $"({ratio})",
            _ => ratio,
        };
    }
}
