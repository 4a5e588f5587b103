using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Trials;

/// <summary>The trials of one setup on one workload with one timer: the unit that everything else is computed from.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record TrialSeries
{
    /// <summary>Gathers trials into a series. O(n log n).</summary>
    /// <param name="trials">At least one trial, all of one setup, workload and timer.</param>
    /// <exception cref="ArgumentException">There is no trial, or two trials differ in setup, workload or timer.</exception>
    public TrialSeries(IEnumerable<Trial> trials)
    {
        var all = ValueList<Trial>.Of(trials, "Trials", nameof(trials));
        if (all.Count == 0)
        {
            throw new ArgumentException("A series must hold at least one trial; the list was empty.", nameof(trials));
        }

        Setup = all[0].Setup;
        Workload = all[0].Workload;
        Timer = all[0].Timer;
        for (var i = 1; i < all.Count; i++)
        {
            if (all[i].Setup != Setup || all[i].Workload != Workload || all[i].Timer != Timer)
            {
                throw new ArgumentException(
                    $"A series must be of one setup, workload and timer ({Setup.Name}, {Workload.Name}, {Timer.Name}); item {i} was of {all[i].Setup.Name}, {all[i].Workload.Name}, {all[i].Timer.Name}.",
                    nameof(trials)
                );
            }
        }

        // Trials of unknown order keep the place they were given in, after those whose order is known.
        var inOrder = all.OrderBy(t => t.Order ?? int.MaxValue).ToArray();
        Trials = ValueList<Trial>.Of(inOrder.Where(t => t.IsResult), "Trials", nameof(trials));
        NotResults = ValueList<Trial>.Of(inOrder.Where(t => !t.IsResult), "Trials", nameof(trials));
        RunTimes = ValueList<Duration>.Of(Trials.Select(t => t.RunTime), "Run times", nameof(trials));
    }

    /// <summary>What the trials were run on.</summary>
    public Setup Setup { get; }

    /// <summary>What was executed.</summary>
    public Workload Workload { get; }

    /// <summary>What timed them.</summary>
    public TrialTimer Timer { get; }

    /// <summary>The trials that count as results, by their order where it is known. May be empty, where every output was wrong.</summary>
    public IReadOnlyList<Trial> Trials { get; }

    /// <summary>The trials whose output had the wrong checksum: kept, shown, never averaged.</summary>
    public IReadOnlyList<Trial> NotResults { get; }

    /// <summary>The run times of <see cref="Trials"/>, in their order.</summary>
    public IReadOnlyList<Duration> RunTimes { get; }

    /// <summary>Makes a series of bare run times, taken in the order given.</summary>
    /// <param name="setup">What they were run on.</param>
    /// <param name="workload">What was executed.</param>
    /// <param name="timer">What timed them.</param>
    /// <param name="runTimes">At least one time, each above zero.</param>
    /// <exception cref="ArgumentException">There is no run time.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A run time is zero or negative.</exception>
    public static TrialSeries Of(Setup setup, Workload workload, TrialTimer timer, IEnumerable<Duration> runTimes)
    {
        ArgumentNullException.ThrowIfNull(runTimes);
        return new TrialSeries(runTimes.Select((time, i) => new Trial(setup, workload, timer, time) { Order = i + 1 }));
    }

    /// <summary>Makes a series of run times as they were written down: "2.4 s", "412.1 ms".</summary>
    /// <param name="setup">What they were run on.</param>
    /// <param name="workload">What was executed.</param>
    /// <param name="timer">What timed them.</param>
    /// <param name="runTimes">At least one time with its unit, each above zero.</param>
    /// <exception cref="QuantityFormatException">A text is not a time with its unit.</exception>
    public static TrialSeries Of(Setup setup, Workload workload, TrialTimer timer, params IEnumerable<string> runTimes)
    {
        ArgumentNullException.ThrowIfNull(runTimes);
        return Of(setup, workload, timer, runTimes.Select(text => QuantityText.ParseDuration(text)));
    }
}
