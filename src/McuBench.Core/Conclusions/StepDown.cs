namespace McuBench.Core.Conclusions;

/// <summary>Adjusts the p-values of many pairs, each with a hypothesis of no difference and, where a margin was stated,
/// one of a difference beyond it.</summary>
/// <remarks>
/// Holm's method (holm-1979) with what logic adds (shaffer-1986): of a pair's two hypotheses at most one is true, so at
/// no step can more be true than there are pairs with a hypothesis left. With no margin this is Holm's method itself.
/// The chance of any false rejection is at most the level, whatever the dependence.
/// </remarks>
internal static class StepDown
{
    /// <summary>The adjusted p-values, in order. O(n log n).</summary>
    /// <param name="pairs">Each pair's p-value of no difference, and that of a difference beyond the margin or null.</param>
    public static IReadOnlyList<(double Difference, double? Equality)> Adjust(
        IReadOnlyList<(double Difference, double? Equality)> pairs
    )
    {
        var steps = pairs
            .SelectMany((p, i) => Hypotheses(p, i))
            .OrderBy(h => h.PValue)
            .ThenBy(h => h.Pair)
            .ThenBy(h => h.IsEquality)
            .ToArray();
        var open = pairs.Select(p => p.Equality is null ? 1 : 2).ToArray();
        var pairsLeft = pairs.Count;
        var adjusted = pairs.ToArray();
        double last = 0;
        foreach (var (pair, isEquality, p) in steps)
        {
            last = Math.Max(last, Math.Min(1, pairsLeft * p));
            adjusted[pair] = isEquality ? (adjusted[pair].Difference, last) : (last, adjusted[pair].Equality);
            open[pair]--;
            if (open[pair] == 0)
            {
                pairsLeft--;
            }
        }

        return adjusted;
    }

    private static IEnumerable<(int Pair, bool IsEquality, double PValue)> Hypotheses(
        (double Difference, double? Equality) pair,
        int index
    )
    {
        yield return (index, false, pair.Difference);
        if (pair.Equality is { } equality)
        {
            yield return (index, true, equality);
        }
    }
}
