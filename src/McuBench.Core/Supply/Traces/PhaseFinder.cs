using McuBench.Core.Quantities;
using McuBench.Stats.Series;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>Divides a trace into phases, by its marker line or by two thresholds of the current, and integrates each.</summary>
/// <remarks>
/// <para>The rule for the edges: a sample stands for the time from half-way to the one before it to half-way to the one
/// behind it. So a step in which the phase changes is divided in the middle, each half at its own phase's sample, and the
/// phases add up to the trapezoidal rule on the whole.</para>
/// <para>A change shorter than the least length is none. Missing samples are refused: nothing could say which phase they
/// are of. Memory grows with the number of phases alone. Not safe to use from two threads at once.</para>
/// </remarks>
public sealed class PhaseFinder : ITraceConsumer
{
    private readonly PhaseScanner scanner;
    private readonly bool isByMarker;
    private double[] signal = [];
    private double[] weights = [];
    private double[] charges = [];
    private double[] energies = [];
    private double step;
    private bool hasVoltage;
    private bool hasEnded;
    private long taken;
    private double begin;
    private PendingSample pending;

    private PhaseFinder(double low, double high, long leastSamples, bool isByMarker)
    {
        scanner = new PhaseScanner(
            low,
            high,
            Require.AtLeast(leastSamples, 1, "Least length in samples", nameof(leastSamples))
        );
        this.isByMarker = isByMarker;
    }

    /// <summary>Finds phases by the marker line.</summary>
    /// <param name="leastSamples">How many samples a change has to last to count, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is below 1.</exception>
    public static PhaseFinder ByMarker(long leastSamples = 1) => new(0.5, 0.5, leastSamples, isByMarker: true);

    /// <summary>Finds phases by the current.</summary>
    /// <param name="low">Below this the board goes idle.</param>
    /// <param name="high">At and above this it goes active; not below <paramref name="low"/>.</param>
    /// <param name="leastSamples">How many samples a change has to last to count, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The upper threshold is below the lower, or the length below 1.</exception>
    public static PhaseFinder ByThreshold(ElectricCurrent low, ElectricCurrent high, long leastSamples = 1)
    {
        if (Si.Amperes(high) < Si.Amperes(low))
        {
            throw new ArgumentOutOfRangeException(
                nameof(high),
                high,
                $"Upper threshold must be at least the lower one of {QuantityText.Format(Si.Normalized(low))}; was {QuantityText.Format(Si.Normalized(high))}."
            );
        }

        return new PhaseFinder(Si.Amperes(low), Si.Amperes(high), leastSamples, isByMarker: false);
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">A sample is missing, there is no marker line to go by, or the chunk differs in
    /// form from those before.</exception>
    /// <exception cref="InvalidOperationException">The phases were asked for already.</exception>
    public void Take(TraceChunk chunk)
    {
        if (hasEnded)
        {
            throw new InvalidOperationException("Samples must be given before the phases are asked for; they were.");
        }

        if (chunk.Amperes.IsEmpty)
        {
            return;
        }

        Check(chunk);
        Reserve(chunk.Amperes.Length + 1);
        var count = 0;
        for (var i = 0; i < chunk.Amperes.Length; i++)
        {
            // Multiplied, not added up: the same times however the trace is cut.
            var time = step > 0 ? (taken + i) * step : chunk.Seconds[i];
            var sample = new PendingSample(
                taken + i == 0 ? time : pending.Time,
                time,
                chunk.Amperes[i],
                hasVoltage ? chunk.Volts[i] : 0,
                isByMarker ? chunk.Markers[i] : chunk.Amperes[i]
            );
            if (taken + i > 0)
            {
                Put(count++, pending, time);
            }
            else
            {
                begin = time;
            }

            pending = sample;
        }

        taken += chunk.Amperes.Length;
        Give(count);
    }

    /// <summary>The phases in order, when the whole trace was taken; empty where it has no sample.</summary>
    public IReadOnlyList<TracePhase> Phases()
    {
        if (!hasEnded && taken > 0)
        {
            Reserve(1);
            Put(0, pending, pending.Time);
            Give(1);
        }

        hasEnded = true;
        var phases = new List<TracePhase>();
        var start = begin;
        foreach (var phase in scanner.Phases())
        {
            phases.Add(
                new TracePhase(
                    phase.IsHigh,
                    start,
                    phase.SecondSum,
                    phase.Count,
                    phase.FirstSum,
                    hasVoltage ? phase.ThirdSum : null
                )
            );
            start += phase.SecondSum;
        }

        return phases;
    }

    private void Check(TraceChunk chunk)
    {
        if (isByMarker && chunk.Markers.IsEmpty)
        {
            throw new ArgumentException(
                "A trace must have a marker line to find phases by it; has none.",
                nameof(chunk)
            );
        }

        if (taken == 0)
        {
            step = chunk.Step;
            hasVoltage = !chunk.Volts.IsEmpty;
        }
        else if (chunk.Step != step || !chunk.Volts.IsEmpty != hasVoltage)
        {
            throw new ArgumentException(
                "A trace must be of one form throughout; steps, times or voltages have changed.",
                nameof(chunk)
            );
        }

        for (var i = 0; i < chunk.Amperes.Length; i++)
        {
            if (!double.IsFinite(chunk.Amperes[i]) || (hasVoltage && !double.IsFinite(chunk.Volts[i])))
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Samples must all be there to find phases; sample {taken + i} is missing."
                    ),
                    nameof(chunk)
                );
            }
        }
    }

    private void Put(int at, PendingSample sample, double next)
    {
        var weight = (next - sample.Before) / 2;
        signal[at] = sample.Signal;
        weights[at] = weight;
        charges[at] = sample.Amperes * weight;
        energies[at] = sample.Amperes * sample.Volts * weight;
    }

    private void Give(int count) =>
        scanner.Add(
            signal.AsSpan(0, count),
            charges.AsSpan(0, count),
            weights.AsSpan(0, count),
            hasVoltage ? energies.AsSpan(0, count) : default
        );

    private void Reserve(int count)
    {
        if (signal.Length < count)
        {
            signal = new double[count];
            weights = new double[count];
            charges = new double[count];
            energies = new double[count];
        }
    }

    /// <summary>A sample that waits for the next one, which ends its time.</summary>
    private readonly record struct PendingSample(
        double Before,
        double Time,
        double Amperes,
        double Volts,
        double Signal
    );
}
