using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>What one execution of the workload took: the charge and energy of one active phase.</summary>
/// <remarks>Immutable; quantities are held in SI units; equal when all properties are equal. Safe to use from many
/// threads.</remarks>
public sealed record TaskCharge
{
    internal TaskCharge() { }

    /// <summary>The phase that it is.</summary>
    public required TracePhase Phase { get; init; }

    /// <summary>The mean current of the idle phases directly before and after, weighted by their lengths; absent where
    /// there is neither.</summary>
    public required ElectricCurrent? Baseline { get; init; }

    /// <summary>The charge, the whole board's.</summary>
    public ElectricCharge Gross => Phase.Charge;

    /// <summary>The charge less the baseline over the length of the phase; absent without a baseline.</summary>
    public required ElectricCharge? Net { get; init; }

    /// <summary>The energy, the whole board's; absent without voltages.</summary>
    public Energy? GrossEnergy => Phase.Energy;

    /// <summary>The energy less the idle phases' mean power over the length of the phase; absent without both.</summary>
    public required Energy? NetEnergy { get; init; }
}
