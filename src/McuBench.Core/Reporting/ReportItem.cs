namespace McuBench.Core.Reporting;

/// <summary>A point of a list: a sentence or two, with what it is about before it and links behind it.</summary>
/// <param name="Text">The sentences.</param>
/// <remarks>A text alone is a point too. Immutable; equal when all properties are equal, links in order.</remarks>
public sealed record ReportItem(string Text)
{
    private readonly ValueList<ReportLink> links = ValueList<ReportLink>.Empty;

    /// <summary>What it is about, in a word or two that stand out before it; null where nothing does.</summary>
    public string? Lead { get; init; }

    /// <summary>Where it leads: to the trials behind it.</summary>
    public IReadOnlyList<ReportLink> Links
    {
        get => links;
        init => links = ValueList<ReportLink>.Of(value, "Links", nameof(Links));
    }

    /// <summary>A point of a text alone.</summary>
    /// <param name="text">The sentences.</param>
    public static implicit operator ReportItem(string text) => new(text);
}
