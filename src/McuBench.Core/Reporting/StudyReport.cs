using McuBench.Core.Conclusions;
using McuBench.Core.Trials;

namespace McuBench.Core.Reporting;

/// <summary>Composes reports of a whole study: the short one for a terminal, and the full one with tables and pictures.</summary>
/// <remarks>Both are text from conclusions: nothing is computed here that the conclusions don't hold.</remarks>
public static class StudyReport
{
    /// <summary>Composes the short report: which board is faster and by how much, per clock, per charge, and what can't
    /// be said from this data. O(n) in the comparisons.</summary>
    /// <param name="conclusions">What to report.</param>
    public static Report Brief(StudyConclusions conclusions)
    {
        ArgumentNullException.ThrowIfNull(conclusions);
        return new Report(
            conclusions.Study.Title,
            [
                .. Opening(conclusions),
                .. Answers(conclusions, "In short"),
                .. Reversals(conclusions, level: 2),
                .. SummaryTables.Narrow(conclusions),
                .. Open(conclusions),
            ]
        );
    }

    /// <summary>Composes the full report, with every trial and the study itself in it. O(n) in the comparisons and
    /// trials.</summary>
    /// <param name="conclusions">What to report.</param>
    /// <param name="figures">Pictures drawn from the same conclusions; they stand in the order of their workloads.</param>
    public static Report Full(StudyConclusions conclusions, IEnumerable<ReportFigure> figures)
    {
        ArgumentNullException.ThrowIfNull(conclusions);
        ArgumentNullException.ThrowIfNull(figures);
        var anchors = new TrialAnchors(conclusions);
        return new Report(
            conclusions.Study.Title,
            [
                .. Opening(conclusions),
                .. InShort(conclusions, anchors),
                .. Open(conclusions),
                .. Pictures(conclusions, [.. figures.Select(anchors.Linked)]),
                .. SummaryTables.Wide(conclusions, anchors),
                .. Answers(conclusions, "The answers in full"),
                .. Attached(conclusions, anchors),
                .. RankingTables.Of(conclusions, anchors),
                .. Clocks(conclusions),
                .. PairTables.Of(conclusions, anchors),
                .. SuiteTables.Of(conclusions),
                .. BudgetTables.Of(conclusions, anchors),
                .. ImprovementTables.Of(conclusions),
                .. Findings(conclusions),
                .. MethodSection.Of(conclusions),
                .. TrialSections.Of(conclusions, anchors),
                new ReportHeading(2, "The study itself"),
                new ReportParagraph(
                    "The whole study as a file, every trial and reading in it, from which this report can be made again."
                ),
                EnclosedStudy.Of(conclusions.Study),
            ]
        );
    }

    private static IEnumerable<ReportBlock> Opening(StudyConclusions conclusions)
    {
        if (conclusions.Study.IsInvented)
        {
            yield return new ReportParagraph("The data of this study are invented, to show what a report looks like.");
        }

        if (conclusions.Study.Description is { } description)
        {
            yield return new ReportParagraph(description);
        }
    }

    private static IEnumerable<ReportBlock> InShort(StudyConclusions conclusions, TrialAnchors anchors)
    {
        yield return new ReportHeading(2, "In short");
        Headlines[] all =
        [
            .. conclusions
                .Study.Workloads.Select(workload => new Headlines(conclusions, workload, anchors))
                .Where(headlines => !headlines.IsEmpty),
        ];
        if (all.Length == 0)
        {
            yield return new ReportParagraph("No trial counts as a result, so nothing can be said.");
            yield break;
        }

        yield return new ReportTable(
            $"At a glance. Whole boards as measured, all that hangs on them included; shares are of the charge per task.",
            [
                new ReportColumn("workload", false),
                new ReportColumn("fastest", false),
                new ReportColumn("least charge per task", false),
                new ReportColumn("taken by attachments", false),
                new ReportColumn("pairs without a resolved difference in run time", true),
            ],
            all.Select(headlines => headlines.Glance())
        );
        foreach (var headlines in all)
        {
            yield return new ReportHeading(3, Phrase.Capital(headlines.Workload.Name));
            yield return new ReportList(headlines.Items());
        }
    }

