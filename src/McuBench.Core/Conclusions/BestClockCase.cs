namespace McuBench.Core.Conclusions;

/// <summary>Where the charge per task is least, by the signs of what rises with the clock (waiting time at a current that
/// grows with it) and of what falls (computing time at a current that doesn't).</summary>
public enum BestClockCase
{
    /// <summary>Between: what rises and what falls are both there and balance at one clock, which may lie beyond the range.</summary>
    Between,

    /// <summary>The fastest clock: nothing rises.</summary>
    Fastest,

    /// <summary>The slowest clock: nothing falls.</summary>
    Slowest,

    /// <summary>One of the two ends, whichever costs less: both terms came out below zero, and the cost is greatest
    /// between.</summary>
    EitherEnd,

    /// <summary>None: the charge per task doesn't depend on the clock.</summary>
    Flat,
}
