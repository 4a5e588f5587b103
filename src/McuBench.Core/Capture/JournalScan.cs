namespace McuBench.Core.Capture;

/// <summary>A journal's bytes taken apart and checked: its entries, where the good ones end, and what comes after.</summary>
internal sealed class JournalScan
{
    private readonly List<ReadOnlyMemory<byte>> entries = [];
    private readonly List<int> offsets = [];

    private JournalScan(ReadOnlyMemory<byte> bytes, string sourceName)
    {
        var line = 1;
        var at = 0;
        while (bytes.Span[at..].IndexOf((byte)'\n') is var length and >= 0)
        {
            LastCheck = Checked(bytes.Slice(at, length), line, at, sourceName);
            at += length + 1;
            line++;
        }

        End = at;
        if (at < bytes.Length)
        {
            Cut = new JournalCut(line, at, bytes[at..].ToArray());
        }

        if (entries.Count == 0 || JournalEntry.Frame(entries[0]) is null)
        {
            throw new JournalFormatException(
                sourceName,
                1,
                0,
                "The file is no journal: it doesn't begin with one's frame."
            );
        }
    }

    /// <summary>What the lines say, the frame first.</summary>
    public IReadOnlyList<ReadOnlyMemory<byte>> Entries => entries;

    /// <summary>Where the lines of the entries begin.</summary>
    public IReadOnlyList<int> Offsets => offsets;

    /// <summary>The checksum of the last line.</summary>
    public string LastCheck { get; private set; } = JournalLine.Beginning;

    /// <summary>The byte behind the last whole line.</summary>
    public int End { get; }

    /// <summary>What stands behind it, if anything.</summary>
    public JournalCut? Cut { get; }

    /// <summary>Takes apart and checks; O(n).</summary>
    /// <exception cref="JournalFormatException">It is no journal, or a whole line is not as it was written.</exception>
    public static JournalScan Of(ReadOnlyMemory<byte> bytes, string sourceName) => new(bytes, sourceName);

    // A line is written in one piece that its line end finishes, so that a crash leaves one without line end; a wrong
    // line that has its end was whole once and has been changed since.
    private string Checked(ReadOnlyMemory<byte> line, int number, int at, string sourceName)
    {
        if (!JournalLine.TryTakeApart(line.Span, out var entry, out var check))
        {
            throw new JournalFormatException(
                sourceName,
                number,
                at,
                number == 1
                    ? "The file is no journal: its first line is not one of a journal's."
                    : "The line is not one of a journal's: it has been changed since it was written. Put back a copy of the file."
            );
        }

        var expected = JournalLine.CheckOf(entry, LastCheck);
        if (!string.Equals(check, expected, StringComparison.Ordinal))
        {
            throw new JournalFormatException(
                sourceName,
                number,
                at,
                "The line's checksum is wrong: it, or the line before, has been changed, lost or moved since it was written. Put back a copy of the file."
            );
        }

        offsets.Add(at);
        entries.Add(line.Slice(line.Length - 1 - entry.Length, entry.Length));
        return check;
    }
}
