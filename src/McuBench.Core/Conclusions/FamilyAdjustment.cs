namespace McuBench.Core.Conclusions;

/// <summary>What can be claimed of each comparison of a family so that the family makes a false claim with a chance of at
/// most one less the confidence.</summary>
internal static class FamilyAdjustment
{
    public const string Method =
        "p-values of Student t on logarithms, stepped down over the family (Holm; where a margin is stated, with Shaffer's logic); simultaneous intervals after Bonferroni";

    /// <summary>The claims, in order, and how many comparisons share the chance. O(n log n).</summary>
    public static (IReadOnlyList<AdjustedClaim> Claims, int Comparisons) Of(
        IReadOnlyList<QuantityComparison> family,
        double confidence
    )
    {
        PairEvidence?[] evidence = [.. family.Select(PairEvidence.Of)];
        PairEvidence[] known = [.. evidence.OfType<PairEvidence>()];
        var adjusted = StepDown.Adjust([.. known.Select(e => (e.Difference, e.Equality))]);
        var claims = new AdjustedClaim[family.Count];
        var next = 0;
        for (var i = 0; i < claims.Length; i++)
        {
            if (evidence[i] is not { } e)
            {
                claims[i] = new AdjustedClaim(Verdict.NoVerdict, null);
                continue;
            }

            var (difference, equality) = adjusted[next++];
            var (lower, upper) = e.Ends((1 - confidence) / known.Length);
            claims[i] = new AdjustedClaim(
                VerdictOf(difference, equality, 1 - confidence),
                new AdjustedFigures(e.Difference, difference, equality, lower, upper)
            );
        }

        return (claims, known.Length);
    }

    private static Verdict VerdictOf(double difference, double? equality, double level) =>
        (difference < level, equality < level) switch
        {
            (true, true) => Verdict.DifferentWithinMargin,
            (true, false) => Verdict.Different,
            (false, true) => Verdict.EqualWithinMargin,
            _ => Verdict.NotResolved,
        };
}

/// <summary>What can be claimed of one comparison of a family; without figures where it has no verdict.</summary>
internal sealed record AdjustedClaim(Verdict Verdict, AdjustedFigures? Figures);

/// <summary>The figures of a comparison within its family.</summary>
internal sealed record AdjustedFigures(
    double Difference,
    double AdjustedDifference,
    double? AdjustedEquality,
    double Lower,
    double Upper
);
