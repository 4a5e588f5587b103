using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>Answers the practitioner's questions for one workload: which setup is fastest, which does most per clock,
/// which costs least charge and energy, each with those that it can't be told from among all comparisons of the
/// study.</summary>
internal static class WorkloadAnswer
{
    private const int MostNames = 8;

    public static IReadOnlyList<string> Of(StudyConclusions conclusions, Workload workload)
    {
        var summaries = conclusions.Summaries.Where(summary => summary.Workload == workload).ToArray();
        if (summaries.Length == 0)
        {
            return [];
        }

        var index = new PairIndex(conclusions, workload);
        var apart = conclusions
            .Rankings.Where(ranking => ranking.Workload == workload)
            .SelectMany(ranking => ranking.Pairs)
            .Where(pair => pair.IsToldApart)
            .Select(pair => pair.Unadjusted)
            .ToHashSet<QuantityComparison>(ReferenceEqualityComparer.Instance);
        string?[] answers =
        [
            Least("Fastest", summaries, index, apart, s => s.RunTime, c => c.RunTime),
            Least("Most work per clock cycle", summaries, index, apart, s => s.CyclesPerItem, c => c.CyclesPerItem),
            Least("Least charge per task", summaries, index, apart, s => s.Supply?.ChargePerTask, c => c.ChargePerTask),
            Least("Least energy per task", summaries, index, apart, s => s.Supply?.EnergyPerTask, c => c.EnergyPerTask),
            Equal(conclusions, workload),
        ];
        return [.. answers.OfType<string>()];
    }

    private static string? Least<T>(
        string label,
        IReadOnlyList<SetupSummary> summaries,
        PairIndex index,
        HashSet<QuantityComparison> apart,
        Func<SetupSummary, Measured<T>?> result,
        Func<SetupComparison, QuantityComparison?> quantity
    )
        where T : struct, IComparable<T>
    {
        var ranked = summaries
            .Select(summary => (Summary: summary, Result: result(summary)))
            .Where(pair => pair.Result is not null)
            .OrderBy(pair => pair.Result!.Value)
            .ToArray();
        if (ranked.Length == 0)
        {
            return null;
        }

        var best = ranked[0];
        var said = $"{label}: {best.Summary.Setup.Name}, {Phrase.ValueAndInterval(best.Result!)}.";
        var others = ranked
            .Skip(1)
            .Select(pair => (pair.Summary, Comparison: index.Find(best.Summary, pair.Summary)))
            .Where(pair => pair.Comparison is not null)
            .ToArray();
        var open = others.Where(pair => !IsBeaten(quantity(pair.Comparison!))).ToArray();
        if (open.Length > 0)
        {
            said +=
                $" This data does not show it to be ahead of {Said.Some([.. open.Select(pair => pair.Summary.Setup.Name)], MostNames, "other")}.";
        }

        var next = others.FirstOrDefault(pair => IsBeaten(quantity(pair.Comparison!)));
        return next.Comparison is { } comparison
            ? $"{said} {ComparisonStatement.OfQuantity(comparison, quantity(comparison)!)}"
            : said;

        bool IsBeaten(QuantityComparison? compared) => compared is not null && apart.Contains(compared);
    }

    /// <summary>The pairs that are equal within the margin, which only a stated margin can make them.</summary>
    private static string? Equal(StudyConclusions conclusions, Workload workload)
    {
        var pairs = conclusions
            .Rankings.Where(ranking => ranking.Workload == workload && ranking.Quantity == ComparedQuantity.RunTime)
            .SelectMany(ranking => ranking.Pairs)
            .Where(pair => pair.Verdict == Verdict.EqualWithinMargin)
            .Select(pair => $"{pair.Comparison.First.Setup.Name} to {pair.Comparison.Second.Setup.Name}")
            .ToArray();
        return pairs.Length == 0
            ? null
            : $"Equal in run time within the stated margin of {Phrase.Percent(conclusions.Options.Margin!.Value)}: {Said.List(pairs)}.";
    }
}
