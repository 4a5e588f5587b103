using UnitsNet;

namespace McuBench.Core.Boards;

/// <summary>The clock that the execution core runs at: its nominal frequency and how far the real one may be off.</summary>
/// <remarks>Immutable; quantities are held in SI units, so equal clocks compare equal whatever unit they were given in.
/// Safe to use from many threads.</remarks>
public sealed record Clock
{
    /// <summary>Makes a clock.</summary>
    /// <param name="nominal">The nominal frequency, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is zero or negative.</exception>
    public Clock(Frequency nominal) => Nominal = nominal;

    /// <summary>The nominal frequency, above zero, in hertz.</summary>
    public Frequency Nominal
    {
        get;
        init => field = Require.Positive(value, "Clock's frequency", nameof(Nominal));
    }

    /// <summary>The most by which the real frequency may differ from the nominal one, as a share of it (50 ppm, say);
    /// at least 0 and below 1; absent when unknown.</summary>
    public Ratio? Tolerance
    {
        get;
        init => field = value is { } share ? Require.Share(share, "Clock's tolerance", nameof(Tolerance)) : null;
    }
}
