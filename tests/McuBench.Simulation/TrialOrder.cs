namespace McuBench.Simulation;

/// <summary>The order in which the trials of the two boards are taken.</summary>
public enum TrialOrder
{
    /// <summary>Any order as likely as another.</summary>
    Random,

    /// <summary>All of the first board, then all of the second.</summary>
    OneAfterTheOther,
}
