namespace McuBench.Core.Capture;

/// <summary>One line that a board sent: its text, what became of it, and what was read from it.</summary>
/// <remarks>Immutable; equal when all properties are equal.</remarks>
public sealed record BoardLine
{
    internal BoardLine(long number, string text, BoardLineKind kind)
    {
        Number = number;
        Text = text;
        Kind = kind;
    }

    /// <summary>Its place among the lines, from 1; empty lines don't count.</summary>
    public long Number { get; }

    /// <summary>Its text without line end and NUL bytes; the beginning of it where it is overlong. Bytes that are no
    /// text in the encoding stand as U+FFFD.</summary>
    public string Text { get; }

    /// <summary>What became of it.</summary>
    public BoardLineKind Kind { get; }

    /// <summary>What was read from it; absent unless it is a reading.</summary>
    public LineReading? Reading { get; internal init; }

    /// <summary>Why nothing was read from a line that matched, as a sentence; absent otherwise.</summary>
    public string? Problem { get; internal init; }

    /// <summary>How many characters of an overlong line were dropped.</summary>
    public long CharactersDropped { get; internal init; }

    /// <summary>The line, shortened and made safe to print on one line: <c>line 12 (other): "boot v3"</c>.</summary>
    public override string ToString() =>
        FormattableString.Invariant(
            $"line {Number} ({Kind.ToString().ToLowerInvariant()}): {Quantities.Excerpt.Quoted(Text)}"
        ) + (Problem is null ? string.Empty : $": {Problem}");
}
