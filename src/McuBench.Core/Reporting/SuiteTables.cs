using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>What holds over several workloads, where setups share them.</summary>
internal static class SuiteTables
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions)
    {
        var suites = conclusions.Suites.Where(s => s.Mean.Quantity == ComparedQuantity.RunTime).ToArray();
        if (suites.Length == 0)
        {
            yield break;
        }

        yield return new ReportHeading(2, "Over several workloads");
        yield return new ReportParagraph(
            "Geometric means of the ratios of run times, each workload with the same weight. They hold for these workloads; another choice would give other means."
        );
        yield return new ReportTable(
            "Setups over all workloads that both executed.",
            [
                new ReportColumn("setups", false),
                new ReportColumn("workloads", true),
                new ReportColumn("mean ratio", true),
                new ReportColumn("takes less", false),
                new ReportColumn("verdict hangs on", false),
            ],
            suites.Select<SuiteComparison, IReadOnlyList<ReportCell>>(s =>
                [
                    $"{s.First.Name} to {s.Second.Name}",
                    Phrase.Number(s.Members.Count),
                    Phrase.Cell(s.Mean.Ratio),
                    Less(s),
                    string.Join(", ", s.Deciding.Select(w => w.Name)),
                ]
            )
        );
    }

    private static string Less(SuiteComparison suite) =>
        suite.AdjustedVerdict switch
        {
            Verdict.Different or Verdict.DifferentWithinMargin => suite.Mean.Ratio.Value < 1
                ? suite.First.Name
                : suite.Second.Name,
            Verdict.EqualWithinMargin => "equal within the margin",
            Verdict.NotResolved => "not told apart",
            _ => "no verdict",
        };
}
