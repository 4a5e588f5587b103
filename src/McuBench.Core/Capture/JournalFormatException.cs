namespace McuBench.Core.Capture;

/// <summary>A journal that can't be taken as it is: no journal at all, or damaged before its end.</summary>
/// <remarks>A line broken off at the end is no damage; it is cut and reported. The message is one line.</remarks>
public sealed class JournalFormatException : FormatException
{
    internal JournalFormatException(string sourceName, int line, long offset, string problem, Exception? inner = null)
        : base(FormattableString.Invariant($"{sourceName}, line {line}, byte {offset}: {problem}"), inner)
    {
        SourceName = sourceName;
        Line = line;
        Offset = offset;
    }

    /// <summary>The file's name.</summary>
    public string SourceName { get; }

    /// <summary>The line, from 1.</summary>
    public int Line { get; }

    /// <summary>The byte where the line begins.</summary>
    public long Offset { get; }
}
