using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Current, charge and energy per task with a baseline subtracted. Both readings' uncertainties are in the
/// intervals; the gain of a meter that read both in one range acts on the difference alone.</summary>
/// <remarks>A net figure may come out near or below zero; its interval then says how little is known.
/// Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record NetSupply
{
    internal NetSupply(
        BaselineKind kind,
        string baseline,
        Measured<ElectricCurrent> baselineCurrent,
        Measured<Ratio> baselineShare,
        Measured<ElectricCurrent> current,
        Measured<ElectricCharge> chargePerTask,
        Measured<Energy>? energyPerTask
    )
    {
        Kind = kind;
        Baseline = baseline;
        BaselineCurrent = baselineCurrent;
        BaselineShare = baselineShare;
        Current = current;
        ChargePerTask = chargePerTask;
        EnergyPerTask = energyPerTask;
    }

    /// <summary>What was subtracted.</summary>
    public BaselineKind Kind { get; }

    /// <summary>What was subtracted, in words: "idle current of the same setup", "display alone".</summary>
    public string Baseline { get; }

    /// <summary>The current that was subtracted, in amperes.</summary>
    public Measured<ElectricCurrent> BaselineCurrent { get; }

    /// <summary>The baseline's share of the gross current over a run, and so of the charge per task: what the display
    /// costs, where the display was read alone. The gain of a meter that read both in one range cancels.</summary>
    public Measured<Ratio> BaselineShare { get; }

    /// <summary>Mean current over a run less the baseline's, in amperes.</summary>
    public Measured<ElectricCurrent> Current { get; }

    /// <summary>Charge per task less the baseline's over the same time, in coulombs.</summary>
    public Measured<ElectricCharge> ChargePerTask { get; }

    /// <summary>Energy per task less the baseline's at the same voltage, in joules; absent where no voltage is known.</summary>
    public Measured<Energy>? EnergyPerTask { get; }
}
