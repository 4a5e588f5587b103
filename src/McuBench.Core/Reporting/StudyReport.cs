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
                .. Answers(conclusions),
                .. Reversals(conclusions, level: 2),
                .. SummaryTables.Narrow(conclusions),
                .. Open(conclusions),
            ]
        );
    }

    /// <summary>Composes the full report. O(n) in the comparisons and trials.</summary>
    /// <param name="conclusions">What to report.</param>
    /// <param name="figures">Pictures drawn from the same conclusions; they stand behind the tables.</param>
    public static Report Full(StudyConclusions conclusions, IEnumerable<ReportFigure> figures)
    {
        ArgumentNullException.ThrowIfNull(conclusions);
        ArgumentNullException.ThrowIfNull(figures);
        return new Report(
            conclusions.Study.Title,
            [
                .. Opening(conclusions),
                .. Answers(conclusions),
                .. Open(conclusions),
                .. SummaryTables.Wide(conclusions),
                .. RankingTables.Of(conclusions),
                .. Pictures(figures),
                .. Clocks(conclusions),
                .. PairTables.Of(conclusions),
                .. Findings(conclusions),
                .. MethodSection.Of(conclusions),
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

    private static IEnumerable<ReportBlock> Answers(StudyConclusions conclusions)
    {
        yield return new ReportHeading(2, "In short");
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

    private static IEnumerable<ReportBlock> Open(StudyConclusions conclusions)
    {
        yield return new ReportHeading(2, "What can't be said from this data");
        yield return new ReportList(OpenQuestions.Of(conclusions));
    }

    private static IEnumerable<ReportBlock> Pictures(IEnumerable<ReportFigure> figures)
    {
        var all = figures.ToArray();
        if (all.Length > 0)
        {
            yield return new ReportHeading(2, "Pictures");
        }

        foreach (var figure in all)
        {
            yield return figure;
        }
    }

    private static IEnumerable<ReportBlock> Clocks(StudyConclusions conclusions)
    {
        if (conclusions.Splits.Count > 0)
        {
            yield return new ReportHeading(2, "What follows the clock");
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
                new ReportColumn("weight", false),
                new ReportColumn("about", false),
                new ReportColumn("evidence", false),
                new ReportColumn("what to do", false),
                new ReportColumn("trials", false),
            ],
            conclusions.Review.Findings.Select<Finding, IReadOnlyList<string>>(finding =>
                [
                    Phrase.Word(finding.Severity),
                    finding.Subject,
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
