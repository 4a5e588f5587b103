namespace McuBench.Simulation;

/// <summary>A kind of study of one invented board at several clocks: t = fixed + cycles/f.</summary>
public sealed record ClockScenario
{
    /// <summary>The clocks, in megahertz, lowest first.</summary>
    public required IReadOnlyList<double> Megahertz { get; init; }

    /// <summary>Trials a clock.</summary>
    public required int Trials { get; init; }

    /// <summary>The standard deviation of run times, relative to each clock's own run time.</summary>
    public double Spread { get; init; } = 0.005;

    /// <summary>Whether the scatter is the same number of seconds at every clock, that of the highest one, in place of the
    /// same share.</summary>
    public bool IsAbsolute { get; init; }

    /// <summary>The timer's step over the standard deviation of run times at the highest clock; 0 for a timer that is fine
    /// beside everything.</summary>
    public double StepOverSpread { get; init; }

    /// <summary>Scenarios of the page: two to four clocks, few trials and many, steps from nothing to ten times the scatter.</summary>
    public static IReadOnlyList<ClockScenario> All { get; } =
    [
        .. from clocks in new double[][] { [100, 200], [80, 160, 240], [40, 80, 120, 160] }
        from trials in new[] { 3, 5, 10, 30 }
        from step in new[] { 0, 0.5, 1, 3, 10 }
        select new ClockScenario
        {
            Megahertz = clocks,
            Trials = trials,
            StepOverSpread = step,
        },
        .. from clocks in new double[][] { [100, 200], [40, 80, 120, 160] }
        from trials in new[] { 3, 10 }
        select new ClockScenario
        {
            Megahertz = clocks,
            Trials = trials,
            IsAbsolute = true,
        },
    ];
}
