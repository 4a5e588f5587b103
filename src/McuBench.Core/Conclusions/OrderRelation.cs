namespace McuBench.Core.Conclusions;

/// <summary>How the trials of two setups lie to each other in the order in which they were run.</summary>
internal enum OrderRelation
{
    /// <summary>The order isn't known.</summary>
    NotKnown,

    /// <summary>They are mixed, so that a drift of the bench acts on both alike.</summary>
    Mixed,

    /// <summary>All trials of one came before all of the other.</summary>
    OneBeforeTheOther,

    /// <summary>Trials of one came earlier than those of the other by more than a random order would bring about.</summary>
    OneMostlyBeforeTheOther,

    /// <summary>No session holds trials of both.</summary>
    SessionsApart,
}
