namespace McuBench.Core.Conclusions;

/// <summary>What is being worked on while conclusions are drawn.</summary>
public enum ConclusionStage
{
    /// <summary>Each setup and workload on its own.</summary>
    Summaries,

    /// <summary>Run time and current against clock.</summary>
    Clocks,

    /// <summary>Pairs of setups.</summary>
    Comparisons,

    /// <summary>Rankings, and the adjustment of comparisons for their number.</summary>
    Rankings,

    /// <summary>What is wrong with the data.</summary>
    Review,
}
