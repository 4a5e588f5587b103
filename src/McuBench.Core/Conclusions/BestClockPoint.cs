using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>One clock that a board offers: what a task costs there, and how much more than at the best one offered.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record BestClockPoint
{
    internal BestClockPoint(
        Frequency clock,
        Measured<ElectricCharge> charge,
        Measured<double> chargeToBest,
        Measured<Energy>? energy
    )
    {
        Clock = clock;
        Charge = charge;
        ChargeToBest = chargeToBest;
        Energy = energy;
    }

    /// <summary>The clock, in hertz.</summary>
    public Frequency Clock { get; }

    /// <summary>The charge per task there, or per period where the task is repeated, in coulombs.</summary>
    public Measured<ElectricCharge> Charge { get; }

    /// <summary>That charge divided by the one at the best of the offered clocks; without an interval at that one itself.</summary>
    public Measured<double> ChargeToBest { get; }

    /// <summary>The energy at the voltage that the board has at this clock, in joules; absent where the clock wasn't run or
    /// no voltage is known.</summary>
    public Measured<Energy>? Energy { get; }

    /// <summary>Whether the data can't tell its charge from that of the best of the offered clocks.</summary>
    public bool IsNotToldFromBest => ChargeToBest.Lower is not { } lower || lower <= 1;
}
