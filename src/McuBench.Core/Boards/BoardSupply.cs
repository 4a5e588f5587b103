using UnitsNet;

namespace McuBench.Core.Boards;

/// <summary>How a board is fed: at which voltage, through which input, and whether anything else feeds it too.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record BoardSupply
{
    /// <summary>Makes a supply.</summary>
    /// <param name="voltage">The nominal voltage at the board's input, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is zero or negative.</exception>
    public BoardSupply(ElectricPotential voltage) => Voltage = voltage;

    /// <summary>The nominal voltage at the board's input, above zero, in volts.</summary>
    public ElectricPotential Voltage
    {
        get;
        init => field = Require.Positive(value, "Supply's voltage", nameof(Voltage));
    }

    /// <summary>The most by which the real voltage may differ, as a share of the nominal one; absent when unknown.</summary>
    public Ratio? Tolerance
    {
        get;
        init => field = value is { } share ? Require.Share(share, "Supply's tolerance", nameof(Tolerance)) : null;
    }

    /// <summary>The input used ("5 V header pin", "cell socket"), when known.</summary>
    public string? Input
    {
        get;
        init => field = Require.OptionalName(value, "Supply's input", nameof(Input));
    }

    /// <summary>Whether the board also drew current through another path, such as its debugger or a serial line, while
    /// it was measured; absent when unknown. Where it did, the meter saw only a part.</summary>
    public bool? FedElsewhereToo { get; init; }
}
