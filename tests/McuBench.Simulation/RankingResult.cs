namespace McuBench.Simulation;

/// <summary>What many studies of several boards came to.</summary>
public sealed record RankingResult
{
    /// <summary>The scenario.</summary>
    public required RankingScenario Scenario { get; init; }

    /// <summary>How many studies.</summary>
    public required int Studies { get; init; }

    /// <summary>The share of studies with at least one false claim among the adjusted ones.</summary>
    public required double FalseAdjusted { get; init; }

    /// <summary>The share of studies with at least one false claim among the unadjusted ones.</summary>
    public required double FalseUnadjusted { get; init; }

    /// <summary>The share of studies in which all simultaneous intervals held at once.</summary>
    public required double AllHeld { get; init; }

    /// <summary>The share of truly different pairs that were told apart after adjustment; absent where there are none.</summary>
    public required double? FoundAdjusted { get; init; }

    /// <summary>The same before adjustment.</summary>
    public required double? FoundUnadjusted { get; init; }

    /// <summary>By tenths of the chance of being first that a study gave: how many boards were given it, and the share
    /// of them that truly were first.</summary>
    public required IReadOnlyList<(int Count, double First)> Chances { get; init; }
}
