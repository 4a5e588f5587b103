using McuBench.Core.Quantities;

namespace McuBench.Core.Capture;

/// <summary>What stood after the last whole line of a journal, and was cut: a line that a crash broke off.</summary>
/// <remarks>It was never acknowledged. Immutable.</remarks>
public sealed record JournalCut
{
    internal JournalCut(int line, long offset, byte[] bytes)
    {
        Line = line;
        Offset = offset;
        Bytes = bytes;
    }

    /// <summary>The line where it stood, from 1.</summary>
    public int Line { get; }

    /// <summary>The byte where it began.</summary>
    public long Offset { get; }

    /// <summary>What was cut.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>What was cut, as a sentence.</summary>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{Bytes.Length} {(Bytes.Length == 1 ? "byte" : "bytes")} cut from line {Line}, byte {Offset}: {Excerpt.Quoted(System.Text.Encoding.UTF8.GetString(Bytes.Span))}, never acknowledged."
        );
}
