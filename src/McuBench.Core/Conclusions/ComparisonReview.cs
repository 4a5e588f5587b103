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
        var confounded = comparisons
            .Where(c => TrialFacts.IsOrderConfounded(c.First.Workings.Facts, c.Second.Workings.Facts))
            .ToList();
        if (confounded.Count == 0)
        {
            yield break;
        }

        var withheld = confounded
            .Where(c =>
                drifting.Contains(RunTimeFigures.KeyOf(c.First.Series))
                || drifting.Contains(RunTimeFigures.KeyOf(c.Second.Series))
            )
            .Select(c => $"{c.First.Setup.Name} and {c.Second.Setup.Name}")
            .ToList();
        yield return new Finding(
            FindingKind.OrderConfounded,
            withheld.Count > 0 ? Severity.Fault : Severity.Caution,
            workload,
            $"In {confounded.Count} of {Said.Count(comparisons.Count, "pair")} of setups all trials of one came before all of the other, so a drift of the bench would look like a difference."
                + (
                    withheld.Count > 0
                        ? $" Run times drifted in {Said.List(withheld)}: no verdict."
                        : " No drift shows in their trials; one too slow to show can't be excluded."
                ),
            "Run setups in random order or in turns.",
            [
                new("pairs in one order", confounded.Count),
                new("pairs", comparisons.Count),
                new("verdicts withheld", withheld.Count),
            ],
            []
        );
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
