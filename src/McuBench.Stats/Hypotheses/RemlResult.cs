using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>The variance components of a nested layout by restricted maximum likelihood.</summary>
/// <remarks>Immutable; equal when all parts are equal, the components one by one.</remarks>
public sealed record RemlResult
{
    internal RemlResult(
        ImmutableArray<string> sources,
        ImmutableArray<Estimate> components,
        Estimate mean,
        double criterion,
        int steps
    ) => (Sources, Components, Mean, Criterion, Steps) = (sources, components, mean, criterion, steps);

    /// <summary>The names of the sources, as in "factor 1" and, last, "within".</summary>
    public ImmutableArray<string> Sources { get; }

    /// <summary>The variance of each source, 0 or more, in the square of the data's unit.</summary>
    public ImmutableArray<Estimate> Components { get; }

    /// <summary>The generalized least-squares mean, in which groups weigh as the components ask for, with its standard
    /// error.</summary>
    public Estimate Mean { get; }

    /// <summary>Twice the negative logarithm of the restricted likelihood: what fits of the same data are compared
    /// by.</summary>
    public double Criterion { get; }

    /// <summary>The steps of the search.</summary>
    public int Steps { get; }

    /// <summary>Whether all parts are equal, the components one by one.</summary>
    public bool Equals(RemlResult? other) =>
        other is not null
        && Criterion.Equals(other.Criterion)
        && Steps == other.Steps
        && Mean.Equals(other.Mean)
        && Sources.SequenceEqual(other.Sources, StringComparer.Ordinal)
        && Components.SequenceEqual(other.Components);

    /// <summary>A hash of the parts that tell results apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(Criterion, Mean, Components.Length);
}
