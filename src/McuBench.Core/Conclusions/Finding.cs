using McuBench.Core.Trials;

namespace McuBench.Core.Conclusions;

/// <summary>Something that a reader of the conclusions has to know about the data: what, how much it weighs, the
/// evidence as numbers and words, the trials concerned, and what to do.</summary>
/// <remarks>Nothing is dropped or corrected because of a finding.
/// Immutable; equal when all properties are equal, lists in order. Safe to use from many threads.</remarks>
public sealed record Finding
{
    internal Finding(
        FindingKind kind,
        Severity severity,
        string subject,
        string evidence,
        string advice,
        IEnumerable<FindingFigure> figures,
        IEnumerable<Trial> trials
    )
    {
        Kind = kind;
        Severity = severity;
        Subject = subject;
        Evidence = evidence;
        Advice = advice;
        Figures = ValueList<FindingFigure>.Of(figures, "Figures", nameof(figures));
        Trials = ValueList<Trial>.Of(trials, "Trials", nameof(trials));
    }

    /// <summary>What was found.</summary>
    public FindingKind Kind { get; }

    /// <summary>How much it weighs.</summary>
    public Severity Severity { get; }

    /// <summary>What it is about: the setup or setups and the workload, by name.</summary>
    public string Subject { get; }

    /// <summary>The evidence in one sentence or two, with units.</summary>
    public string Evidence { get; }

    /// <summary>What to do about it.</summary>
    public string Advice { get; }

    /// <summary>The evidence as numbers.</summary>
    public IReadOnlyList<FindingFigure> Figures { get; }

    /// <summary>The trials concerned; empty where it is not about single trials.</summary>
    public IReadOnlyList<Trial> Trials { get; }
}
