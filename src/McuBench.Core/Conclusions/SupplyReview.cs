using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Supply;

namespace McuBench.Core.Conclusions;

/// <summary>What is wrong or weak in the supply readings.</summary>
internal static class SupplyReview
{
    private const double LowestShareOfRange = 0.1;

    public static IEnumerable<Finding> Of(Study study, IReadOnlyList<SetupSummary> summaries) =>
        Missing(study, summaries)
            .Concat(LowInRange(study))
            .Concat(AccuracyUnknown(study))
            .Concat(RangesDiffer(summaries))
            .Concat(PointsDiffer(study));

    private static IEnumerable<Finding> Missing(Study study, IReadOnlyList<SetupSummary> summaries)
    {
        var without = summaries.Where(s => s.Supply is null).ToList();
        if (without.Count == 0)
        {
            yield break;
        }

        string[] names =
        [
            .. without.Select(s => $"{s.Setup.Name} on {s.Workload.Name}").Distinct(StringComparer.Ordinal),
        ];
        yield return new Finding(
            FindingKind.NoSupplyReadings,
            Severity.Note,
            study.Title,
            without.Count == summaries.Count
                ? "No current was read while a workload ran: charge and energy per task can't be told."
                : $"No current was read for {Said.List(names)}: their charge and energy per task can't be told.",
            "Read the supply current while the workload runs.",
            [new("setups and workloads without readings", without.Count), new("setups and workloads", summaries.Count)],
            []
        );
    }

    private static IEnumerable<Finding> LowInRange(Study study)
    {
        foreach (var used in study.Readings.GroupBy(r => (r.Meter.Name, FullScale: Si.Amperes(r.MeterRange.FullScale))))
        {
            var range = used.First().MeterRange;
            var low = used.Where(r =>
                    Si.Amperes(r.Current) < LowestShareOfRange * used.Key.FullScale && r.MeterRange != r.Meter.Ranges[0]
                )
                .ToList();
            if (low.Count == 0)
            {
                continue;
            }

            var least = low.Min(r => Si.Amperes(r.Current));
            var offset = Si.Fraction(range.OfRange) * used.Key.FullScale + range.Digits * Si.Amperes(range.Resolution);
            var weight =
                least > 0 && offset > 0
                    ? $" There the offset part of its accuracy is {Said.Percent(offset / least)} of the smallest."
                    : "";
            yield return new Finding(
                FindingKind.MeterRangeLow,
                Severity.Caution,
                $"meter \"{used.Key.Name}\", {QuantityText.Format(range.FullScale)} range",
                $"{Said.Count(low.Count, "reading")} down to {Said.Amperes(least)} in the lowest tenth of the range ({Said.List([.. low.Select(r => r.Setup.Name).Distinct(StringComparer.Ordinal)])}).{weight}",
                "Use a smaller range for small currents.",
                [
                    new("readings", low.Count),
                    new("smallest reading", least, "A"),
                    new("range", used.Key.FullScale, "A"),
                    new("offset part of the accuracy", offset, "A"),
                ],
                []
            );
        }
    }

    private static IEnumerable<Finding> AccuracyUnknown(Study study)
    {
        foreach (
            var used in study
                .Readings.Where(r => !CurrentFigures.StatesAccuracy(r.MeterRange))
                .GroupBy(r => r.Meter.Name, StringComparer.Ordinal)
        )
        {
            yield return new Finding(
                FindingKind.MeterAccuracyUnknown,
                Severity.Caution,
                $"meter \"{used.Key}\"",
                $"Its accuracy isn't stated for {Said.Count(used.Count(), "reading")}: only scatter and the last digit are in the intervals of current, charge and energy.",
                "State its accuracy as a share of the reading, a share of the range, and digits.",
                [new("readings", used.Count())],
                []
            );
        }
    }

    private static IEnumerable<Finding> RangesDiffer(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (
            var workload in summaries
                .Where(s => s.Supply is not null)
                .GroupBy(s => s.Workload.Name, StringComparer.Ordinal)
        )
        {
            var used = workload
                .SelectMany(s =>
                    s.Supply!.Readings.Select(r => (Range: SetupDifferences.MeterAndRange(r), s.Setup.Name))
                )
                .Distinct()
                .GroupBy(u => u.Range, u => u.Name, StringComparer.Ordinal)
                .ToList();
            if (used.Count < 2)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.MeterRangesDiffer,
                Severity.Note,
                workload.Key,
                $"Currents were read in different ranges: {string.Join("; ", used.Select(u => $"{u.Key} for {Said.List([.. u])}"))}. Between them the meter's gain doesn't cancel; it is in the intervals of the ratios.",
                "Read what is to be compared in one range of one meter.",
                [new("ranges", used.Count)],
                []
            );
        }
    }

    private static IEnumerable<Finding> PointsDiffer(Study study)
    {
        var running = study.Readings.Where(r => r.Phase == SupplyPhase.Running).ToList();
        string[] behind =
        [
            .. running
                .Where(r => r.Point == MeasuringPoint.AfterRegulator)
                .Select(r => r.Setup.Name)
                .Distinct(StringComparer.Ordinal),
        ];
        if (behind.Length == 0 || running.TrueForAll(r => r.Point == MeasuringPoint.AfterRegulator))
        {
            yield break;
        }

        yield return new Finding(
            FindingKind.MeasuringPointsDiffer,
            Severity.Fault,
            Said.List(behind),
            "Some currents were read behind the regulator and others at the board's input: the regulator's own draw is in the latter only, and currents, charges and energies of the two are not of the same thing.",
            "Measure at the board's input throughout.",
            [new("setups read behind the regulator", behind.Length)],
            []
        );
    }
}
