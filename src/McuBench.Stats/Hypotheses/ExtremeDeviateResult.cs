using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of the generalized extreme studentized deviate test.</summary>
/// <remarks>Immutable; equal when all parts are equal, lists one by one.</remarks>
public sealed record ExtremeDeviateResult
{
    internal ExtremeDeviateResult(
        ImmutableArray<ExtremeDeviate> steps,
        int outlierCount,
        int count,
        double level,
        ImmutableArray<string> notes
    ) => (Steps, OutlierCount, Count, Level, Notes) = (steps, outlierCount, count, level, notes);

    /// <summary>The steps in the order in which values were put aside, as many as outliers were looked for; fewer where the
    /// values that are left are all equal.</summary>
    public ImmutableArray<ExtremeDeviate> Steps { get; }

    /// <summary>How many outliers there are: the number of the last step whose statistic is above its critical value, whatever
    /// the steps before it say.</summary>
    public int OutlierCount { get; }

    /// <summary>The indices of the outliers, the farthest first.</summary>
    public ImmutableArray<int> Outliers => [.. Steps.Take(OutlierCount).Select(step => step.Index)];

    /// <summary>The number of values.</summary>
    public int Count { get; }

    /// <summary>The level of the test.</summary>
    public double Level { get; }

    /// <summary>What a reader of the result has to know besides; empty where there is nothing.</summary>
    public ImmutableArray<string> Notes { get; }

    /// <summary>Whether all parts are equal, lists one by one.</summary>
    public bool Equals(ExtremeDeviateResult? other) =>
        other is not null
        && OutlierCount == other.OutlierCount
        && Count == other.Count
        && Level.Equals(other.Level)
        && Steps.SequenceEqual(other.Steps)
        && Notes.SequenceEqual(other.Notes, StringComparer.Ordinal);

    /// <summary>A hash of the parts that tell results apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(OutlierCount, Count, Level, Steps.Length, Steps[0]);
}
