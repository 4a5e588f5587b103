using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>What is known of the meter that took a trace: the limits of its errors, and where it clips.</summary>
/// <remarks>
/// Limits are those of a data sheet, ±: the truth may be anywhere within (gum-2008, 4.3.7). What is not given is not in the
/// budget. Immutable; quantities are held in SI units. Safe to use from many threads.
/// </remarks>
public sealed record TraceAccuracy
{
    /// <summary>Nothing is known.</summary>
    public static TraceAccuracy Unknown { get; } = new();

    /// <summary>The error of the current that grows with it, ± as a share of it.</summary>
    public Ratio Gain
    {
        get;
        init => field = Require.Share(value, "Gain error", nameof(Gain));
    }

    /// <summary>The error of the current that is the same at all currents, ±.</summary>
    public ElectricCurrent Offset
    {
        get;
        init => field = Require.NotNegative(value, "Offset error", nameof(Offset));
    }

    /// <summary>The error of the meter's clock, ± as a share of the time.</summary>
    public Ratio TimeBase
    {
        get;
        init => field = Require.Share(value, "Time base error", nameof(TimeBase));
    }

    /// <summary>The error of the voltage, ± as a share of it.</summary>
    public Ratio VoltageGain
    {
        get;
        init => field = Require.Share(value, "Voltage error", nameof(VoltageGain));
    }

    /// <summary>The current at and above which samples are clipped, above zero; absent where that isn't known.</summary>
    public ElectricCurrent? ClipsAt
    {
        get;
        init =>
            field = value is { } limit
                ? Require.Positive(limit, "Current at which samples are clipped", nameof(ClipsAt))
                : null;
    }

    /// <summary>The accuracy that a meter states for a range; it clips at the range's full scale.</summary>
    /// <param name="range">The range that the trace was taken in.</param>
    public static TraceAccuracy Of(MeterRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        var fullScale = Si.Amperes(range.FullScale);
        return new TraceAccuracy
        {
            Gain = range.OfReading,
            Offset = Si.Current(Si.Fraction(range.OfRange) * fullScale + range.Digits * Si.Amperes(range.Resolution)),
            ClipsAt = range.FullScale,
        };
    }
}
