using McuBench.Core.Boards;

namespace McuBench.Core.Conclusions;

/// <summary>A ranking before its family is known: the setups in order, and the pairs to be compared.</summary>
internal sealed record RankingDraft(
    Workload Workload,
    ComparedQuantity Quantity,
    IReadOnlyList<SetupSummary> Placed,
    IReadOnlyList<UncertainValue> Values,
    IReadOnlyList<SetupSummary> Unplaced,
    IReadOnlyList<(SetupComparison Comparison, QuantityComparison Compared)> Pairs,
    IReadOnlyList<string> Notes
)
{
    /// <summary>The setups of a workload with a figure of that quantity, or null where fewer than two have one.</summary>
    public static RankingDraft? Of(
        IReadOnlyList<SetupSummary> summaries,
        IReadOnlyList<SetupComparison> comparisons,
        RankedQuantity quantity
    )
    {
        var notes = new List<string>();
        var chosen = summaries
            .Select(s => new Figure(s, quantity.ValueOf(s)))
            .Where(f => f.Value is { Value: > 0 })
            .GroupBy(f => f.Summary.Setup.Name, StringComparer.Ordinal)
            .Select(g => Surest([.. g], notes))
            .ToArray();
        if (chosen.Length < 2)
        {
            return null;
        }

        var placed = chosen.Where(f => f.HasInterval).OrderBy(f => f.Value!.Value).ToArray();
        var keys = placed.Select(f => RunTimeFigures.KeyOf(f.Summary.Series)).ToHashSet(StringComparer.Ordinal);
        return new RankingDraft(
            summaries[0].Workload,
            quantity.Quantity,
            [.. placed.Select(f => f.Summary)],
            [.. placed.Select(f => f.Value!)],
            [.. chosen.Where(f => !f.HasInterval).Select(f => f.Summary)],
            [
                .. comparisons
                    .Where(c =>
                        keys.Contains(RunTimeFigures.KeyOf(c.First.Series))
                        && keys.Contains(RunTimeFigures.KeyOf(c.Second.Series))
                    )
                    .Select(c => (c, quantity.ComparedBy(c)))
                    .Where(pair => pair.Item2 is not null)
                    .Select(pair => (pair.c, pair.Item2!)),
            ],
            notes
        );
    }

    /// <summary>A setup that was timed with several timers takes its place once, with the figure that is surest.</summary>
    private static Figure Surest(IReadOnlyList<Figure> ofSetup, List<string> notes)
    {
        if (ofSetup is [var only])
        {
            return only;
        }

        var best = ofSetup
            .OrderByDescending(f => f.HasInterval)
            .ThenBy(f => f.Value!.StandardUncertainty / f.Value.Value)
            .First();
        notes.Add(
            $"{best.Summary.Setup.Name} was timed with {ofSetup.Count} timers; it is ranked by \"{best.Summary.Series.Timer.Name}\", whose interval is narrowest."
        );
        return best;
    }

    private sealed record Figure(SetupSummary Summary, UncertainValue? Value)
    {
        public bool HasInterval => Value is { Missing: null, StandardUncertainty: > 0 };
    }
}
