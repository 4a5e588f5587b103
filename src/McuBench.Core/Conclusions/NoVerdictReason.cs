namespace McuBench.Core.Conclusions;

/// <summary>Why a comparison has no verdict.</summary>
public enum NoVerdictReason
{
    /// <summary>A side has too few trials or readings for its scatter to be known.</summary>
    NoInterval,

    /// <summary>All trials of one side were run before all trials of the other in the same session while run times
    /// drifted: a difference may be the drift's.</summary>
    OrderConfoundedWithDrift,

    /// <summary>The timer takes its time from the clock that differs between the two sides: what it says of one is on
    /// another scale than what it says of the other.</summary>
    TimerFollowsClock,
}
