using McuBench.Core.Boards;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Capture;

/// <summary>The figures of one line.</summary>
/// <remarks>Immutable; equal when all properties are equal. What the pattern has no group for, or the line leaves out, is
/// absent.</remarks>
public sealed record LineReading
{
    internal LineReading() { }

    /// <summary>The run time, above zero, in seconds: as the line says it, or ticks over the tick rate.</summary>
    public Duration? RunTime { get; internal init; }

    /// <summary>The count of ticks.</summary>
    public ulong? Ticks { get; internal init; }

    /// <summary>How many work items the run did.</summary>
    public long? Items { get; internal init; }

    /// <summary>The board's own number of the run.</summary>
    public long? Sequence { get; internal init; }

    /// <summary>What the marker group caught.</summary>
    public string? Marker { get; internal init; }

    /// <summary>The checksum of the run's output.</summary>
    public string? Checksum { get; internal init; }

    /// <summary>Makes a trial of it.</summary>
    /// <param name="setup">What it was run on.</param>
    /// <param name="workload">What was executed.</param>
    /// <param name="timer">What timed it.</param>
    /// <exception cref="InvalidOperationException">There is no run time, or the board did another number of work items
    /// than the workload says.</exception>
    public Trial ToTrial(Setup setup, Workload workload, TrialTimer timer)
    {
        ArgumentNullException.ThrowIfNull(workload);
        if (RunTime is not { } time)
        {
            throw new InvalidOperationException(
                "A trial needs a run time; the line gave none. Ticks become one where the pattern has a tick rate."
            );
        }

        if (Items is { } items && items != workload.WorkItemsPerRun)
        {
            throw new InvalidOperationException(
                FormattableString.Invariant(
                    $"The board did {items} work items, and workload \"{workload.Name}\" says {workload.WorkItemsPerRun}: name the workload that was run."
                )
            );
        }

        return new Trial(setup, workload, timer, time) { OutputChecksum = Checksum };
    }
}
