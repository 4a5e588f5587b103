using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>The values that lie far from the median, measured by the median absolute deviation.</summary>
/// <remarks>Immutable; equal when all parts are equal, lists one by one.</remarks>
public sealed record MedianRuleResult
{
    internal MedianRuleResult(
        double median,
        double deviation,
        double cutoff,
        ImmutableArray<int> outliers,
        int count
    ) => (Median, Deviation, Cutoff, Outliers, Count) = (median, deviation, cutoff, outliers, count);

    /// <summary>The median, in the unit of the data.</summary>
    public double Median { get; }

    /// <summary>The median absolute deviation times 1.4826, above 0, in the unit of the data.</summary>
    public double Deviation { get; }

    /// <summary>How many deviations from the median a value may lie.</summary>
    public double Cutoff { get; }

    /// <summary>The indices of the values that lie farther, ascending; empty where there is none.</summary>
    public ImmutableArray<int> Outliers { get; }

    /// <summary>The number of values.</summary>
    public int Count { get; }

    /// <summary>Whether all parts are equal, lists one by one.</summary>
    public bool Equals(MedianRuleResult? other) =>
        other is not null
        && Median.Equals(other.Median)
        && Deviation.Equals(other.Deviation)
        && Cutoff.Equals(other.Cutoff)
        && Count == other.Count
        && Outliers.SequenceEqual(other.Outliers);

    /// <summary>A hash of the parts that tell results apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(Median, Deviation, Cutoff, Count, Outliers.Length);
}
