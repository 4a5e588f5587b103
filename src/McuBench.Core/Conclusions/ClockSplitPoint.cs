using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>One clock of a <see cref="ClockSplit"/>: what was measured there and what the split makes of it.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ClockSplitPoint
{
    internal ClockSplitPoint(
        SetupSummary summary,
        Duration fitted,
        Duration residual,
        Measured<Ratio> scalingShare,
        Measured<Duration> scalingTime
    )
    {
        Summary = summary;
        Fitted = fitted;
        Residual = residual;
        ScalingShare = scalingShare;
        ScalingTime = scalingTime;
    }

    /// <summary>The trials at this clock and what they say.</summary>
    public SetupSummary Summary { get; }

    /// <summary>The clock's nominal frequency, in hertz.</summary>
    public Frequency Clock => Summary.Setup.Clock.Nominal;

    /// <summary>The run time that the line gives here, in seconds.</summary>
    public Duration Fitted { get; }

    /// <summary>The run time measured less the one that the line gives, in seconds.</summary>
    public Duration Residual { get; }

    /// <summary>The share of the measured run time that follows the clock, here.</summary>
    public Measured<Ratio> ScalingShare { get; }

    /// <summary>The time of a run that follows the clock, here: the measured run time less the fixed time, in seconds.</summary>
    public Measured<Duration> ScalingTime { get; }
}
