using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply;

/// <summary>One figure read from a meter in a board's supply, and what the board was doing meanwhile.</summary>
/// <remarks>
/// The reading is of the whole board as set up, attachments included, unless the phase is
/// <see cref="SupplyPhase.AttachmentAlone"/>. A current is not a charge: what a task costs is this times the run time.
/// Immutable; quantities are held in SI units. Safe to use from many threads.
/// </remarks>
public sealed record SupplyReading
{
    /// <summary>Makes a reading.</summary>
    /// <param name="setup">What was measured.</param>
    /// <param name="meter">What measured it.</param>
    /// <param name="phase">What the board was doing.</param>
    /// <param name="current">The current read, not negative. A meter that shows less than nothing has its leads swapped
    /// or its zero off.</param>
    /// <param name="workload">What was being executed: needed where the phase is running, waiting or computing, absent otherwise.</param>
    /// <exception cref="ArgumentException">The workload is missing or not wanted, or no
    /// range of the meter holds the current.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The current is negative.</exception>
    public SupplyReading(
        Setup setup,
        Meter meter,
        SupplyPhase phase,
        ElectricCurrent current,
        Workload? workload = null
    )
    {
        Setup = Require.Given(setup, nameof(setup));
        Meter = Require.Given(meter, nameof(meter));
        Phase = Require.Defined(phase, "Supply phase", nameof(phase));
        Current = Require.NotNegative(current, "Current read", nameof(current));
        Workload = workload;
        var executes = phase is SupplyPhase.Running or SupplyPhase.Waiting or SupplyPhase.Computing;
        if (executes && workload is null)
        {
            throw new ArgumentException(
                $"A reading in phase {phase} must name the workload that was executed; it names none.",
                nameof(workload)
            );
        }

        if (!executes && workload is not null)
        {
            throw new ArgumentException(
                $"A reading in phase {phase} must name no workload; it names \"{workload.Name}\".",
                nameof(workload)
            );
        }

        if (meter.RangeFor(Current) is null)
        {
            throw new ArgumentException(
                $"A reading must lie within a range of its meter (\"{meter.Name}\" reads up to {QuantityText.Format(meter.Ranges[^1].FullScale)}); was {QuantityText.Format(Current)}.",
                nameof(current)
            );
        }
    }

    /// <summary>What was measured.</summary>
    public Setup Setup { get; }

    /// <summary>What measured it.</summary>
    public Meter Meter { get; }

    /// <summary>What the board was doing.</summary>
    public SupplyPhase Phase { get; }

    /// <summary>The current read, in amperes, not negative.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>What was being executed; absent in the phases that execute nothing.</summary>
    public Workload? Workload { get; }

    /// <summary>Where in the supply path the meter sat.</summary>
    public MeasuringPoint Point
    {
        get;
        init => field = Require.Defined(value, "Measuring point", nameof(Point));
    } = MeasuringPoint.BeforeRegulator;

    /// <summary>The voltage at the measuring point while reading, above zero, when it was read.</summary>
    public ElectricPotential? BoardVoltage
    {
        get;
        init => field = value is { } voltage ? Require.Positive(voltage, "Board voltage", nameof(BoardVoltage)) : null;
    }

    /// <summary>The full scale of the range in use, one of the meter's and not below the reading; absent when it wasn't
    /// noted, and then the smallest range that holds the reading is taken.</summary>
    public ElectricCurrent? Range
    {
        get;
        init
        {
            if (value is not { } given)
            {
                field = null;
                return;
            }

            var fullScale = Require.Positive(given, "Range in use", nameof(Range));
            if (
                !Meter.Ranges.Any(range => Si.Amperes(range.FullScale) == Si.Amperes(fullScale))
                || Si.Amperes(fullScale) < Si.Amperes(Current)
            )
            {
                throw new ArgumentException(
                    $"Range in use must be one of meter \"{Meter.Name}\"'s ({string.Join(", ", Meter.Ranges.Select(r => QuantityText.Format(r.FullScale)))}) and hold the reading of {QuantityText.Format(Current)}; was {QuantityText.Format(fullScale)}.",
                    nameof(Range)
                );
            }

            field = fullScale;
        }
    }

    /// <summary>Which attachment was read alone, or null in every other phase.</summary>
    public string? Attachment
    {
        get;
        init => field = Require.OptionalName(value, "Attachment read alone", nameof(Attachment));
    }

    /// <summary>The sitting it was taken in, when known.</summary>
    public string? Session
    {
        get;
        init => field = Require.OptionalName(value, "Session", nameof(Session));
    }

    /// <summary>Which physical board of the model was measured, when known.</summary>
    public string? Specimen
    {
        get;
        init => field = Require.OptionalName(value, "Specimen", nameof(Specimen));
    }

    /// <summary>The range of the meter that the reading was taken in, or is taken to have been taken in.</summary>
    public MeterRange MeterRange =>
        Range is { } fullScale
            ? Meter.Ranges.First(range => Si.Amperes(range.FullScale) == Si.Amperes(fullScale))
            : Meter.RangeFor(Current)!;
}
