using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Current, charge and energy per task of one series from the readings of its setup.</summary>
/// <param name="Summary">What is shown.</param>
/// <param name="Running">The mean current of the running phase, in amperes.</param>
/// <param name="Charge">The charge per task, in coulombs.</param>
/// <param name="Energy">The energy per task, in joules; absent where no voltage is known.</param>
internal sealed record SupplyFigures(
    SupplySummary Summary,
    UncertainValue Running,
    UncertainValue Charge,
    UncertainValue? Energy
)
{
    private const double SecondsPerHour = 3600;

    private const string OneReadingNote =
        "The current rests on one reading: the meter's accuracy is in the interval, the scatter between readings can't be.";

    /// <summary>The figures, or null where no current was read while running.</summary>
    /// <param name="series">The trials.</param>
    /// <param name="runTime">Their mean run time.</param>
    /// <param name="readings">The readings of the series' setup, in the order of the study.</param>
    /// <param name="fixedTime">The time of a run that doesn't follow the clock, where a split found it.</param>
    /// <param name="confidence">Of the intervals.</param>
    public static SupplyFigures? Of(
        TrialSeries series,
        UncertainValue runTime,
        IReadOnlyList<SupplyReading> readings,
        UncertainValue? fixedTime,
        double confidence
    )
    {
        var notes = new List<string>();
        var running = AtOnePoint(Phase(readings, SupplyPhase.Running, series), notes);
        if (running.Count == 0)
        {
            running = AtOnePoint(Phase(readings, SupplyPhase.Computing, series), notes);
            if (running.Count == 0)
            {
                return null;
            }

            notes.Add("Current was read while computing and not over whole runs: it stands for both.");
        }

        var key = $"{series.Setup.Name}|{series.Workload.Name}|running";
        var current = CurrentFigures.Mean(running, key, $"running, {series.Setup.Name}");
        NoteInstruments(running, notes);
        var waiting = Phase(readings, SupplyPhase.Waiting, series).Where(r => r.Point == running[0].Point).ToList();
        var computing = PhaseFigures.Of(series, readings).Computing?.Mean ?? current;
        var charge = WholeRun(series, runTime, (current, computing), waiting, fixedTime, notes, out var isWholeRunMean);
        var used = isWholeRunMean ? running : [.. running, .. waiting];

        var voltage = VoltageFigures.Of(series.Setup, running);
        var energy = voltage.Volts?.Times(charge);
        var measure = new Measure(confidence, used.Count, "mean of readings with the meter's accuracy (GUM 5.1)");
        var ofTask = new Measure(confidence, series.Trials.Count, "product of means, first order (GUM 5.1)");
        var wholeRun = isWholeRunMean ? current : charge.Over(runTime);

        var summary = new SupplySummary(
            used,
            isWholeRunMean,
            measure.Of(wholeRun, amperes => Si.Current(amperes), Ends.Positive),
            ofTask.Of(charge, coulombs => Si.Charge(coulombs), Ends.Positive),
            ofTask.Reciprocal(SecondsPerHour, charge, tasks => tasks, Ends.Positive),
            energy is null ? null : EnergyOf(voltage.Volts!, wholeRun, energy, runTime, measure, ofTask),
            NetFigures(series, readings, running[0].Point, wholeRun, runTime, voltage.Volts, ofTask),
            [.. notes, .. voltage.Notes]
        );
        return new SupplyFigures(summary, current, charge, energy);
    }

    private static SupplyEnergy EnergyOf(
        UncertainValue volts,
        UncertainValue amperes,
        UncertainValue joules,
        UncertainValue runTime,
        Measure ofReadings,
        Measure ofTask
    ) =>
        new(
            ofReadings.Of(volts, v => Si.Voltage(v), Ends.Positive),
            ofReadings.Of(volts.Times(amperes), watts => Si.Power(watts), Ends.Positive),
            ofTask.Of(joules, j => Si.Energy(j), Ends.Positive),
            ofTask.Reciprocal(SecondsPerHour, joules, tasks => tasks, Ends.Positive),
            ofTask.Of(joules.Times(runTime), product => product, Ends.Positive)
        );

    /// <summary>Charge per task: the running current over the whole run, or over the part that follows the clock with
    /// the waiting current over the rest.</summary>
    private static UncertainValue WholeRun(
        TrialSeries series,
        UncertainValue runTime,
        (UncertainValue WholeRun, UncertainValue Computing) running,
        List<SupplyReading> waiting,
        UncertainValue? fixedTime,
        List<string> notes,
        out bool isWholeRunMean
    )
    {
        isWholeRunMean = waiting.Count == 0 || fixedTime is null;
        if (isWholeRunMean)
        {
            if (waiting.Count > 0)
            {
                notes.Add(
                    $"Waiting was read too ({Said.Count(waiting.Count, "reading")}), yet the time spent waiting isn't known, since no split by clock found it: the running current counts for the whole run."
                );
            }

            return running.WholeRun.Times(runTime);
        }

        var waitingCurrent = CurrentFigures.Mean(
            waiting,
            $"{series.Setup.Name}|{series.Workload.Name}|waiting",
            $"waiting, {series.Setup.Name}"
        );
        notes.Add(
            $"Charge is put together of the computing current over the time that follows the clock and the waiting current over the {Said.Seconds(fixedTime!.Value)} that don't."
        );
        return running.Computing.Times(runTime.Minus(fixedTime)).Plus(waitingCurrent.Times(fixedTime));
    }

    private static IEnumerable<NetSupply> NetFigures(
        TrialSeries series,
        IReadOnlyList<SupplyReading> readings,
        MeasuringPoint point,
        UncertainValue gross,
        UncertainValue runTime,
        UncertainValue? volts,
        Measure measure
    )
    {
        var idle = readings.Where(r => r.Phase == SupplyPhase.Idle && r.Point == point).ToList();
        if (idle.Count > 0)
        {
            var name = $"idle current of {series.Setup.Name}";
            yield return Net(BaselineKind.Idle, name, idle, $"{series.Setup.Name}|idle");
        }

        var attachments = readings
            .Where(r => r.Phase == SupplyPhase.AttachmentAlone && r.Point == point)
            .GroupBy(r => r.Attachment ?? "attachment", StringComparer.Ordinal);
        foreach (var attachment in attachments)
        {
            yield return Net(
                BaselineKind.Attachment,
                $"{attachment.Key} alone",
                [.. attachment],
                $"{series.Setup.Name}|attachment|{attachment.Key}"
            );
        }

        NetSupply Net(BaselineKind kind, string name, List<SupplyReading> taken, string key)
        {
            var baseline = CurrentFigures.Mean(taken, key, name);
            var current = gross.Minus(baseline);
            var charge = current.Times(runTime);
            var readingsOf = measure with
            {
                Trials = taken.Count,
                Method = "mean of readings with the meter's accuracy (GUM 5.1)",
            };
            var difference = measure with { Method = "difference of means, first order (GUM 5.1)" };
            return new NetSupply(
                kind,
                name,
                readingsOf.Of(
                    baseline,
                    amperes => Si.Current(amperes),
                    Ends.Positive,
                    taken.Count == 1 ? [OneReadingNote] : []
                ),
                (measure with { Method = "ratio of means, first order (GUM 5.1)" }).Of(
                    baseline.Over(gross),
                    share => Si.Ratio(share),
                    Ends.Positive
                ),
                difference.Of(current, amperes => Si.Current(amperes), Ends.Symmetric),
                difference.Of(charge, coulombs => Si.Charge(coulombs), Ends.Symmetric),
                volts is null ? null : difference.Of(volts.Times(charge), joules => Si.Energy(joules), Ends.Symmetric)
            );
        }
    }

    private static List<SupplyReading> Phase(
        IReadOnlyList<SupplyReading> readings,
        SupplyPhase phase,
        TrialSeries series
    ) => [.. readings.Where(r => r.Phase == phase && r.Workload == series.Workload)];

    /// <summary>The readings at the board's input; those behind the regulator only where there are no others, since the
    /// whole board is what is measured.</summary>
    private static List<SupplyReading> AtOnePoint(List<SupplyReading> readings, List<string> notes)
    {
        var before = readings.Where(r => r.Point == MeasuringPoint.BeforeRegulator).ToList();
        if (before.Count == 0)
        {
            if (readings.Count > 0)
            {
                notes.Add(
                    "Current was read behind the regulator: what the regulator itself takes is not in these figures."
                );
            }

            return readings;
        }

        if (before.Count < readings.Count)
        {
            notes.Add(
                $"{Said.Count(readings.Count - before.Count, "reading")} behind the regulator left out: the {before.Count} at the board's input count."
            );
        }

        return before;
    }

    private static void NoteInstruments(List<SupplyReading> running, List<string> notes)
    {
        if (running.Count == 1)
        {
            notes.Add(OneReadingNote);
        }

        if (running.Exists(r => !CurrentFigures.StatesAccuracy(r.MeterRange)))
        {
            notes.Add("The meter's accuracy isn't stated: only scatter and the last digit are in the interval.");
        }
    }
}
