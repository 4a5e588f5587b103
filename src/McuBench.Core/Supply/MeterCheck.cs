using UnitsNet;

namespace McuBench.Core.Supply;

/// <summary>A check of a meter against a current that is known: zero with the input open, or a load of known draw.</summary>
/// <remarks>Immutable; quantities are held in SI units. Safe to use from many threads.</remarks>
public sealed record MeterCheck
{
    /// <summary>Makes a check.</summary>
    /// <param name="date">The day it was done.</param>
    /// <param name="expected">The current that it should have read; zero for a zero check.</param>
    /// <param name="read">What it read; may be negative.</param>
    public MeterCheck(DateOnly date, ElectricCurrent expected, ElectricCurrent read)
    {
        Date = date;
        Expected = Require.NotNegative(expected, "Expected current", nameof(expected));
        Read = Quantities.Si.Normalized(read, nameof(read));
    }

    /// <summary>The day it was done.</summary>
    public DateOnly Date { get; }

    /// <summary>The current that it should have read, in amperes; zero for a zero check.</summary>
    public ElectricCurrent Expected { get; }

    /// <summary>What it read, in amperes.</summary>
    public ElectricCurrent Read { get; }
}
