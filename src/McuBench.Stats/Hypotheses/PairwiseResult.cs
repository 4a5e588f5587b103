using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>The comparisons of all pairs of several groups.</summary>
/// <remarks>Immutable; equal when all parts are equal, the pairs one by one.</remarks>
public sealed record PairwiseResult
{
    internal PairwiseResult(ImmutableArray<PairComparison> pairs, double confidence, string method) =>
        (Pairs, Confidence, Method) = (pairs, confidence, method);

    /// <summary>Each pair once, in the order (0, 1), (0, 2), …, (1, 2), ….</summary>
    public ImmutableArray<PairComparison> Pairs { get; }

    /// <summary>The confidence with which all intervals hold at once.</summary>
    public double Confidence { get; }

    /// <summary>The method's name, as in "Tukey-Kramer".</summary>
    public string Method { get; }

    /// <summary>Whether all parts are equal, the pairs one by one.</summary>
    public bool Equals(PairwiseResult? other) =>
        other is not null
        && Confidence.Equals(other.Confidence)
        && string.Equals(Method, other.Method, StringComparison.Ordinal)
        && Pairs.SequenceEqual(other.Pairs);

    /// <summary>A hash of the parts that tell results apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(Confidence, Pairs.Length, Pairs[0]);
}
