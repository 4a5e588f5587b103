namespace McuBench.Stats.Distributions;

/// <summary>From which distribution a rank procedure takes its probabilities.</summary>
public enum NullDistribution
{
    /// <summary>The exact one up to a size that each procedure states, the normal one beyond; the result says which.</summary>
    Automatic,

    /// <summary>The exact one, given the ties. Refused where it is out of reach.</summary>
    Exact,

    /// <summary>The normal one that it tends to, with the variance corrected for ties.</summary>
    Normal,
}
