namespace McuBench.Core.Conclusions;

/// <summary>A quantity that setups are ranked by: where a summary and a comparison hold it.</summary>
internal sealed record RankedQuantity(
    ComparedQuantity Quantity,
    Func<SetupSummary, UncertainValue?> ValueOf,
    Func<SetupComparison, QuantityComparison?> ComparedBy
)
{
    public static IReadOnlyList<RankedQuantity> All { get; } =
    [
        new(ComparedQuantity.RunTime, s => s.Workings.RunTime, c => c.RunTime),
        new(
            ComparedQuantity.CyclesPerItem,
            s => s.Workings.CyclesPerItem(s.Workload.WorkItemsPerRun),
            c => c.CyclesPerItem
        ),
        new(ComparedQuantity.ChargePerTask, s => s.Workings.Charge, c => c.ChargePerTask),
        new(ComparedQuantity.EnergyPerTask, s => s.Workings.Energy, c => c.EnergyPerTask),
    ];
}
