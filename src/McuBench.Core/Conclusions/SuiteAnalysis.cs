namespace McuBench.Core.Conclusions;

/// <summary>Puts the comparisons of two setups on several workloads together.</summary>
internal static class SuiteAnalysis
{
    /// <summary>Every pair of setups with two or more workloads in common, by every quantity known on two or more of
    /// them. O(workloads²) a pair.</summary>
    public static IReadOnlyList<SuiteDraft> Of(IReadOnlyList<SetupComparison> comparisons, ConclusionOptions options) =>
        [
            .. comparisons
                .Where(c => !c.Workload.IsEmpty)
                .GroupBy(c => (c.First.Setup.Name, c.Second.Setup.Name))
                .SelectMany(pair =>
                    RankedQuantity.All.Select(quantity => Draft([.. pair], quantity, options)).OfType<SuiteDraft>()
                ),
        ];

    private static SuiteDraft? Draft(
        IReadOnlyList<SetupComparison> ofPair,
        RankedQuantity quantity,
        ConclusionOptions options
    )
    {
        // Of several timers on a workload the one whose ratio is surest.
        SetupComparison[] members =
        [
            .. ofPair
                .Where(c => quantity.ComparedBy(c) is { Ratio.HasInterval: true })
                .GroupBy(c => c.Workload.Name, StringComparer.Ordinal)
                .Select(w =>
                    w.MinBy(c =>
                        quantity.ComparedBy(c)!.Ratio is { StandardUncertainty: { } u, Value: var ratio }
                            ? u / ratio
                            : double.PositiveInfinity
                    )!
                ),
        ];
        if (members.Length < 2)
        {
            return null;
        }

        var mean = Mean(members);
        return new SuiteDraft(
            members,
            mean,
            [
                .. members.Select(left =>
                {
                    var without = Mean([.. members.Where(m => m != left)]);
                    return new SuiteWithout(left.Workload, without, without.Less != mean.Less);
                }),
            ]
        );

        QuantityComparison Mean(IReadOnlyList<SetupComparison> over) =>
            CompareFigures.Of(
                quantity.Quantity,
                UncertainValue.GeometricMean([.. over.Select(m => quantity.ValueOf(m.First)!)]),
                UncertainValue.GeometricMean([.. over.Select(m => quantity.ValueOf(m.Second)!)]),
                over.Sum(m => m.First.Series.Trials.Count + m.Second.Series.Trials.Count),
                options,
                over.Select(m => quantity.ComparedBy(m)!.Reason).FirstOrDefault(r => r is not null)
            );
    }
}

/// <summary>A suite before its family is known.</summary>
internal sealed record SuiteDraft(
    IReadOnlyList<SetupComparison> Members,
    QuantityComparison Mean,
    IReadOnlyList<SuiteWithout> LeftOut
)
{
    public SuiteComparison With(AdjustedClaim claim) => new(Members, Mean, LeftOut, claim.Verdict, claim.Figures);
}
