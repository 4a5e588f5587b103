using System.Globalization;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies.Json;

/// <summary>Makes timers and meters of their transfer records; null after a fault.</summary>
internal static class InstrumentAssembler
{
    public static TrialTimer? Timer(StudyTransfer.Timer part, ObjectFaults here)
    {
        var resolution = here.Quantity("resolution", part.Resolution, QuantityKind.Duration);
        var reading = here.Word<TimerReading>("reading", part.Reading);
        var sound =
            here.Optional("tolerance", part.Tolerance, QuantityKind.Ratio, out var tolerance)
            & here.Optional("place", part.Place, out TimerPlace? place);
        if (!sound || resolution is not { } seconds || reading is not { } reads)
        {
            return null;
        }

        return here.Make(
            ["name", "resolution", "tolerance"],
            () =>
                new TrialTimer(part.Name, Si.Duration(seconds), reads)
                {
                    Tolerance = tolerance is { } share ? Si.Ratio(share) : null,
                    Place = place ?? TimerPlace.OnBoard,
                    DerivedFromChangedClock = part.DerivedFromChangedClock,
                }
        );
    }

    public static Meter? Meter(StudyTransfer.Meter part, ObjectFaults here)
    {
        var ranges = ObjectFaults.All(part.Ranges, (range, i) => MeterRange(range, here.At("ranges", i)));
        var sound = here.Optional("averagingTime", part.AveragingTime, QuantityKind.Duration, out var averaging);
        MeterCheck? zero = null;
        MeterCheck? load = null;
        sound &= part.ZeroCheck is null || (zero = MeterCheck(part.ZeroCheck, here.At("zeroCheck"))) is not null;
        sound &=
            part.KnownLoadCheck is null
            || (load = MeterCheck(part.KnownLoadCheck, here.At("knownLoadCheck"))) is not null;
        if (!sound || ranges is null)
        {
            return null;
        }

        return here.Make(
            ["name", "ranges", "averagingTime"],
            () =>
                new Meter(part.Name, ranges)
                {
                    AveragingTime = averaging is { } seconds ? Si.Duration(seconds) : null,
                    ZeroCheck = zero,
                    KnownLoadCheck = load,
                }
        );
    }

    private static MeterRange? MeterRange(StudyTransfer.MeterRange part, ObjectFaults here)
    {
        var fullScale = here.Quantity("fullScale", part.FullScale, QuantityKind.Current);
        var resolution = here.Quantity("resolution", part.Resolution, QuantityKind.Current);
        var sound =
            here.Optional("ofReading", part.OfReading, QuantityKind.Ratio, out var ofReading)
            & here.Optional("ofRange", part.OfRange, QuantityKind.Ratio, out var ofRange)
            & here.Optional("burdenAtFullScale", part.BurdenAtFullScale, QuantityKind.Voltage, out var burden);
        if (!sound || fullScale is not { } most || resolution is not { } step)
        {
            return null;
        }

        return here.Make(
            ["fullScale", "resolution", "ofReading", "ofRange", "digits", "burdenAtFullScale"],
            () =>
                new MeterRange(Si.Current(most), Si.Current(step))
                {
                    OfReading = Si.Ratio(ofReading ?? 0),
                    OfRange = Si.Ratio(ofRange ?? 0),
                    Digits = part.Digits ?? 0,
                    BurdenAtFullScale = burden is { } volts ? Si.Voltage(volts) : null,
                }
        );
    }

    private static MeterCheck? MeterCheck(StudyTransfer.MeterCheck part, ObjectFaults here)
    {
        var expected = here.Quantity("expected", part.Expected, QuantityKind.Current);
        var read = here.Quantity("read", part.Read, QuantityKind.Current);
        var isDate = DateOnly.TryParseExact(
            part.Date,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var date
        );
        if (!isDate)
        {
            here.Add(
                "date",
                part.Date,
                $"{Excerpt.Quoted(part.Date)} is no date.",
                "Write year, month and day as 2026-03-31."
            );
        }

        return isDate && expected is { } known && read is { } shown
            ? here.Make(["expected", "read"], () => new MeterCheck(date, Si.Current(known), Si.Current(shown)))
            : null;
    }
}
