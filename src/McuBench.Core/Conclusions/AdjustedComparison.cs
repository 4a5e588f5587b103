namespace McuBench.Core.Conclusions;

/// <summary>One comparison among many: what can be claimed of it when all comparisons of its family together shall make a
/// false claim in no more than one less the confidence of studies.</summary>
/// <remarks>
/// <para>Claims rest on the adjusted p-values, which step down (holm-1979), and are never fewer than those of the
/// simultaneous intervals, which do not: a pair may be told apart although its simultaneous interval reaches 1.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record AdjustedComparison
{
    internal AdjustedComparison(SetupComparison comparison, QuantityComparison unadjusted, AdjustedClaim claim)
    {
        var (verdict, figures) = claim;
        Comparison = comparison;
        Unadjusted = unadjusted;
        Verdict = verdict;
        Less = verdict is Verdict.Different or Verdict.DifferentWithinMargin
            ? unadjusted.Ratio.Value < 1
                ? Side.First
                : Side.Second
            : null;
        PValue = figures?.Difference;
        AdjustedPValue = figures?.AdjustedDifference;
        AdjustedPValueOfEquality = figures?.AdjustedEquality;
        Lower = figures?.Lower;
        Upper = figures?.Upper;
    }

    /// <summary>The two setups.</summary>
    public SetupComparison Comparison { get; }

    /// <summary>The same pair by the same quantity as if it were the only one.</summary>
    public QuantityComparison Unadjusted { get; }

    /// <summary>What can be claimed within the family.</summary>
    public Verdict Verdict { get; }

    /// <summary>Which side takes less, where the verdict is a difference; null otherwise.</summary>
    public Side? Less { get; }

    /// <summary>Whether the two are told apart.</summary>
    public bool IsToldApart => Less is not null;

    /// <summary>The two-sided p-value of no difference, unadjusted; null where there is no verdict.</summary>
    public double? PValue { get; }

    /// <summary>The p-value of no difference adjusted for the family: a difference is claimed below one less the
    /// confidence. Null where there is no verdict.</summary>
    public double? AdjustedPValue { get; }

    /// <summary>The p-value of a difference beyond the margin, adjusted for the family: equality within the margin is
    /// claimed below one less the confidence. Null where there is no verdict or no margin was stated.</summary>
    public double? AdjustedPValueOfEquality { get; }

    /// <summary>The lower end of the ratio's simultaneous interval: all intervals of the family hold their truths at once
    /// with at least the confidence (Bonferroni). Null where there is no verdict.</summary>
    public double? Lower { get; }

    /// <summary>The upper end of the ratio's simultaneous interval; null where there is no verdict.</summary>
    public double? Upper { get; }
}
