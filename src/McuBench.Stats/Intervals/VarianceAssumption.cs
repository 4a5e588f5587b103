namespace McuBench.Stats.Intervals;

/// <summary>What two populations' variances are taken to be.</summary>
public enum VarianceAssumption
{
    /// <summary>Each its own; degrees of freedom after Satterthwaite.</summary>
    Separate,

    /// <summary>One and the same, estimated from both samples together.</summary>
    Equal,
}
