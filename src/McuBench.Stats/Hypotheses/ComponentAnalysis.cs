using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>The analysis of variance of random factors: the table, the tests, the variance components and the grand
/// mean.</summary>
/// <remarks>Immutable; equal when all parts are equal, lists one by one.</remarks>
public sealed record ComponentAnalysis
{
    internal ComponentAnalysis(
        ImmutableArray<AnovaRow> rows,
        ImmutableArray<FTestResult?> tests,
        ImmutableArray<VarianceComponent> components,
        Estimate mean,
        bool isBalanced,
        string method
    ) => (Rows, Tests, Components, Mean, IsBalanced, Method) = (rows, tests, components, mean, isBalanced, method);

    /// <summary>The table of the analysis of variance, the outermost factor first, what is left within last.</summary>
    public ImmutableArray<AnovaRow> Rows { get; }

    /// <summary>The test of each factor, in the order of <see cref="Rows"/> but without the last, that its component is 0;
    /// null where what its mean square is held against is 0 or less, or so uncertain that less than half a degree of freedom
    /// is left to it.</summary>
    public ImmutableArray<FTestResult?> Tests { get; }

    /// <summary>The variance components in the order of <see cref="Rows"/>.</summary>
    public ImmutableArray<VarianceComponent> Components { get; }

    /// <summary>The mean of all values, with the standard error that the components give it: the one that holds for new
    /// draws of all factors.</summary>
    public Estimate Mean { get; }

    /// <summary>Whether all groups of a factor are of one size, which makes the tests exact for normal sources.</summary>
    public bool IsBalanced { get; }

    /// <summary>The method's name.</summary>
    public string Method { get; }

    /// <summary>Whether all parts are equal, lists one by one.</summary>
    public bool Equals(ComponentAnalysis? other) =>
        other is not null
        && IsBalanced == other.IsBalanced
        && string.Equals(Method, other.Method, StringComparison.Ordinal)
        && Mean.Equals(other.Mean)
        && Rows.SequenceEqual(other.Rows)
        && Tests.SequenceEqual(other.Tests)
        && Components.SequenceEqual(other.Components);

    /// <summary>A hash of the parts that tell results apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(Mean, Rows.Length, Rows[0], Method);
}
