namespace McuBench.Core.Studies;

/// <summary>How a table is written down.</summary>
/// <remarks>Immutable; equal when all properties are equal.</remarks>
public sealed record CsvOptions
{
    /// <summary>Commas between fields, no comments, no columns but the known ones.</summary>
    public static CsvOptions Default { get; } = new();

    /// <summary>What stands between fields: a comma, a semicolon, a tab or a vertical bar.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is another character.</exception>
    public char Delimiter
    {
        get;
        init =>
            field = value is ',' or ';' or '\t' or '|'
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(Delimiter),
                    value,
                    $"Delimiter must be a comma, a semicolon, a tab or a vertical bar; was {Quantities.Excerpt.Quoted([value])}."
                );
    } = ',';

    /// <summary>Whether a line that begins with # is a comment, and skipped.</summary>
    public bool HashComments { get; init; }

    /// <summary>Whether columns that stand for no property are skipped. Where not, each is a fault, since a misspelt head
    /// would lose its data without a word.</summary>
    public bool IgnoreOtherColumns { get; init; }
}
