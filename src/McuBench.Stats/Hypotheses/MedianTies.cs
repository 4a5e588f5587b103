namespace McuBench.Stats.Hypotheses;

/// <summary>What the runs test does with values equal to the median.</summary>
public enum MedianTies
{
    /// <summary>Leaves them out, so that neither side gains.</summary>
    LeaveOut,

    /// <summary>Takes them as above, as the NIST handbook does.</summary>
    CountAsAbove,
}
