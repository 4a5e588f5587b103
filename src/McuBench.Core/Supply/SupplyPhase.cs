namespace McuBench.Core.Supply;

/// <summary>What the board was doing while its supply was read.</summary>
public enum SupplyPhase
{
    /// <summary>Running the workload, over whole runs: waiting and computing together. Where waiting was read apart and
    /// computing wasn't, it is taken as what the board draws while it computes.</summary>
    Running,

    /// <summary>Inside a run, yet waiting: for a display, a bus, a conversion.</summary>
    Waiting,

    /// <summary>Inside a run, computing: the part that follows the clock, apart from the waits.</summary>
    Computing,

    /// <summary>Between runs, doing nothing.</summary>
    Idle,

    /// <summary>An attachment read alone, apart from the board.</summary>
    AttachmentAlone,
}
