using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>What the intervals of run times are made of, and what would narrow them.</summary>
internal static class ImprovementTables
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions)
    {
        var known = conclusions.Summaries.Where(s => s.RunTime.HasInterval).ToArray();
        if (known.Length == 0)
        {
            yield break;
        }

        yield return new ReportHeading(3, "What would narrow them");
        yield return new ReportTable(
            "Run times: the largest part of each interval, and the width after a change as a share of the width now.",
            [
                new ReportColumn("workload", false),
                new ReportColumn("setup", false),
                new ReportColumn("largest part", false),
                new ReportColumn("4 times the trials", true),
                new ReportColumn("a better instrument", false),
            ],
            known.Select<SetupSummary, IReadOnlyList<ReportCell>>(s =>
                [
                    s.Workload.Name,
                    s.Setup.Name,
                    $"{s.RunTime.Budget[0].Component} ({Said.Percent(s.RunTime.Budget[0].Share)} of the variance)",
                    Said.Number(s.RunTime.Improvements.First(i => i.Kind == BudgetKind.Scatter).WidthFactor, 2),
                    s.RunTime.Improvements.FirstOrDefault(i => i.Kind != BudgetKind.Scatter) is { Pays: true } better
                        ? $"{Said.Number(better.WidthFactor, 2)} ({better.Change.TrimEnd(',')})"
                        : "none would pay",
                ]
            )
        );
    }
}
