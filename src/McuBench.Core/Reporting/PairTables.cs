using McuBench.Core.Boards;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>A matrix a workload: every setup against every other, by run time.</summary>
internal static class PairTables
{
    /// <summary>A larger matrix is folded away, so that a page of hundreds of setups opens at once.</summary>
    private const int MostInSight = 30;

    private const int MostInWords = 100;

    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions, TrialAnchors anchors)
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
                var matrix = Matrix(conclusions, workload, summaries, anchors);
                yield return summaries.Length <= MostInSight ? matrix : new ReportDetails(matrix.Caption, [matrix]);
                yield return InWords(conclusions, workload, summaries, anchors);
            }
        }
    }

    /// <summary>Every pair in words where they are few; where they are many, each setup against the next slower one.</summary>
    private static ReportDetails InWords(
        StudyConclusions conclusions,
        Workload workload,
        SetupSummary[] summaries,
        TrialAnchors anchors
    )
    {
        var pairs = conclusions.Comparisons.Where(comparison => comparison.Workload == workload).ToArray();
        var what = "every pair";
        if (pairs.Length > MostInWords)
        {
            var index = new PairIndex(conclusions, workload);
            var ranked = summaries.OrderBy(summary => MeasuredText.Number(summary.RunTime.Value)).ToArray();
            pairs = [.. ranked.Zip(ranked.Skip(1), index.Find).OfType<SetupComparison>()];
            what = "each setup against the next slower one";
        }

        return new ReportDetails(
            $"In words: {what}, {workload.Name}",
            [new ReportList(pairs.Select(pair => anchors.Item(pair, ComparisonStatement.Of(pair))))]
        );
    }

    private static ReportTable Matrix(
        StudyConclusions conclusions,
        Workload workload,
        SetupSummary[] summaries,
        TrialAnchors anchors
    )
    {
        var index = new PairIndex(conclusions, workload);
        return new ReportTable(
            $"Ratio of run times, {workload.Name}.",
            summaries
                .Select((_, i) => new ReportColumn(Phrase.Number(i + 1), true))
                .Prepend(new ReportColumn("setup", false)),
            summaries.Select<SetupSummary, IReadOnlyList<ReportCell>>(
                (row, i) =>
                    [
                        new ReportCell($"{Phrase.Number(i + 1)}. {row.Setup.Name}")
                        {
                            Order = i + 1,
                            Target = anchors.Of(row),
                        },
                        .. summaries.Select(column =>
                            ReferenceEquals(row, column) ? new ReportCell("") : Cell(index, row, column)
                        ),
                    ]
            )
        );
    }

    private static ReportCell Cell(PairIndex index, SetupSummary row, SetupSummary column)
    {
        if (index.Find(row, column) is not { } comparison)
        {
            return new ReportCell("–");
        }

        var ratio = ReferenceEquals(comparison.First, row) ? comparison.RunTime.Ratio : comparison.SpeedRatio;
        var shown = Phrase.ValueCell(ratio);
        return comparison.RunTime.Verdict switch
        {
            Verdict.NoVerdict => new ReportCell("–"),
            Verdict.NotResolved => shown with { Text = $"({shown.Text})" },
            _ => shown,
        };
    }
}
