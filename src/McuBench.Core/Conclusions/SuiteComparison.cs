using McuBench.Core.Boards;

namespace McuBench.Core.Conclusions;

/// <summary>Two setups compared over all workloads that both executed: by the geometric mean of their ratios, every
/// workload with the same weight.</summary>
/// <remarks>
/// <para>The interval holds the uncertainty of what was measured on these workloads. It says nothing of others: how far
/// the ratio depends on the workload stands beside it, as the least and greatest ratio and as what leaving out each
/// workload does.</para>
/// <para>Immutable; equal when all properties are equal, lists in order. Safe to use from many threads.</para>
/// </remarks>
public sealed record SuiteComparison
{
    internal SuiteComparison(
        IEnumerable<SetupComparison> members,
        QuantityComparison mean,
        IEnumerable<SuiteWithout> leftOut,
        Verdict adjusted,
        AdjustedFigures? figures
    )
    {
        Members = ValueList<SetupComparison>.Of(members, "Members", nameof(members));
        Mean = mean;
        LeftOut = ValueList<SuiteWithout>.Of(leftOut, "Left out", nameof(leftOut));
        AdjustedVerdict = adjusted;
        AdjustedPValue = figures?.AdjustedDifference;
        Lower = figures?.Lower;
        Upper = figures?.Upper;
    }

    /// <summary>The first setup.</summary>
    public Setup First => Members[0].First.Setup;

    /// <summary>The second setup.</summary>
    public Setup Second => Members[0].Second.Setup;

    /// <summary>The comparisons on the single workloads, at least two.</summary>
    public IReadOnlyList<SetupComparison> Members { get; }

    /// <summary>The geometric mean of the ratios with its interval, and what it says as if it were the only
    /// comparison.</summary>
    public QuantityComparison Mean { get; }

    /// <summary>What can be claimed among all comparisons of the family.</summary>
    public Verdict AdjustedVerdict { get; }

    /// <summary>The p-value of no difference adjusted for the family; null where there is no verdict.</summary>
    public double? AdjustedPValue { get; }

    /// <summary>The lower end of the mean ratio's simultaneous interval (Bonferroni); null where there is no
    /// verdict.</summary>
    public double? Lower { get; }

    /// <summary>The upper end of the mean ratio's simultaneous interval; null where there is no verdict.</summary>
    public double? Upper { get; }

    /// <summary>The same with each workload left out in turn, in order of <see cref="Members"/>.</summary>
    public IReadOnlyList<SuiteWithout> LeftOut { get; }

    /// <summary>The workloads without which the verdict would be another one: where there are any, the mean says little
    /// beyond them.</summary>
    public IEnumerable<Workload> Deciding => LeftOut.Where(w => w.ChangesVerdict).Select(w => w.Workload);
}
