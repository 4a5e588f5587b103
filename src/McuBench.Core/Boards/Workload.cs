using UnitsNet;

namespace McuBench.Core.Boards;

/// <summary>
/// What is executed in a trial: how many work items one run completes, what an item is called, and what a right run
/// puts out.
/// </summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record Workload
{
    /// <summary>Makes a workload.</summary>
    /// <param name="name">Its name, distinct within a study.</param>
    /// <param name="workItemsPerRun">How many work items (iterations, blocks, frames) one run completes, at least 1.</param>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of items is below 1.</exception>
    public Workload(string name, long workItemsPerRun)
    {
        Name = name;
        WorkItemsPerRun = workItemsPerRun;
    }

    /// <summary>Its name, distinct within a study.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Workload's name", nameof(Name));
    }

    /// <summary>How many work items one run completes, at least 1.</summary>
    public long WorkItemsPerRun
    {
        get;
        init => field = Require.AtLeast(value, 1, "Work items per run", nameof(WorkItemsPerRun));
    }

    /// <summary>What one item is called, in the singular: "iteration", "block", "frame".</summary>
    public string ItemName
    {
        get;
        init => field = Require.Name(value, "Work item's name", nameof(ItemName));
    } = "item";

    /// <summary>What the workload does, when said.</summary>
    public string? Description
    {
        get;
        init => field = Require.OptionalDescription(value, "Workload's description", nameof(Description));
    }

    /// <summary>Whether it does all but the work: what its runs take is starting, stopping and calling alone.</summary>
    public bool IsEmpty { get; init; }

    /// <summary>The period with which its load swings, where it does; above zero, in seconds.</summary>
    public Duration? LoadPeriod
    {
        get;
        init => field = value is { } period ? Require.Positive(period, "Load's period", nameof(LoadPeriod)) : null;
    }

    /// <summary>The checksum that a right run's output has, when known; compared letter by letter, case aside.</summary>
    public string? OutputChecksum
    {
        get;
        init => field = Require.OptionalName(value, "Workload's output checksum", nameof(OutputChecksum));
    }
}
