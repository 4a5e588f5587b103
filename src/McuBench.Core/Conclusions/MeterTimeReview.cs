using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Stats.Descriptive;

namespace McuBench.Core.Conclusions;

/// <summary>Whether meters read what they are taken to read: their averaging time against the run and against the load's
/// swing, and the voltage while it ran.</summary>
internal static class MeterTimeReview
{
    /// <summary>From so many periods on, an average that begins anywhere is off by at most a fortieth of the swing.</summary>
    private const double EnoughPeriods = 10;
    private const double SagWithoutTolerance = 0.05;

    public static IEnumerable<Finding> Of(Study study, IReadOnlyList<SetupSummary> summaries) =>
        AveragingAgainstRun(summaries).Concat(Aliasing(study)).Concat(Sags(study));

    private static IEnumerable<Finding> AveragingAgainstRun(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var summary in summaries)
        {
            var seconds = Si.Seconds(summary.RunTime.Value);
            var slow = (summary.Supply?.Readings ?? [])
                .Where(r => r.Phase == SupplyPhase.Running && r.Meter.AveragingTime is not null)
                .Where(r => Si.Seconds(r.Meter.AveragingTime!.Value) > seconds)
                .ToArray();
            if (slow.Length == 0)
            {
                continue;
            }

            var averaging = slow.Max(r => Si.Seconds(r.Meter.AveragingTime!.Value));
            yield return new Finding(
                FindingKind.MeterSlowerThanRun,
                Severity.Caution,
                $"{summary.Setup.Name}, {summary.Workload.Name}",
                $"Meter \"{slow[0].Meter.Name}\" averages over {Said.Seconds(averaging)}, longer than a run of {Said.Seconds(seconds)}: {Said.Count(slow.Length, "reading")} also hold{(slow.Length == 1 ? "s" : "")} what the board drew before or after, unless runs followed one another without a gap.",
                $"Repeat the workload without a gap for more than {Said.Seconds(averaging)} while reading, or lengthen the run.",
                [new("averaging time", averaging, "s"), new("run time", seconds, "s"), new("readings", slow.Length)],
                []
            );
        }
    }

    private static IEnumerable<Finding> Aliasing(Study study)
    {
        foreach (
            var read in study
                .Readings.Where(r => r is { Workload.LoadPeriod: not null, Meter.AveragingTime: not null })
                .GroupBy(r => (Workload: r.Workload!.Name, Meter: r.Meter.Name))
        )
        {
            var period = Si.Seconds(read.First().Workload!.LoadPeriod!.Value);
            var averaging = Si.Seconds(read.First().Meter.AveragingTime!.Value);
            var periods = averaging / period;
            if (periods >= EnoughPeriods)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.MeterAliases,
                Severity.Caution,
                $"{read.Key.Workload}, meter \"{read.Key.Meter}\"",
                $"The load swings every {Said.Seconds(period)} and the meter averages over {Said.Seconds(averaging)}, {Said.Number(periods, 2)} periods: a reading depends on where in the swing it begins, and readings taken in step with it are all off alike ({Said.Count(read.Count(), "reading")}).",
                "Average over many periods, or over a whole number of them, and begin readings at moments of no pattern.",
                [
                    new("period of the load", period, "s"),
                    new("averaging time", averaging, "s"),
                    new("periods in an average", periods),
                ],
                []
            );
        }
    }

    private static IEnumerable<Finding> Sags(Study study)
    {
        foreach (
            var setup in study
                .Readings.Where(r => r is { BoardVoltage: not null, Point: MeasuringPoint.BeforeRegulator })
                .GroupBy(r => r.Setup.Name, StringComparer.Ordinal)
        )
        {
            var running = Volts(setup.Where(r => r.Phase == SupplyPhase.Running));
            if (running is not { } loaded)
            {
                continue;
            }

            var supply = setup.First().Setup.Supply;
            var idle = Volts(setup.Where(r => r.Phase == SupplyPhase.Idle));
            if ((idle ?? (supply is null ? null : Si.Volts(supply.Voltage))) is not { } full)
            {
                continue;
            }

            var allowed = supply?.Tolerance is { } tolerance ? Si.Fraction(tolerance) : SagWithoutTolerance;
            var sag = 1 - loaded / full;
            if (sag <= allowed)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.VoltageSag,
                Severity.Caution,
                setup.Key,
                $"While running the board gets {Said.Volts(loaded)}, {Said.Percent(sag)} less than {(idle is null ? "the nominal" : "when idle,")} {Said.Volts(full)}; {Said.Percent(allowed)} would be usual. Current and clock may follow the voltage.",
                "Use a stiffer supply, shorter leads or a larger meter range, and read the voltage at the board with each current.",
                [
                    new("voltage while running", loaded, "V"),
                    new(idle is null ? "nominal voltage" : "voltage when idle", full, "V"),
                    new("sag", sag),
                ],
                []
            );
        }
    }

    private static double? Volts(IEnumerable<SupplyReading> readings)
    {
        double[] volts = [.. readings.Select(r => Si.Volts(r.BoardVoltage!.Value))];
        return volts.Length == 0 ? null : Location.Mean(volts);
    }
}
