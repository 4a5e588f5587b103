namespace McuBench.Stats.Coverage;

/// <summary>The shapes of population that procedures are tried on, as a set.</summary>
[Flags]
public enum Shapes
{
    /// <summary>No shape.</summary>
    None = 0,

    /// <summary>Normal.</summary>
    Normal = 1,

    /// <summary>Lognormal: strong skew.</summary>
    Lognormal = 2,

    /// <summary>Normal with one value in ten far above the others.</summary>
    Contaminated = 4,

    /// <summary>Exponential: moderate skew, most values near the lower end.</summary>
    Exponential = 8,

    /// <summary>Normal, read to steps as large as its standard deviation.</summary>
    Tied = 16,

    /// <summary>Normal, with every second group spread three times as much.</summary>
    Unequal = 32,

    /// <summary>All in which every group has the same shape.</summary>
    Alike = Normal | Lognormal | Contaminated | Exponential | Tied,

    /// <summary>Those of <see cref="Alike"/> without ties.</summary>
    Continuous = Normal | Lognormal | Contaminated | Exponential,

    /// <summary>Every one.</summary>
    All = Alike | Unequal,
}
