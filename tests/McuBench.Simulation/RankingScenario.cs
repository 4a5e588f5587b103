namespace McuBench.Simulation;

/// <summary>What a simulated study of several boards is like.</summary>
public sealed record RankingScenario
{
    /// <summary>How many boards.</summary>
    public required int Boards { get; init; }

    /// <summary>Trials of each.</summary>
    public required int Trials { get; init; }

    /// <summary>The timer's step over the standard deviation of trials; 0 is a timer a millionth as coarse.</summary>
    public double StepOverSpread { get; init; }

    /// <summary>By how many standard deviations of trials the second half of the boards is slower.</summary>
    public double Apart { get; init; }

    /// <summary>Workloads that all boards execute, in the same order of boards.</summary>
    public int Workloads { get; init; } = 1;

    /// <summary>The margin stated, in standard deviations of trials; 0 for none.</summary>
    public double Margin { get; init; }

    /// <summary>The spread of the boards' true run times, drawn anew for each study, in standard errors of a mean; 0 for
    /// boards that are as <see cref="Apart"/> says.</summary>
    public double Drawn { get; init; }
}
