using McuBench.Core.Conclusions;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>What a trace comes to: charge, mean current, energy where there was a voltage, and what to judge them by.</summary>
/// <remarks>
/// All of it is gross: the whole board's. Across gaps a straight line is taken, and what the current could have been
/// meanwhile, from the least to the greatest of the trace, stands in the budget. Immutable; equal when all properties are
/// equal. Safe to use from many threads.
/// </remarks>
public sealed record TraceTotals
{
    internal TraceTotals() { }

    /// <summary>How many samples are there.</summary>
    public required long Samples { get; init; }

    /// <summary>How many samples are missing: not a number, or in rows that were left out.</summary>
    public required long Missing { get; init; }

    /// <summary>How many samples the meter clipped.</summary>
    public required long Clipped { get; init; }

    /// <summary>How many gaps there are.</summary>
    public required long Gaps { get; init; }

    /// <summary>The time from the first sample to the last.</summary>
    public required Duration Time { get; init; }

    /// <summary>The part of that time that lies in gaps.</summary>
    public required Duration InGaps { get; init; }

    /// <summary>The least current.</summary>
    public required ElectricCurrent Least { get; init; }

    /// <summary>The greatest current.</summary>
    public required ElectricCurrent Greatest { get; init; }

    /// <summary>The charge, by the trapezoidal rule.</summary>
    public required Measured<ElectricCharge> Charge { get; init; }

    /// <summary>The charge where each sample holds until the next: an integrating meter's own rule.</summary>
    public required ElectricCharge ChargeHeld { get; init; }

    /// <summary>The charge divided by the time; absent for one sample.</summary>
    public required Measured<ElectricCurrent>? MeanCurrent { get; init; }

    /// <summary>The energy, of the product of current and voltage by the trapezoidal rule; absent without a voltage.</summary>
    public required Measured<Energy>? Energy { get; init; }
}
