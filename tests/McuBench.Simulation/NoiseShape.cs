namespace McuBench.Simulation;

/// <summary>How run times scatter about their mean; each shape has mean 0 and standard deviation 1.</summary>
public enum NoiseShape
{
    /// <summary>Normal.</summary>
    Normal,

    /// <summary>A gamma distribution of shape 4, skewness 1: waiting for several things that each take their time.</summary>
    Skewed,

    /// <summary>Normal, and in one trial of twenty a delay of five standard deviations on average: an interrupt.</summary>
    Contaminated,
}
