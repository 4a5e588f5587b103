using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;

namespace McuBench.Core.Reporting;

/// <summary>What makes up the uncertainty of each setup's run time and charge per task.</summary>
internal static class BudgetTables
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions, TrialAnchors anchors)
    {
        yield return new ReportHeading(2, "Uncertainty budgets");
        yield return new ReportParagraph(
            "What each source adds to a figure's standard uncertainty, as a share of the figure, and its share of the variance. Where the largest source does not shrink with more trials, a better instrument or a longer run helps, and more of the same does not."
        );
        foreach (var workload in conclusions.Study.Workloads)
        {
            var summaries = conclusions.Summaries.Where(summary => summary.Workload == workload).ToArray();
            if (summaries.Length == 0)
            {
                continue;
            }

            yield return Folded("run time", workload, summaries, anchors, summary => summary.RunTime.Budget);
            if (summaries.Any(summary => summary.Supply is not null))
            {
                yield return Folded(
                    "charge per task",
                    workload,
                    summaries,
                    anchors,
                    summary => summary.Supply?.ChargePerTask.Budget ?? []
                );
            }
        }
    }

    private static ReportDetails Folded(
        string quantity,
        Workload workload,
        IReadOnlyList<SetupSummary> summaries,
        TrialAnchors anchors,
        Func<SetupSummary, IReadOnlyList<BudgetLine>> budget
    ) =>
        new(
            $"{Phrase.Capital(quantity)}, {workload.Name}",
            [
                new ReportTable(
                    $"Uncertainty of {quantity}, {workload.Name}, largest source first.",
                    [
                        new ReportColumn("setup", false),
                        new ReportColumn("source", false),
                        new ReportColumn("known from", false),
                        new ReportColumn("of the figure", true),
                        new ReportColumn("of the variance", true),
                        new ReportColumn("shrinks with more trials", false),
                    ],
                    summaries.SelectMany(
                        budget,
                        (summary, line) => (IReadOnlyList<ReportCell>)[anchors.Cell(summary), .. Cells(line)]
                    )
                ),
            ]
        );

    private static IEnumerable<ReportCell> Cells(BudgetLine line) =>
        [
            line.Component,
            line.Evaluation == EvaluationType.TypeA ? "scatter (type A)" : "instrument data (type B)",
            Share(line.RelativeStandardUncertainty),
            Share(line.Share),
            line.AveragesDown ? "yes" : "no",
        ];

    private static ReportCell Share(double share) => new(Phrase.Percent(Si.Ratio(share))) { Order = share };
}
