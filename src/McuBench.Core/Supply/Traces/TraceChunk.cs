namespace McuBench.Core.Supply.Traces;

/// <summary>Some samples of a trace, in order, as plain numbers in SI units: wrapping each in a quantity would cost more
/// than all else that is done with it.</summary>
/// <remarks>The spans are valid until the call that gave them returns. A sample that is not finite is missing.</remarks>
public readonly ref struct TraceChunk
{
    private TraceChunk(
        ReadOnlySpan<double> seconds,
        double step,
        ReadOnlySpan<double> amperes,
        ReadOnlySpan<double> volts,
        ReadOnlySpan<byte> markers
    )
    {
        Seconds = seconds;
        Step = step;
        Amperes = amperes;
        Volts = volts;
        Markers = markers;
    }

    /// <summary>The times, in seconds, each after the one before; empty where samples come at equal steps.</summary>
    public ReadOnlySpan<double> Seconds { get; }

    /// <summary>The time from one sample to the next, in seconds; 0 where each has a time of its own.</summary>
    public double Step { get; }

    /// <summary>The currents, in amperes.</summary>
    public ReadOnlySpan<double> Amperes { get; }

    /// <summary>The voltages, in volts; empty where none were sampled.</summary>
    public ReadOnlySpan<double> Volts { get; }

    /// <summary>The marker line, 0 where it is low and 1 where it is high; empty where there is none.</summary>
    public ReadOnlySpan<byte> Markers { get; }

    /// <summary>Samples with times of their own.</summary>
    /// <param name="seconds">The times, in seconds, each after the one before.</param>
    /// <param name="amperes">As many currents, in amperes.</param>
    /// <param name="volts">As many voltages, in volts, or none.</param>
    /// <param name="markers">As many states of the marker line, or none.</param>
    /// <exception cref="ArgumentException">The counts differ.</exception>
    public static TraceChunk Timed(
        ReadOnlySpan<double> seconds,
        ReadOnlySpan<double> amperes,
        ReadOnlySpan<double> volts = default,
        ReadOnlySpan<byte> markers = default
    )
    {
        CheckCount(seconds.Length, amperes.Length, "times", nameof(seconds));
        CheckOptional(volts.Length, amperes.Length, "voltages", nameof(volts));
        CheckOptional(markers.Length, amperes.Length, "marker states", nameof(markers));
        return new TraceChunk(seconds, 0, amperes, volts, markers);
    }

    /// <summary>Samples at equal steps, following directly upon the chunk before.</summary>
    /// <param name="step">The time from one sample to the next, in seconds, above 0.</param>
    /// <param name="amperes">The currents, in amperes.</param>
    /// <param name="volts">As many voltages, in volts, or none.</param>
    /// <param name="markers">As many states of the marker line, or none.</param>
    /// <exception cref="ArgumentException">The counts differ, or the step is not above 0.</exception>
    public static TraceChunk Even(
        double step,
        ReadOnlySpan<double> amperes,
        ReadOnlySpan<double> volts = default,
        ReadOnlySpan<byte> markers = default
    )
    {
        if (!(step > 0 && double.IsFinite(step)))
        {
            throw new ArgumentOutOfRangeException(
                nameof(step),
                step,
                FormattableString.Invariant($"Step must be a finite number above 0; was {step}.")
            );
        }

        CheckOptional(volts.Length, amperes.Length, "voltages", nameof(volts));
        CheckOptional(markers.Length, amperes.Length, "marker states", nameof(markers));
        return new TraceChunk(default, step, amperes, volts, markers);
    }

    private static void CheckOptional(int count, int expected, string what, string parameter)
    {
        if (count > 0)
        {
            CheckCount(count, expected, what, parameter);
        }
    }

    private static void CheckCount(int count, int expected, string what, string parameter)
    {
        if (count != expected)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"Count of {what} must be {expected}, one for each current; was {count}."),
                parameter
            );
        }
    }
}
