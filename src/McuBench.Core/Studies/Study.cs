using McuBench.Core.Boards;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies;

/// <summary>
/// A whole study: the boards and setups, the workloads, the instruments, and every trial and supply reading taken.
/// Nothing is averaged or dropped here; conclusions are drawn from it, never written into it.
/// </summary>
/// <remarks>
/// Names are distinct within their list, and whatever a trial or reading refers to stands in the study's lists.
/// Immutable; equal when all lists are equal in order. Safe to use from many threads.
/// </remarks>
public sealed record Study
{
    /// <summary>Makes a study of its parts. O(n) in trials and readings.</summary>
    /// <param name="title">What it is called.</param>
    /// <param name="boards">The boards, names distinct.</param>
    /// <param name="setups">The setups, names distinct, each of one of the boards.</param>
    /// <param name="workloads">The workloads, names distinct.</param>
    /// <param name="timers">The timers, names distinct.</param>
    /// <param name="meters">The meters, names distinct; empty where no supply was read.</param>
    /// <param name="trials">The trials, each of one of the setups, workloads and timers.</param>
    /// <param name="readings">The supply readings, each of one of the setups and meters, and workloads where it names one.</param>
    /// <exception cref="ArgumentException">Two things of a kind share a name, or something refers to a thing that isn't listed.</exception>
    public Study(
        string title,
        IEnumerable<Board> boards,
        IEnumerable<Setup> setups,
        IEnumerable<Workload> workloads,
        IEnumerable<TrialTimer> timers,
        IEnumerable<Meter> meters,
        IEnumerable<Trial> trials,
        IEnumerable<SupplyReading> readings
    )
    {
        Title = title;
        Boards = ValueList<Board>.Of(boards, "Boards", nameof(boards));
        Setups = ValueList<Setup>.Of(setups, "Setups", nameof(setups));
        Workloads = ValueList<Workload>.Of(workloads, "Workloads", nameof(workloads));
        Timers = ValueList<TrialTimer>.Of(timers, "Timers", nameof(timers));
        Meters = ValueList<Meter>.Of(meters, "Meters", nameof(meters));
        Trials = ValueList<Trial>.Of(trials, "Trials", nameof(trials));
        Readings = ValueList<SupplyReading>.Of(readings, "Supply readings", nameof(readings));

        var knownBoards = Listed(Boards, board => board.Name, "Board", nameof(boards));
        var knownSetups = Listed(Setups, setup => setup.Name, "Setup", nameof(setups));
        var knownWorkloads = Listed(Workloads, workload => workload.Name, "Workload", nameof(workloads));
        var knownTimers = Listed(Timers, timer => timer.Name, "Timer", nameof(timers));
        var knownMeters = Listed(Meters, meter => meter.Name, "Meter", nameof(meters));

        foreach (var setup in Setups)
        {
            Known(knownBoards, setup.Board, setup.Board.Name, $"Setup \"{setup.Name}\"", "board", nameof(setups));
        }

        for (var i = 0; i < Trials.Count; i++)
        {
            var trial = Trials[i];
            Known(knownSetups, trial.Setup, trial.Setup.Name, Place("Trial", i), "setup", nameof(trials));
            Known(knownWorkloads, trial.Workload, trial.Workload.Name, Place("Trial", i), "workload", nameof(trials));
            Known(knownTimers, trial.Timer, trial.Timer.Name, Place("Trial", i), "timer", nameof(trials));
        }

        for (var i = 0; i < Readings.Count; i++)
        {
            var reading = Readings[i];
            Known(knownSetups, reading.Setup, reading.Setup.Name, Place("Reading", i), "setup", nameof(readings));
            Known(knownMeters, reading.Meter, reading.Meter.Name, Place("Reading", i), "meter", nameof(readings));
            if (reading.Workload is { } workload)
            {
                Known(knownWorkloads, workload, workload.Name, Place("Reading", i), "workload", nameof(readings));
            }
        }
    }

    /// <summary>What it is called.</summary>
    public string Title
    {
        get;
        init => field = Require.Name(value, "Study's title", nameof(Title));
    }

    /// <summary>What it is about, when said.</summary>
    public string? Description
    {
        get;
        init => field = Require.OptionalDescription(value, "Study's description", nameof(Description));
    }

