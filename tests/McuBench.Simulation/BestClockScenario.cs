namespace McuBench.Simulation;

/// <summary>A kind of study of one invented board at several clocks, with its current read by phase or over whole runs.</summary>
public sealed record BestClockScenario
{
    /// <summary>The clocks, in megahertz, lowest first.</summary>
    public required IReadOnlyList<double> Megahertz { get; init; }

    /// <summary>Trials a clock, and readings of current a clock and phase.</summary>
    public required int Trials { get; init; }

    /// <summary>The standard deviation of current readings, relative to themselves.</summary>
    public double CurrentSpread { get; init; } = 0.003;

    /// <summary>The meter's gain is off by up to this share, one error for all readings; its offset by as much of a hundredth
    /// of its range, another for each clock and phase.</summary>
    public double Accuracy { get; init; }

    /// <summary>Whether currents are read by phase; where not, waiting and computing draw alike.</summary>
    public bool HasPhases { get; init; } = true;

    /// <summary>Scenarios of the page.</summary>
    public static IReadOnlyList<BestClockScenario> All { get; } =
    [
        .. from clocks in new double[][] { [100, 400], [100, 200, 400], [80, 160, 240, 320] }
        from trials in new[] { 3, 10 }
        from spread in new[] { 0.003, 0.01 }
        select new BestClockScenario
        {
            Megahertz = clocks,
            Trials = trials,
            CurrentSpread = spread,
        },
        .. from trials in new[] { 3, 10 }
        select new BestClockScenario
        {
            Megahertz = [100, 200, 400],
            Trials = trials,
            Accuracy = 0.01,
        },
        .. from trials in new[] { 3, 10 }
        select new BestClockScenario
        {
            Megahertz = [100, 200, 400],
            Trials = trials,
            HasPhases = false,
        },
    ];
}
