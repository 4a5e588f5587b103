using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Planning;

/// <summary>What the bench takes besides the runs: a pause after each trial, the change from one setup to another, and
/// the start of a session.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record BenchTimes
{
    /// <summary>Nothing but the runs.</summary>
    public static BenchTimes RunsOnly { get; } = new();

    /// <summary>After each trial, such as reading a display; none unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below zero.</exception>
    public Duration Pause
    {
        get;
        init => field = NotNegative(value, "Pause", nameof(Pause));
    }

    /// <summary>From one setup to another, such as moving a cable or loading a program; none unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below zero.</exception>
    public Duration Change
    {
        get;
        init => field = NotNegative(value, "Change of setup", nameof(Change));
    }

    /// <summary>At the start of each session, such as warming up; none unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below zero.</exception>
    public Duration Start
    {
        get;
        init => field = NotNegative(value, "Start of a session", nameof(Start));
    }

    private static Duration NotNegative(Duration value, string what, string parameter)
    {
        var normalized = Si.Normalized(value, parameter);
        return Si.Seconds(normalized) >= 0
            ? normalized
            : throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{what} must not be negative; was {QuantityText.Format(normalized)}."
            );
    }
}
