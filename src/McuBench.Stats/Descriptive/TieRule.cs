namespace McuBench.Stats.Descriptive;

/// <summary>Which rank equal values get.</summary>
public enum TieRule
{
    /// <summary>All of them the mean of the ranks that they take up: what rank tests use.</summary>
    Average,

    /// <summary>All of them the least of the ranks that they take up, as in sport.</summary>
    Minimum,

    /// <summary>All of them the greatest of the ranks that they take up.</summary>
    Maximum,

    /// <summary>Ranks of their own, in the order given.</summary>
    InOrder,

    /// <summary>All of them one rank, and the next value the rank after it.</summary>
    Dense,
}
