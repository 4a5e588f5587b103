using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>A stretch of a trace in which the board worked, or didn't, throughout.</summary>
/// <remarks>Charge and energy are gross: the whole board's. Immutable; quantities are held in SI units; equal when all
/// properties are equal. Safe to use from many threads.</remarks>
public sealed record TracePhase
{
    internal TracePhase(bool isActive, double start, double length, long samples, double charge, double? energy)
    {
        IsActive = isActive;
        Start = Si.Duration(start);
        Length = Si.Duration(length);
        Samples = samples;
        Charge = Si.Charge(charge);
        Energy = energy is { } joules ? Si.Energy(joules) : null;
    }

    /// <summary>Whether the marker was high, or the current above its threshold.</summary>
    public bool IsActive { get; }

    /// <summary>When it begins: in the trace's own time, or from the first sample on where samples come at equal steps.</summary>
    public Duration Start { get; }

    /// <summary>How long it lasts.</summary>
    public Duration Length { get; }

    /// <summary>How many samples it has.</summary>
    public long Samples { get; }

    /// <summary>The charge.</summary>
    public ElectricCharge Charge { get; }

    /// <summary>The energy; absent without voltages.</summary>
    public Energy? Energy { get; }

    /// <summary>The charge over the length; absent for a length of zero.</summary>
    public ElectricCurrent? MeanCurrent =>
        Length.Seconds > 0 ? Si.Current(Si.Coulombs(Charge) / Si.Seconds(Length)) : null;
}
