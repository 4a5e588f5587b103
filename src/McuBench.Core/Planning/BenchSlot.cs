using McuBench.Core.Boards;
using McuBench.Core.Trials;

namespace McuBench.Core.Planning;

/// <summary>One thing that a bench runs again and again: a workload on a setup, timed by a timer, on a specimen.</summary>
/// <remarks>Immutable; equal when all properties are equal.</remarks>
public sealed record BenchSlot
{
    /// <summary>Makes a slot.</summary>
    /// <param name="setup">What it runs on.</param>
    /// <param name="workload">What is executed.</param>
    /// <param name="timer">What times it.</param>
    /// <param name="specimen">Which physical board, where several of a model are benched.</param>
    public BenchSlot(Setup setup, Workload workload, TrialTimer timer, string? specimen = null)
    {
        Setup = Require.Given(setup, nameof(setup));
        Workload = Require.Given(workload, nameof(workload));
        Timer = Require.Given(timer, nameof(timer));
        Specimen = Require.OptionalName(specimen, "Specimen", nameof(specimen));
    }

    /// <summary>What it runs on.</summary>
    public Setup Setup { get; }

    /// <summary>What is executed.</summary>
    public Workload Workload { get; }

    /// <summary>What times it.</summary>
    public TrialTimer Timer { get; }

    /// <summary>Which physical board; absent where it isn't said.</summary>
    public string? Specimen { get; }

    /// <summary>Whether the trial is one of this slot's.</summary>
    /// <param name="trial">The trial.</param>
    public bool Holds(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return trial.Setup == Setup
            && trial.Workload == Workload
            && trial.Timer == Timer
            && string.Equals(trial.Specimen, Specimen, StringComparison.Ordinal);
    }

    /// <summary>Setup, workload and specimen, by name.</summary>
    public override string ToString() =>
        Specimen is null ? $"{Setup.Name}, {Workload.Name}" : $"{Setup.Name}, {Workload.Name}, specimen {Specimen}";
}
