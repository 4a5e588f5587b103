namespace McuBench.Stats.Intervals;

/// <summary>How a value becomes a reading in whole steps.</summary>
public enum SteppedReading
{
    /// <summary>To the nearest step: a reading stands for the values within half a step on either side of it. A reading
    /// cut to the step below is one that is rounded, half a step too low.</summary>
    Rounded,

    /// <summary>The difference of two counts that start anywhere within a step: a reading stands for the values within a
    /// whole step on either side, the nearer the likelier.</summary>
    RandomStart,
}
