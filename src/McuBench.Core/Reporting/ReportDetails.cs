namespace McuBench.Core.Reporting;

/// <summary>A part of a report that is folded away until it is asked for, where the form of the report can fold.</summary>
public sealed record ReportDetails : ReportBlock
{
    /// <summary>Makes a folded part.</summary>
    /// <param name="summary">What is in it: the words that stay in sight.</param>
    /// <param name="blocks">What is folded away, in order.</param>
    public ReportDetails(string summary, IEnumerable<ReportBlock> blocks)
    {
        Summary = Require.Given(summary, nameof(summary));
        Blocks = ValueList<ReportBlock>.Of(blocks, "Blocks", nameof(blocks));
    }

    /// <summary>What is in it: the words that stay in sight.</summary>
    public string Summary { get; }

    /// <summary>What is folded away, in order.</summary>
    public IReadOnlyList<ReportBlock> Blocks { get; }

    /// <summary>The name that links lead to, one of its own in the report: letters, digits and hyphens. Null where none does.</summary>
    public string? Anchor { get; init; }
}
