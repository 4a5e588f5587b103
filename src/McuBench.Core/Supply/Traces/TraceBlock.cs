using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>Samples of a live meter, as plain numbers in SI units.</summary>
/// <remarks>The memory belongs to whoever made the block, and must stay as it is until the block is taken.</remarks>
public sealed class TraceBlock
{
    private readonly ReadOnlyMemory<double> seconds;
    private readonly double step;

    private TraceBlock(
        ReadOnlyMemory<double> seconds,
        double step,
        ReadOnlyMemory<double> amperes,
        ReadOnlyMemory<double> volts
    )
    {
        this.seconds = seconds;
        this.step = step;
        Amperes = amperes;
        Volts = volts;
        _ = AsChunk();
    }

    /// <summary>The currents, in amperes.</summary>
    public ReadOnlyMemory<double> Amperes { get; }

    /// <summary>The voltages, in volts; empty where none were sampled.</summary>
    public ReadOnlyMemory<double> Volts { get; }

    /// <summary>Samples with times of their own, in seconds.</summary>
    /// <param name="seconds">The times, in seconds, each after the one before.</param>
    /// <param name="amperes">As many currents, in amperes.</param>
    /// <param name="volts">As many voltages, in volts, or none.</param>
    /// <exception cref="ArgumentException">The counts differ.</exception>
    public static TraceBlock Timed(
        ReadOnlyMemory<double> seconds,
        ReadOnlyMemory<double> amperes,
        ReadOnlyMemory<double> volts = default
    ) => new(seconds, 0, amperes, volts);

    /// <summary>Samples at equal steps, following directly upon the block before.</summary>
    /// <param name="step">The time from one sample to the next, above zero.</param>
    /// <param name="amperes">The currents, in amperes.</param>
    /// <param name="volts">As many voltages, in volts, or none.</param>
    /// <exception cref="ArgumentException">The counts differ, or the step is not above zero.</exception>
    public static TraceBlock Even(
        Duration step,
        ReadOnlyMemory<double> amperes,
        ReadOnlyMemory<double> volts = default
    ) => new(default, Si.Seconds(Require.Positive(step, "Step", nameof(step))), amperes, volts);

    internal TraceChunk AsChunk() =>
        step > 0
            ? TraceChunk.Even(step, Amperes.Span, Volts.Span)
            : TraceChunk.Timed(seconds.Span, Amperes.Span, Volts.Span);
}
