namespace McuBench.Core.Conclusions;

/// <summary>Why a comparison has no verdict.</summary>
public enum NoVerdictReason
{
    /// <summary>A side has too few trials or readings for its scatter to be known.</summary>
    NoInterval,

    /// <summary>Trials of one side were run before those of the other, all of them or by more than a random order would
    /// bring about: a drift of the bench would look like a difference, whether or not it shows in either.</summary>
    OrderConfounded,

    /// <summary>No session holds trials of both sides: what changes from one session to the next would look like a
    /// difference.</summary>
    SessionsConfounded,

    /// <summary>The timer takes its time from the clock that differs between the two sides: what it says of one is on
    /// another scale than what it says of the other.</summary>
    TimerFollowsClock,
}