    /// <summary>Whether its data are invented, as in a demonstration; reports then say so.</summary>
    public bool IsInvented { get; init; }

    /// <summary>The boards, names distinct.</summary>
    public IReadOnlyList<Board> Boards { get; }

    /// <summary>The setups, names distinct.</summary>
    public IReadOnlyList<Setup> Setups { get; }

    /// <summary>The workloads, names distinct.</summary>
    public IReadOnlyList<Workload> Workloads { get; }

    /// <summary>The timers, names distinct.</summary>
    public IReadOnlyList<TrialTimer> Timers { get; }

    /// <summary>The meters, names distinct; empty where no supply was read.</summary>
    public IReadOnlyList<Meter> Meters { get; }

    /// <summary>Every trial, in the order given.</summary>
    public IReadOnlyList<Trial> Trials { get; }

    /// <summary>Every supply reading, in the order given.</summary>
    public IReadOnlyList<SupplyReading> Readings { get; }

    /// <summary>Makes a study of trials and readings alone; what they refer to is listed in order of first appearance.</summary>
    /// <param name="title">What it is called.</param>
    /// <param name="trials">The trials.</param>
    /// <param name="readings">The supply readings, if any.</param>
    /// <exception cref="ArgumentException">Two different things of a kind share a name.</exception>
    public static Study FromTrials(string title, IEnumerable<Trial> trials, IEnumerable<SupplyReading>? readings = null)
    {
        var allTrials = ValueList<Trial>.Of(trials, "Trials", nameof(trials));
        var allReadings = ValueList<SupplyReading>.Of(readings ?? [], "Supply readings", nameof(readings));
        var setups = allTrials.Select(t => t.Setup).Concat(allReadings.Select(r => r.Setup)).Distinct().ToArray();
        return new Study(
            title,
            setups.Select(s => s.Board).Distinct(),
            setups,
            allTrials.Select(t => t.Workload).Concat(allReadings.Select(r => r.Workload).OfType<Workload>()).Distinct(),
            allTrials.Select(t => t.Timer).Distinct(),
            allReadings.Select(r => r.Meter).Distinct(),
            allTrials,
            allReadings
        );
    }

    /// <summary>The trials gathered by setup, workload and timer, in order of the study's lists. O(n log n), computed at
    /// each call.</summary>
    public IReadOnlyList<TrialSeries> Series()
    {
        var workloads = Places(Workloads, workload => workload.Name);
        var setups = Places(Setups, setup => setup.Name);
        return
        [
            .. Trials
                .GroupBy(t => (Setup: t.Setup.Name, Workload: t.Workload.Name, Timer: t.Timer.Name))
                .OrderBy(group => workloads[group.Key.Workload])
                .ThenBy(group => setups[group.Key.Setup])
                .Select(group => new TrialSeries(group)),
        ];
    }

    private static Dictionary<string, int> Places<T>(IReadOnlyList<T> items, Func<T, string> name)
    {
        var places = new Dictionary<string, int>(items.Count, StringComparer.Ordinal);
        for (var i = 0; i < items.Count; i++)
        {
            places.Add(name(items[i]), i);
        }

        return places;
    }

    private static string Place(string what, int index) => FormattableString.Invariant($"{what} {index}");

    private static Dictionary<string, T> Listed<T>(
        IReadOnlyList<T> items,
        Func<T, string> name,
        string what,
        string parameter
    )
    {
        var known = new Dictionary<string, T>(items.Count, StringComparer.Ordinal);
        foreach (var item in items)
        {
            if (!known.TryAdd(name(item), item))
            {
                throw new ArgumentException(
                    $"{what} names must be distinct within a study; \"{name(item)}\" stands twice.",
                    parameter
                );
            }
        }

        return known;
    }

    private static void Known<T>(
        Dictionary<string, T> known,
        T item,
        string name,
        string who,
        string what,
        string parameter
    )
        where T : class, IEquatable<T>
    {
        if (!known.TryGetValue(name, out var listed) || !listed.Equals(item))
        {
            throw new ArgumentException(
                $"{who} must refer to a {what} of the study; \"{name}\" is {(listed is null ? "not listed" : "listed with other properties")}.",
                parameter
            );
        }
    }
}
