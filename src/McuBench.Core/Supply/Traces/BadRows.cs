namespace McuBench.Core.Supply.Traces;

/// <summary>What becomes of a trace at a row that can't be read.</summary>
public enum BadRows
{
    /// <summary>Reading stops in front of it.</summary>
    Stop,

    /// <summary>It is left out and counted, and what it leaves is a gap: nothing is integrated across it unseen.</summary>
    LeaveOut,
}
