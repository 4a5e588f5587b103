namespace McuBench.Core.Supply;

/// <summary>What the board was doing while its supply was read.</summary>
public enum SupplyPhase
{
    /// <summary>Running the workload.</summary>
    Running,

    /// <summary>Inside a run, yet waiting: for a display, a bus, a conversion.</summary>
    Waiting,

    /// <summary>Between runs, doing nothing.</summary>
    Idle,

    /// <summary>An attachment read alone, apart from the board.</summary>
    AttachmentAlone,
}
