using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>The p-values of several tests, adjusted for there being several.</summary>
/// <remarks>Immutable; equal when the method and all values are equal.</remarks>
public sealed record AdjustedPValues
{
    internal AdjustedPValues(ImmutableArray<double> values, AdjustmentMethod method) =>
        (Values, Method) = (values, method);

    /// <summary>The adjusted p-values in the order of the given ones, each from 0 to 1: a test is rejected at a level
    /// where its adjusted value is at most the level.</summary>
    public ImmutableArray<double> Values { get; }

    /// <summary>The method.</summary>
    public AdjustmentMethod Method { get; }

    /// <summary>Whether method and values are equal, the values one by one.</summary>
    public bool Equals(AdjustedPValues? other) =>
        other is not null && Method == other.Method && Values.SequenceEqual(other.Values);

    /// <summary>A hash of the method and the values.</summary>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        hash.Add(Method);
        foreach (double value in Values)
        {
            hash.Add(value);
        }

        return hash.ToHashCode();
    }
}
