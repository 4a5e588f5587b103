using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>A regulator that burns the difference of the voltages: the input current is the load's and its own.</summary>
/// <remarks>Immutable; quantities are held in SI units; equal when all properties are equal. Safe to use from many
/// threads.</remarks>
public sealed record LinearRegulator : Regulator
{
    /// <summary>Makes a linear regulator.</summary>
    /// <param name="output">The voltage that it gives, above zero.</param>
    /// <param name="quiescent">What it takes for itself at all times, not negative.</param>
    /// <param name="dropout">How far the input must stay above the output, not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    public LinearRegulator(ElectricPotential output, ElectricCurrent quiescent, ElectricPotential dropout)
        : base(output, quiescent) => Dropout = Require.NotNegative(dropout, "Dropout", nameof(dropout));

    /// <summary>How far the input must stay above the output.</summary>
    public ElectricPotential Dropout { get; }

    /// <inheritdoc/>
    public override ElectricPotential LeastInput => Si.Voltage(OutputVolts + Si.Volts(Dropout));

    internal override double EfficiencyLimit => 0;

    internal override double InputAmperes(double load, double volts, double quiescent, double efficiencyFactor) =>
        load + quiescent;

    internal override void RefuseUnknown(double load, string what) { }
}
