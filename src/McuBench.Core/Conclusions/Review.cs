namespace McuBench.Core.Conclusions;

/// <summary>What is wrong with a study's data, or weak: to be read before any conclusion is believed.</summary>
/// <remarks>Nothing is dropped or changed because of a finding.
/// Immutable; equal when all findings are equal in order. Safe to use from many threads.</remarks>
public sealed record Review
{
    internal Review(IEnumerable<Finding> findings) =>
        Findings = ValueList<Finding>.Of(findings.OrderByDescending(f => f.Severity), "Findings", nameof(findings));

    /// <summary>The findings, the gravest first, and among equals in order of the study.</summary>
    public IReadOnlyList<Finding> Findings { get; }
}
