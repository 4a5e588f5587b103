using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Lists what a study leaves open: pairs that are not told apart, and whatever the review warns of.</summary>
internal static class OpenQuestions
{
    private const int MostPairs = 6;

    public static IReadOnlyList<string> Of(StudyConclusions conclusions)
    {
        var open = new List<string>();
        foreach (var workload in conclusions.Study.Workloads)
        {
            var pairs = conclusions
                .Comparisons.Where(comparison => comparison.Workload == workload)
                .Where(comparison => comparison.RunTime.Verdict is Verdict.NotResolved or Verdict.NoVerdict)
                .Select(Pair)
                .ToArray();
            if (pairs.Length > 0)
            {
                open.Add(
                    $"For the {workload.Name}, run time does not tell apart {Said.Some(pairs, MostPairs, "more pair")}."
                );
            }
        }

        if (conclusions.Options.Margin is null)
        {
            open.Add(
                "No two setups are called equal, since no margin was stated: what difference is too small to matter is for the reader of the figures to say."
            );
        }

        open.AddRange(
            conclusions
                .Review.Findings.Where(finding => finding.Severity != Severity.Note)
                .Select(finding => $"{finding.Subject}: {finding.Evidence} {finding.Advice}")
        );
        return open;
    }

    private static string Pair(SetupComparison comparison)
    {
        var names = $"{comparison.First.Setup.Name} and {comparison.Second.Setup.Name}";
        return comparison.RunTime switch
        {
            { Verdict: Verdict.NoVerdict } found => $"{names} ({ComparisonStatement.Why(found)})",
            { SmallestDetectableDifference: { } smallest } =>
                $"{names} (a difference of {Phrase.Percent(smallest)} would probably have shown)",
            _ => names,
        };
    }
}
