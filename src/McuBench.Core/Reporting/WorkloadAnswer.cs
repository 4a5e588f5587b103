using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>Answers the practitioner's questions for one workload: which setup is fastest, which does most per clock,
/// which costs least charge and energy, each with those that it can't be told from.</summary>
internal static class WorkloadAnswer
{
    public static IReadOnlyList<string> Of(StudyConclusions conclusions, Workload workload)
    {
        var summaries = conclusions.Summaries.Where(summary => summary.Workload == workload).ToArray();
        if (summaries.Length == 0)
        {
            return [];
        }

        var index = new PairIndex(conclusions, workload);
        string?[] answers =
        [
            Least("Fastest", summaries, index, s => s.RunTime, c => c.RunTime),
            Least("Most work per clock cycle", summaries, index, s => s.CyclesPerItem, c => c.CyclesPerItem),
            Least("Least charge per task", summaries, index, s => s.Supply?.ChargePerTask, c => c.ChargePerTask),
            Least("Least energy per task", summaries, index, s => s.Supply?.EnergyPerTask, c => c.EnergyPerTask),
            Equal(conclusions, workload),
        ];
        return [.. answers.OfType<string>()];
    }

    private static string? Least<T>(
        string label,
        IReadOnlyList<SetupSummary> summaries,
        PairIndex index,
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
                $" This data does not show it to be ahead of {Said.List(open.Select(pair => pair.Summary.Setup.Name))}.";
        }

        var next = others.FirstOrDefault(pair => IsBeaten(quantity(pair.Comparison!)));
        return next.Comparison is { } comparison
            ? $"{said} {ComparisonStatement.OfQuantity(comparison, quantity(comparison)!)}"
            : said;
    }

    private static bool IsBeaten(QuantityComparison? quantity) =>
        quantity?.Verdict is Verdict.Different or Verdict.DifferentWithinMargin;

    /// <summary>The pairs that are equal within the margin, which only a stated margin can make them.</summary>
    private static string? Equal(StudyConclusions conclusions, Workload workload)
    {
        var pairs = conclusions
            .Comparisons.Where(comparison => comparison.Workload == workload)
            .Where(comparison => comparison.RunTime.Verdict == Verdict.EqualWithinMargin)
            .Select(comparison => $"{comparison.First.Setup.Name} to {comparison.Second.Setup.Name}")
            .ToArray();
        return pairs.Length == 0
            ? null
            : $"Equal in run time within the stated margin of {Phrase.Percent(conclusions.Options.Margin!.Value)}: {Said.List(pairs)}.";
    }
}
