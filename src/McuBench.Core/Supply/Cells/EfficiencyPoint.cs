using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>One point of a switching regulator's table: how much of the power comes out at a load.</summary>
/// <remarks>Immutable; quantities are held in SI units; equal when all properties are equal. Safe to use from many
/// threads.</remarks>
public sealed record EfficiencyPoint
{
    /// <summary>Makes a point.</summary>
    /// <param name="load">The current at the output, above zero.</param>
    /// <param name="efficiency">Power out over power in, above 0 % and at most 100 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    public EfficiencyPoint(ElectricCurrent load, Ratio efficiency)
    {
        Load = Require.Positive(load, "Load", nameof(load));
        Efficiency = Require.Part(efficiency, "Efficiency", nameof(efficiency));
    }

    /// <summary>The current at the output.</summary>
    public ElectricCurrent Load { get; }

    /// <summary>Power out over power in.</summary>
    public Ratio Efficiency { get; }
}
