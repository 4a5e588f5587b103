namespace McuBench.Core.Conclusions;

/// <summary>What is wrong or weak in comparisons and in splits by clock.</summary>
internal static class ComparisonReview
{
    public static IEnumerable<Finding> OfOrder(
        string workload,
        IReadOnlyList<SetupComparison> comparisons,
        IReadOnlySet<string> drifting
    )
    {
        var relations = comparisons
            .Select(c => (Pair: c, Relation: TrialFacts.Relation(c.First.Workings.Facts, c.Second.Workings.Facts)))
            .ToList();
        var apart = PairsIn(OrderRelation.SessionsApart);
        var before = PairsIn(OrderRelation.OneBeforeTheOther, OrderRelation.OneMostlyBeforeTheOther);
        if (before.Count > 0)
        {
            var whole = PairsIn(OrderRelation.OneBeforeTheOther).Count;
            var drifted = before.Where(Drifts).Select(NameOf).ToList();
            yield return new Finding(
                FindingKind.OrderConfounded,
                Severity.Fault,
                workload,
                $"In {before.Count} of {Said.Count(comparisons.Count, "pair")} of setups {(whole == before.Count ? "all" : "most or all")} trials of one came before those of the other, so a drift of the bench would look like a difference: no verdict. "
                    + (
                        drifted.Count > 0
                            ? $"Run times did drift in {Said.List(drifted)}."
                            : "No drift shows in their trials; one too slow to show can't be excluded."
                    ),
                "Run setups in random order or in turns.",
                [
                    new("pairs in one order", before.Count),
                    new("pairs", comparisons.Count),
                    new("pairs with a drift", drifted.Count),
                ],
                []
            );
        }

        if (apart.Count > 0)
        {
            yield return new Finding(
                FindingKind.SessionsConfounded,
                Severity.Fault,
                workload,
                $"In {apart.Count} of {Said.Count(comparisons.Count, "pair")} of setups no session holds trials of both, so what changes from session to session would look like a difference: no verdict.",
                "Run all setups in every session.",
                [new("pairs in sessions of their own", apart.Count), new("pairs", comparisons.Count)],
                []
            );
        }

        List<SetupComparison> PairsIn(params OrderRelation[] wanted) =>
            [.. relations.Where(r => wanted.Contains(r.Relation)).Select(r => r.Pair)];

        bool Drifts(SetupComparison pair) =>
            drifting.Contains(RunTimeFigures.KeyOf(pair.First.Series))
            || drifting.Contains(RunTimeFigures.KeyOf(pair.Second.Series));

        static string NameOf(SetupComparison pair) => $"{pair.First.Setup.Name} and {pair.Second.Setup.Name}";
    }

    public static IEnumerable<Finding> OfSplit(ClockSplit split)
    {
        var subject = $"{split.Name}, {split.Workload.Name}";
        if (split.LackOfFit is { IsRefuted: true } test)
        {
            yield return new Finding(
                FindingKind.ClockLineRefuted,
                Severity.Caution,
                subject,
                $"Run times at {split.Points.Count} clocks don't lie on a line in 1/f: mean squared residual {Said.Number(test.Statistic)} times what scatter and step make, {Said.PValue(test.PValue)}.",
                "Look for wait states, caches or bus clocks that change with the clock; compare at the clocks that were run.",
                [new("mean squared residual over expected", test.Statistic), new("p", test.PValue)],
                []
            );
        }

        if (split.FixedPart == FixedPart.Negative)
        {
            yield return new Finding(
                FindingKind.NegativeFixedTime,
                Severity.Caution,
                subject,
                $"The time that doesn't follow the clock comes out at {Said.Seconds(Quantities.Si.Seconds(split.FixedTime.Value))}, below zero by more than its uncertainty.",
                "Look for periodic interrupts, a biased timer, or a timer that follows the clock.",
                [new("fixed time", Quantities.Si.Seconds(split.FixedTime.Value), "s")],
                []
            );
        }
    }
}
