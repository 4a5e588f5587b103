using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Trials;

/// <summary>One timed execution of a workload on a setup.</summary>
/// <remarks>
/// The circumstances are optional, since benches do not always know them; what is known makes conclusions wider in
/// reach (several specimens) or finds faults (drift over the order).
/// Immutable; equal when all properties are equal. Safe to use from many threads.
/// </remarks>
public sealed record Trial
{
    /// <summary>Makes a trial.</summary>
    /// <param name="setup">What it was run on.</param>
    /// <param name="workload">What was executed.</param>
    /// <param name="timer">What timed it.</param>
    /// <param name="runTime">The time read, above zero. A run too short for its timer has no reading: lengthen the run.</param>
    /// <exception cref="ArgumentOutOfRangeException">The run time is zero or negative.</exception>
    public Trial(Setup setup, Workload workload, TrialTimer timer, Duration runTime)
    {
        Setup = setup;
        Workload = workload;
        Timer = timer;
        RunTime = runTime;
    }

    /// <summary>What it was run on.</summary>
    public Setup Setup
    {
        get;
        init => field = Require.Given(value, nameof(Setup));
    }

    /// <summary>What was executed.</summary>
    public Workload Workload
    {
        get;
        init => field = Require.Given(value, nameof(Workload));
    }

    /// <summary>What timed it.</summary>
    public TrialTimer Timer
    {
        get;
        init => field = Require.Given(value, nameof(Timer));
    }

    /// <summary>The time read, above zero, in seconds.</summary>
    public Duration RunTime
    {
        get;
        init => field = Require.Positive(value, "Run time", nameof(RunTime));
    }

    /// <summary>Its place in the order in which the study's trials were run, from 1; absent when unknown.</summary>
    public int? Order
    {
        get;
        init => field = value is { } order ? (int)Require.AtLeast(order, 1, "Trial's order", nameof(Order)) : null;
    }

    /// <summary>The sitting it was taken in, when known.</summary>
    public string? Session
    {
        get;
        init => field = Require.OptionalName(value, "Session", nameof(Session));
    }

    /// <summary>Which physical board of the model ran it, when known.</summary>
    public string? Specimen
    {
        get;
        init => field = Require.OptionalName(value, "Specimen", nameof(Specimen));
    }

    /// <summary>Which build or flash of the program ran, when known: where code comes to lie moves run times.</summary>
    public string? Build
    {
        get;
        init => field = Require.OptionalName(value, "Build", nameof(Build));
    }

    /// <summary>The cable and port in use, when known.</summary>
    public string? Connection
    {
        get;
        init => field = Require.OptionalName(value, "Cable and port", nameof(Connection));
    }

    /// <summary>The temperature around the board or on it, in kelvins, when known.</summary>
    public Temperature? Temperature
    {
        get;
        init => field = value is { } given ? Si.Normalized(given, nameof(Temperature)) : null;
    }

    /// <summary>The checksum of what the run put out, when known.</summary>
    public string? OutputChecksum
    {
        get;
        init => field = Require.OptionalName(value, "Output checksum", nameof(OutputChecksum));
    }

    /// <summary>How many cycles of the core's clock the board counted while it ran; at least 1; absent when not counted.</summary>
    public long? CycleCount
    {
        get;
        init =>
            field = value is { } count ? Require.AtLeast(count, 1, "Trial's cycle count", nameof(CycleCount)) : null;
    }

    /// <summary>Whether this run counts as a result: false only where both the trial's and the workload's checksum are
    /// known and differ. A run with a wrong output did something else, however fast.</summary>
    public bool IsResult =>
        OutputChecksum is null
        || Workload.OutputChecksum is null
        || string.Equals(OutputChecksum, Workload.OutputChecksum, StringComparison.OrdinalIgnoreCase);
}
