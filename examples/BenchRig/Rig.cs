using McuBench.Core.Boards;
using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Stats.Planning;

namespace BenchRig;

/// <summary>Runs what the schedule asks for, keeps each trial in the journal, and stops when all is known closely
/// enough.</summary>
public sealed class Rig : IAsyncDisposable
{
    private readonly Study frame;
    private readonly BenchSchedule schedule;
    private readonly IReadOnlyDictionary<BenchSlot, IWire> wires;

    private Rig(Study frame, BenchSchedule schedule, IReadOnlyDictionary<BenchSlot, IWire> wires)
    {
        this.frame = frame;
        this.schedule = schedule;
        this.wires = wires;
    }

    /// <summary>What is run.</summary>
    public BenchSchedule Schedule => schedule;

    /// <summary>Sets a rig up as its file says.</summary>
    /// <exception cref="RigException">The file can't be taken as it is, or names something that the study doesn't have.</exception>
    public static Rig Of(string path)
    {
        var file = RigFile.Read(path);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        try
        {
            var study = StudyFile.Read(Path.Combine(folder, file.Study));
            var ways = file.Wires.ToDictionary(wire => SlotOf(study, wire), wire => WireOf(study, wire, folder));
            var rule = new StopRule(QuantityText.ParseRatio(file.HalfWidth))
            {
                Options = new SequentialOptions { Maximum = file.MostTrials },
            };
            return new Rig(study, new BenchSchedule(ways.Keys, rule, file.Seed), ways);
        }
        catch (Exception fault)
            when (fault is ArgumentException or FormatException or IOException or UnauthorizedAccessException)
        {
            throw new RigException(ExitCode.BadInput, $"{path}: {fault.Message.Split(" (Parameter")[0]}", fault);
        }
    }

    /// <summary>Opens the journal, or begins it.</summary>
    /// <exception cref="RigException">It can't be written, or was begun for another study.</exception>
    public Journal OpenJournal(string path)
    {
        try
        {
            if (!File.Exists(path))
            {
                return Journal.Create(path, frame);
            }

            var journal = Journal.Open(path);
            if (IsOfFrame(journal.ToStudy()))
            {
                return journal;
            }

            journal.Dispose();
            throw new RigException(
                ExitCode.BadInput,
                $"{path} was begun for another study, or the study was changed since; give another journal."
            );
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException)
        {
            throw new RigException(ExitCode.NoJournal, fault.Message, fault);
        }
    }

    /// <summary>Runs until all is known closely enough.</summary>
    /// <param name="journal">Where every trial goes before it counts.</param>
    /// <param name="display">Told of every trial.</param>
    /// <param name="goesOn">Asked whether to go on when something is to be looked at.</param>
    /// <param name="cancellationToken">Stops between trials and while waiting for one.</param>
    /// <exception cref="RigException">A board doesn't answer, the journal can't be written, or the run was
    /// paused.</exception>
    public async Task RunAsync(
        Journal journal,
        IRigDisplay display,
        Func<Finding, bool> goesOn,
        CancellationToken cancellationToken
    )
    {
        var trials = journal.ToStudy().Trials.ToList();
        var look = schedule.Look(trials);
        display.Begin(schedule, look, journal.Cut);
        Pause(look, trials.Count > 0, journal, goesOn);
        while (look.Next is { } slot)
        {
            var trial = await wires[slot].RunAsync(cancellationToken).ConfigureAwait(false) with
            {
                Order = trials.Count + 1,
            };
            Keep(() => journal.Add(trial));
            trials.Add(trial);
            look = schedule.Look(trials);
            display.Acknowledged(trial, look);
            Pause(look, true, journal, goesOn);
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var wire in wires.Values)
        {
            await wire.DisposeAsync().ConfigureAwait(false);
        }
    }

    private static void Pause(BenchLook look, bool mayPause, Journal journal, Func<Finding, bool> goesOn)
    {
        if (!mayPause || look.Pause is not { } finding)
        {
            return;
        }

        if (!goesOn(finding))
        {
            throw new RigException(
                ExitCode.Paused,
                $"Paused. {finding.Subject}: {finding.Evidence} {finding.Advice} Start again with --go-on when you have looked."
            );
        }

        Keep(() => journal.AddNote($"Went on after: {finding.Subject}: {finding.Evidence}"));
    }

    private static void Keep(Action write)
    {
        try
        {
            write();
        }
        catch (IOException fault)
        {
            throw new RigException(ExitCode.NoJournal, fault.Message, fault);
        }
    }

    private static BenchSlot SlotOf(Study frame, WireFile wire) =>
        new(
            Named(frame.Setups, wire.Setup, setup => setup.Name, "setup"),
            Named(frame.Workloads, wire.Workload, workload => workload.Name, "workload"),
            Named(frame.Timers, wire.Timer, timer => timer.Name, "timer"),
            wire.Specimen
        );

    private static IWire WireOf(Study frame, WireFile wire, string folder)
    {
        var slot = SlotOf(frame, wire);
        if (wire.Command is { Count: > 0 } command && wire.Port is null)
        {
            return new CommandWire(slot, command, folder);
        }

        if (wire.Port is not { } port || wire.Pattern is not { } pattern || wire.Command is not null)
        {
            throw new ArgumentException(
                $"The wire to {slot} must have either a port and a pattern, or a command with its arguments."
            );
        }

        return new SerialWire(slot, Path.Combine(folder, port), wire, new LinePattern(pattern));
    }

    private static T Named<T>(IReadOnlyList<T> items, string name, Func<T, string> nameOf, string what) =>
        items.FirstOrDefault(item => string.Equals(nameOf(item), name, StringComparison.Ordinal))
        ?? throw new ArgumentException(
            $"The study has no {what} \"{name}\"; it has {string.Join(", ", items.Select(nameOf))}."
        );

    private bool IsOfFrame(Study study) =>
        study.Setups.SequenceEqual(frame.Setups)
        && study.Workloads.SequenceEqual(frame.Workloads)
        && study.Timers.SequenceEqual(frame.Timers)
        && study.Title == frame.Title;
}
