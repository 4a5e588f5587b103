namespace McuBench.Core.Conclusions;

/// <summary>The figures behind a summary, in SI units, each with its sources of uncertainty.</summary>
internal sealed record SummaryWorkings
{
    /// <summary>The mean run time, in seconds.</summary>
    public required UncertainValue RunTime { get; init; }

    /// <summary>The clock's frequency, in hertz.</summary>
    public required UncertainValue Clock { get; init; }

    /// <summary>The circumstances of the trials.</summary>
    public required TrialFacts Facts { get; init; }

    /// <summary>The currents by phase, where they were read.</summary>
    public PhaseFigures Phases { get; init; } = PhaseFigures.None;

    /// <summary>The current while running, in amperes, where it was read.</summary>
    public UncertainValue? Running { get; init; }

    /// <summary>The charge per task, in coulombs, where current was read.</summary>
    public UncertainValue? Charge { get; init; }

    /// <summary>The energy per task, in joules, where a voltage is known too.</summary>
    public UncertainValue? Energy { get; init; }

    /// <summary>Cycles per work item, time that doesn't follow the clock included.</summary>
    public UncertainValue CyclesPerItem(long items) => RunTime.Times(Clock).Times(1.0 / items);
}
