using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>Every trial and supply reading as it was taken, folded away setup by setup: what each figure rests on.</summary>
internal static class TrialSections
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions, TrialAnchors anchors)
    {
        yield return new ReportHeading(2, "Trials and readings");
        yield return new ReportParagraph(
            "What every figure rests on, as it was read. A number sign gives a trial's place in the order in which the whole study ran."
        );
        var readings = conclusions.Study.Readings.ToLookup(reading => reading.Setup.Name, StringComparer.Ordinal);
        foreach (var workload in conclusions.Study.Workloads)
        {
            yield return new ReportHeading(3, Phrase.Capital(workload.Name)) { Anchor = anchors.Of(workload) };
            var summaries = conclusions.Summaries.Where(summary => summary.Workload == workload).ToArray();
            if (summaries.Length == 0)
            {
                yield return new ReportParagraph("No trial of it counts as a result.");
            }

            foreach (var summary in summaries)
            {
                SupplyReading[] ofSummary =
                [
                    .. readings[summary.Setup.Name].Where(r => r.Workload is null || r.Workload == workload),
                ];
                yield return new ReportDetails(
                    Summary(summary, ofSummary.Length),
                    [.. Trials(summary.Series), .. Readings(ofSummary)]
                )
                {
                    Anchor = anchors.Of(summary),
                };
            }
        }
    }

    private static string Summary(SetupSummary summary, int readings)
    {
        var trials = summary.Series.Trials.Count + summary.Series.NotResults.Count;
        return $"{summary.Setup.Name}: {Said.Count(trials, "trial")}, {Said.Count(readings, "supply reading")}";
    }

    private static IEnumerable<ReportBlock> Trials(TrialSeries series)
    {
        foreach (var group in series.Trials.GroupBy(Circumstances, StringComparer.Ordinal))
        {
            yield return new ReportParagraph(
                $"{Phrase.Capital($"{group.Key}run times read with {series.Timer.Name}")}: {Listed(group)}."
            );
        }

        if (series.NotResults.Count > 0)
        {
            yield return new ReportParagraph(
                $"Left out, since their output has the wrong checksum: {Listed(series.NotResults)}."
            );
        }
    }

    private static string Circumstances(Trial trial) =>
        string.Concat(
            Named("specimen", trial.Specimen),
            Named("session", trial.Session),
            Named("build", trial.Build),
            Named("connection", trial.Connection)
        );

    private static string Named(string what, string? name) => name is null ? "" : $"{what} {name}, ";

    private static string Listed(IEnumerable<Trial> trials) =>
        string.Join(
            ", ",
            trials.Select(trial =>
            {
                var time = QuantityText.Format(trial.RunTime, TextForm.Plain);
                var at = trial.Temperature is { } temperature
                    ? $" ({QuantityDisplay.Rounded(temperature, 3, TextForm.Plain)})"
                    : "";
                return trial.Order is { } order ? FormattableString.Invariant($"#{order} {time}{at}") : time + at;
            })
        );

    private static IEnumerable<ReportBlock> Readings(IEnumerable<SupplyReading> readings) =>
        readings
            .GroupBy(Doing, StringComparer.Ordinal)
            .Select(group => new ReportParagraph(
                $"{group.Key}: {string.Join(", ", group.Select(reading => QuantityText.Format(reading.Current, TextForm.Plain)))}."
            ));

    private static string Doing(SupplyReading reading)
    {
        var phase = reading.Phase switch
        {
            SupplyPhase.Running => "while running",
            SupplyPhase.Waiting => "while waiting within a run",
            SupplyPhase.Idle => "while idle",
            _ => $"of {reading.Attachment ?? "an attachment"} alone",
        };
        var place = reading.Point == MeasuringPoint.BeforeRegulator ? "" : ", behind the regulator";
        var voltage = reading.BoardVoltage is { } volts ? $" at {QuantityText.Format(volts, TextForm.Plain)}" : "";
        return Phrase.Capital(
            $"{Named("specimen", reading.Specimen)}{Named("session", reading.Session)}current {phase}{place}, read with {reading.Meter.Name}{voltage}"
        );
    }
}
