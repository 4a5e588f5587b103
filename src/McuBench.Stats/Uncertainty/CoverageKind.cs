namespace McuBench.Stats.Uncertainty;

/// <summary>Which of the intervals of a given coverage is meant (gum-s1-2008, 3.13 to 3.16).</summary>
public enum CoverageKind
{
    /// <summary>Probabilistically symmetric: as much probability below the interval as above it.</summary>
    Symmetric,

    /// <summary>The shortest of all, for results that lean to one side.</summary>
    Shortest,
}
