using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>What stands between the cell and the board: a <see cref="LinearRegulator"/> or a <see
/// cref="SwitchingRegulator"/>.</summary>
/// <remarks>Immutable; quantities are held in SI units. Safe to use from many threads.</remarks>
public abstract record Regulator
{
    private protected Regulator(ElectricPotential output, ElectricCurrent quiescent)
    {
        Output = Require.Positive(output, "Output voltage", nameof(output));
        Quiescent = Require.NotNegative(quiescent, "Quiescent current", nameof(quiescent));
    }

    /// <summary>The voltage that it gives.</summary>
    public ElectricPotential Output { get; }

    /// <summary>What it takes for itself, at all times.</summary>
    public ElectricCurrent Quiescent { get; }

    /// <summary>The limits of the quiescent current, ± as a share of it.</summary>
    public Ratio QuiescentTolerance
    {
        get;
        init => field = Require.Share(value, "Quiescent current tolerance", nameof(QuiescentTolerance));
    }

    /// <summary>The input below which the output is no longer held.</summary>
    public abstract ElectricPotential LeastInput { get; }

    /// <summary>The limits of the efficiency, ± as a share of it.</summary>
    internal abstract double EfficiencyLimit { get; }

    /// <summary>The current into the input, in amperes.</summary>
    internal abstract double InputAmperes(double load, double volts, double quiescent, double efficiencyFactor);

    /// <summary>Refuses a load for which nothing is known.</summary>
    internal abstract void RefuseUnknown(double load, string what);

    /// <summary>The output in volts.</summary>
    private protected double OutputVolts => Si.Volts(Output);
}
