using McuBench.Core.Boards;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Finds the comparison of two summaries of a workload, whichever of them it lists first.</summary>
internal sealed class PairIndex
{
    private readonly Dictionary<(SetupSummary, SetupSummary), SetupComparison> comparisons = new(ByReference.Instance);

    /// <summary>Indexes the comparisons on one workload. O(n) in them.</summary>
    public PairIndex(StudyConclusions conclusions, Workload workload)
    {
        foreach (var comparison in conclusions.Comparisons)
        {
            if (comparison.Workload == workload)
            {
                comparisons.Add((comparison.First, comparison.Second), comparison);
            }
        }
    }

    public SetupComparison? Find(SetupSummary one, SetupSummary other) =>
        comparisons.GetValueOrDefault((one, other)) ?? comparisons.GetValueOrDefault((other, one));

    /// <summary>Summaries are compared by identity, since comparing them trial by trial would cost O(n) a look-up.</summary>
    private sealed class ByReference : IEqualityComparer<(SetupSummary, SetupSummary)>
    {
        public static ByReference Instance { get; } = new();

        public bool Equals((SetupSummary, SetupSummary) x, (SetupSummary, SetupSummary) y) =>
            ReferenceEquals(x.Item1, y.Item1) && ReferenceEquals(x.Item2, y.Item2);

        public int GetHashCode((SetupSummary, SetupSummary) pair) =>
            HashCode.Combine(
                System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(pair.Item1),
                System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(pair.Item2)
            );
    }
}
