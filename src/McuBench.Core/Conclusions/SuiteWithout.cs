using McuBench.Core.Boards;

namespace McuBench.Core.Conclusions;

/// <summary>A comparison over a suite of workloads with one of them left out.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record SuiteWithout
{
    internal SuiteWithout(Workload workload, QuantityComparison mean, bool changesVerdict)
    {
        Workload = workload;
        Mean = mean;
        ChangesVerdict = changesVerdict;
    }

    /// <summary>What is left out.</summary>
    public Workload Workload { get; }

    /// <summary>The geometric mean of the other workloads' ratios, and what it says.</summary>
    public QuantityComparison Mean { get; }

    /// <summary>Whether a difference comes, goes or changes sides without this workload.</summary>
    public bool ChangesVerdict { get; }
}
