using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies.Json;

/// <summary>Makes a study of a document whose shape is sound: understands its texts, looks up what refers to what, and
/// fetches the tables. What has a fault is left out.</summary>
internal sealed class StudyAssembler(StudyDocument document, JsonFaults faults, Func<string, Stream>? openTable)
{
    private readonly StudyNames names = new();
    private readonly List<Trial> trials = [];
    private readonly List<SupplyReading> readings = [];
    private int trialsMet;
    private int readingsMet;

    public StudyReadResult Assemble()
    {
        List(document.Boards, names.Boards, part => part.Name, PartAssembler.Board);
        List(document.Setups, names.Setups, part => part.Name, (part, here) => PartAssembler.Setup(part, names, here));
        List(document.Workloads, names.Workloads, part => part.Name, PartAssembler.Workload);
        List(document.Timers, names.Timers, part => part.Name, InstrumentAssembler.Timer);
        List(document.Meters, names.Meters, part => part.Name, InstrumentAssembler.Meter);

        trialsMet = document.Trials.Met;
        foreach (var (value, spot) in document.Trials.Sound)
        {
            if (TrialOf(value, new ObjectFaults(faults, spot)) is { } trial)
            {
                trials.Add(trial);
            }
        }

        readingsMet = document.Readings.Met;
        foreach (var (value, spot) in document.Readings.Sound)
        {
            if (ReadingOf(value, new ObjectFaults(faults, spot)) is { } reading)
            {
                readings.Add(reading);
            }
        }

        var tables = new TableAssembler(names, faults, openTable);
        trialsMet += tables.Trials(document.TrialFiles, trials);
        readingsMet += tables.Readings(document.ReadingFiles, readings);
        return new StudyReadResult(MakeStudy(), faults.All, trialsMet - trials.Count, readingsMet - readings.Count);
    }

    private Study? MakeStudy()
    {
        if (document.Title is not { } title)
        {
            return null;
        }

        return new ObjectFaults(faults, new JsonSpot("$", 0)).Make(
            TransferShape.Document.PropertyNames,
            () =>
                new Study(
                    title,
                    names.Boards.All,
                    names.Setups.All,
                    names.Workloads.All,
                    names.Timers.All,
                    names.Meters.All,
                    trials,
                    readings
                )
                {
                    Description = document.Description,
                    IsInvented = document.Invented,
                }
        );
    }

    private void List<TPart, T>(
        ElementList<TPart> parts,
        NamedThings<T> things,
        Func<TPart, string> nameOf,
        Func<TPart, ObjectFaults, T?> make
    )
        where TPart : class
        where T : class
    {
        things.IsIncomplete = parts.IsIncomplete;
        foreach (var name in parts.FaultyNames)
        {
            things.LeaveOut(name);
        }

        foreach (var (part, spot) in parts.Sound)
        {
            var name = nameOf(part);
            var here = new ObjectFaults(faults, spot);
            if (make(part, here) is not { } thing)
            {
                things.LeaveOut(name);
            }
            else if (!things.Add(name, thing))
            {
                here.Add(
                    "name",
                    name,
                    $"The name {Excerpt.Quoted(name)} stands twice in this list.",
                    "Give each a name of its own."
                );
            }
        }
    }

    private Trial? TrialOf(StudyTransfer.Trial part, ObjectFaults here)
    {
        var runTime = here.Quantity("runTime", part.RunTime, QuantityKind.Duration);
        if (!here.Optional("temperature", part.Temperature, QuantityKind.Temperature, out var temperature))
        {
            return null;
        }

        return runTime is { } seconds
            ? new TrialValues(part.Setup, part.Workload, part.Timer, seconds)
            {
                Order = part.Order,
                Session = part.Session,
                Specimen = part.Specimen,
                Build = part.Build,
                Connection = part.Connection,
                Temperature = temperature,
                OutputChecksum = part.OutputChecksum,
                CycleCount = part.CycleCount,
            }.Make(names, here)
            : null;
    }

    private SupplyReading? ReadingOf(StudyTransfer.Reading part, ObjectFaults here)
    {
        var phase = here.Word<SupplyPhase>("phase", part.Phase);
        var current = here.Quantity("current", part.Current, QuantityKind.Current);
        var sound =
            here.Optional("boardVoltage", part.BoardVoltage, QuantityKind.Voltage, out var voltage)
            & here.Optional("range", part.Range, QuantityKind.Current, out var range)
            & here.Optional("point", part.Point, out MeasuringPoint? point);
        return sound && phase is { } doing && current is { } amperes
            ? new ReadingValues(part.Setup, part.Meter, doing, amperes)
            {
                Workload = part.Workload,
                Point = point,
                BoardVoltage = voltage,
                Range = range,
                Attachment = part.Attachment,
                Session = part.Session,
                Specimen = part.Specimen,
            }.Make(names, here)
            : null;
    }
}
