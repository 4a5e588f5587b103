using McuBench.Core.Quantities;
using McuBench.Stats.Series;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>Integrates a trace: charge, and energy where there is a voltage.</summary>
/// <remarks>
/// <para>Sums are exact and rounded at the end, so that a trace in parts, integrated apart and put together in order, gives
/// the same bits as in one go. Memory is constant.</para>
/// <para>It changes as samples are taken, and is not safe to change from two threads at once: give each its own and append
/// them in order.</para>
/// </remarks>
public sealed class TraceIntegrator : ITraceConsumer
{
    private const int Piece = 2048;

    private readonly double longestStep;
    private readonly double clipsAt;
    private readonly double[] products = new double[Piece];
    private double step;
    private bool hasVoltage;
    private UniformIntegral? even;
    private UniformIntegral? evenPower;
    private UnevenIntegral? timed;
    private UnevenIntegral? timedPower;
    private long clipped;

    /// <summary>Begins a trace.</summary>
    /// <param name="accuracy">What is known of the meter; nothing unless given.</param>
    /// <param name="longestStep">The longest step between samples with times of their own that is no gap; unless given,
    /// every step is integrated.</param>
    /// <exception cref="ArgumentOutOfRangeException">The longest step is not above zero.</exception>
    public TraceIntegrator(TraceAccuracy? accuracy = null, Duration? longestStep = null)
    {
        Accuracy = accuracy ?? TraceAccuracy.Unknown;
        clipsAt = Accuracy.ClipsAt is { } limit ? Si.Amperes(limit) : double.PositiveInfinity;
        this.longestStep = longestStep is { } longest
            ? Si.Seconds(Require.Positive(longest, "Longest step", nameof(longestStep)))
            : double.PositiveInfinity;
    }

    /// <summary>What is known of the meter.</summary>
    public TraceAccuracy Accuracy { get; }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The chunk differs from those before: in the step, in having times of its own, or
    /// in having voltages; or its times are not after those taken.</exception>
    public void Take(TraceChunk chunk)
    {
        if (chunk.Amperes.IsEmpty)
        {
            return;
        }

        Begin(chunk.Step, !chunk.Volts.IsEmpty);
        timed?.Add(chunk.Seconds, chunk.Amperes);
        even?.Add(chunk.Amperes);
        if (hasVoltage)
        {
            AddPower(chunk);
        }

        CountClipped(chunk.Amperes);
    }

    /// <summary>Puts a trace that follows behind this one; the other stays as it is.</summary>
    /// <param name="next">The trace that follows: directly, or at later times of its own.</param>
    /// <exception cref="ArgumentException">It differs in step, times or voltages, or begins before this one ends.</exception>
    public void Append(TraceIntegrator next)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (next.even is null && next.timed is null)
        {
            return;
        }

        Begin(next.step, next.hasVoltage);
        if (next.timed is not null)
        {
            timed!.Append(next.timed);
            timedPower?.Append(next.timedPower!);
        }
        else
        {
            even!.Append(next.even!);
            evenPower?.Append(next.evenPower!);
        }

        clipped += next.clipped;
    }

    /// <summary>What the trace comes to so far; null before the first sample. O(1).</summary>
    /// <param name="confidence">The confidence of the intervals, above 0 and below 1.</param>
    /// <param name="voltage">The voltage, where it was not sampled: the energy is then the charge times this.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or the voltage is not above
    /// zero.</exception>
    public TraceTotals? Totals(double confidence = 0.95, ElectricPotential? voltage = null)
    {
        if (!(confidence > 0 && confidence < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence),
                confidence,
                FormattableString.Invariant($"Confidence must be above 0 and below 1; was {confidence}.")
            );
        }

        double? volts = voltage is { } given ? Si.Volts(Require.Positive(given, "Voltage", nameof(voltage))) : null;
        var figures = timed?.Figures() ?? even?.Figures();
        return figures is null
            ? null
            : new TraceFigures(Accuracy, figures, timedPower?.Figures() ?? evenPower?.Figures(), clipped).Totals(
                confidence,
                volts
            );
    }

    private void Begin(double newStep, bool newHasVoltage)
    {
        if (even is null && timed is null)
        {
            step = newStep;
            hasVoltage = newHasVoltage;
            even = step > 0 ? new UniformIntegral(step) : null;
            timed = step > 0 ? null : new UnevenIntegral(longestStep);
            evenPower = step > 0 && hasVoltage ? new UniformIntegral(step) : null;
            timedPower = step > 0 || !hasVoltage ? null : new UnevenIntegral(longestStep);
        }
        else if (newStep != step || newHasVoltage != hasVoltage)
        {
            throw new ArgumentException(
                $"A trace must be of one form throughout, here {FormOf(step, hasVoltage)}; was {FormOf(newStep, newHasVoltage)}.",
                "chunk"
            );
        }
    }

    private static string FormOf(double step, bool hasVoltage) =>
        (step > 0 ? FormattableString.Invariant($"steps of {step} s") : "times of its own")
        + (hasVoltage ? " with voltages" : " without voltages");

    private void AddPower(TraceChunk chunk)
    {
        if (evenPower is not null)
        {
            evenPower.AddProducts(chunk.Volts, chunk.Amperes);
            return;
        }

        for (var from = 0; from < chunk.Amperes.Length; from += Piece)
        {
            var count = Math.Min(Piece, chunk.Amperes.Length - from);
            for (var i = 0; i < count; i++)
            {
                products[i] = chunk.Volts[from + i] * chunk.Amperes[from + i];
            }

            timedPower!.Add(chunk.Seconds.Slice(from, count), products.AsSpan(0, count));
        }
    }

    private void CountClipped(ReadOnlySpan<double> amperes)
    {
        // Most traces clip nowhere, and the greatest is known already.
        if (double.IsPositiveInfinity(clipsAt))
        {
            return;
        }

        foreach (var ampere in amperes)
        {
            clipped += Math.Abs(ampere) >= clipsAt ? 1 : 0;
        }
    }
}