    private static IEnumerable<ReportBlock> Answers(StudyConclusions conclusions, string heading)
    {
        yield return new ReportHeading(2, heading);
        foreach (var workload in conclusions.Study.Workloads)
        {
            var answers = WorkloadAnswer.Of(conclusions, workload);
            if (answers.Count > 0)
            {
                yield return new ReportHeading(3, Phrase.Capital(workload.Name));
                yield return new ReportList(answers);
            }
        }
    }

    private static IEnumerable<ReportBlock> Attached(StudyConclusions conclusions, TrialAnchors anchors)
    {
        ReportItem[] said =
        [
            .. from summary in conclusions.Summaries
            from net in summary.Supply?.Net ?? []
            where net.Kind == BaselineKind.Attachment
            select new ReportItem(SupplyStatement.Net(summary, net)) { Links = anchors.Links(summary) },
        ];
        if (said.Length > 0)
        {
            yield return new ReportHeading(3, "What attachments cost");
            yield return new ReportDetails("In words: each setup less what was read alone", [new ReportList(said)]);
        }
    }

    private static IEnumerable<ReportBlock> Open(StudyConclusions conclusions)
    {
        yield return new ReportHeading(2, "What can't be said from this data");
        yield return new ReportList(OpenQuestions.Of(conclusions));
    }

    private static IEnumerable<ReportBlock> Pictures(StudyConclusions conclusions, ReportFigure[] figures)
    {
        if (figures.Length > 0)
        {
            yield return new ReportHeading(2, "Pictures");
        }

        foreach (var workload in conclusions.Study.Workloads)
        {
            var its = figures.Where(figure => figure.Workload == workload.Name).ToArray();
            if (its.Length > 0)
            {
                yield return new ReportHeading(3, Phrase.Capital(workload.Name));
            }

            foreach (var figure in its)
            {
                yield return figure;
            }
        }

        // Those of no workload, or of one that the study doesn't hold.
        foreach (var figure in figures.Where(f => conclusions.Study.Workloads.All(w => w.Name != f.Workload)))
        {
            yield return figure;
        }
    }

    private static IEnumerable<ReportBlock> Clocks(StudyConclusions conclusions)
    {
        if (conclusions.Splits.Count + conclusions.Currents.Count > 0)
        {
            yield return new ReportHeading(2, "What follows the clock");
        }

        if (conclusions.Splits.Count > 0)
        {
            yield return new ReportList(conclusions.Splits.Select(ClockStatement.Of));
        }

        foreach (var block in Reversals(conclusions, level: 3))
        {
            yield return block;
        }

        if (conclusions.Currents.Count > 0)
        {
            yield return new ReportHeading(3, "Current against clock");
            yield return new ReportList(conclusions.Currents.Select(ClockStatement.Of));
        }

        if (conclusions.BestClocks.Count > 0)
        {
            yield return new ReportHeading(3, "The clock of least charge");
            yield return new ReportList(conclusions.BestClocks.Select(ClockStatement.Of));
        }
    }

    private static IEnumerable<ReportBlock> Reversals(StudyConclusions conclusions, int level)
    {
        var reversed = conclusions
            .ScaledComparisons.SelectMany(comparison => comparison.Pairs)
            .Where(pair => pair.IsOrderReversed)
            .Select(ClockStatement.Of)
            .ToArray();
        if (reversed.Length > 0)
        {
            yield return new ReportHeading(level, "Where the order reverses once fixed time is taken out");
            yield return new ReportList(reversed);
        }
    }

    private static IEnumerable<ReportBlock> Findings(StudyConclusions conclusions)
    {
        yield return new ReportHeading(2, "Review of the data");
        if (conclusions.Review.Findings.Count == 0)
        {
            yield return new ReportParagraph("The review found nothing amiss.");
            yield break;
        }

        yield return new ReportTable(
            "What the review found. Nothing was dropped or corrected because of it.",
            [
                new ReportColumn("about", false),
                new ReportColumn("weight", false),
                new ReportColumn("evidence", false),
                new ReportColumn("what to do", false),
                new ReportColumn("trials", false),
            ],
            conclusions.Review.Findings.Select<Finding, IReadOnlyList<ReportCell>>(finding =>
                [
                    finding.Subject,
                    Phrase.Word(finding.Severity),
                    finding.Evidence,
                    finding.Advice,
                    Named(finding.Trials),
                ]
            )
        );
    }

    private static string Named(IReadOnlyList<Trial> trials) =>
        trials.Count == 0 ? "" : string.Join(", ", trials.Select(Phrase.Name));
}
