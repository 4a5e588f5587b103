namespace McuBench.Core.Capture;

/// <summary>Counts what became of lines, and what is missing in the board's own numbering.</summary>
/// <remarks>Not safe to use from many threads at once.</remarks>
public sealed class LineTally
{
    private readonly long[] counts = new long[Enum.GetValues<BoardLineKind>().Length];
    private long? lastSequence;

    /// <summary>How many lines were counted.</summary>
    public long Lines { get; private set; }

    /// <summary>How many numbers of the board's own sequence were passed over: runs whose line was lost or not
    /// understood.</summary>
    public long Missing { get; private set; }

    /// <summary>How often the sequence stood still or went back: the board was reset, or repeats itself.</summary>
    public long StepsBack { get; private set; }

    /// <summary>How many lines became that.</summary>
    /// <param name="kind">What became of them.</param>
    public long Of(BoardLineKind kind) => counts[(int)Require.Defined(kind, "Kind of line", nameof(kind))];

    /// <summary>Counts a line.</summary>
    /// <param name="line">The line.</param>
    public void Add(BoardLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        Lines++;
        counts[(int)line.Kind]++;
        if (line.Reading?.Sequence is not { } sequence)
        {
            return;
        }

        if (lastSequence is { } last)
        {
            if (sequence > last)
            {
                Missing += sequence - last - 1;
            }
            else
            {
                StepsBack++;
            }
        }

        lastSequence = sequence;
    }

    /// <summary>The counts in a line: <c>120 lines: 96 readings, 20 others, 4 unusable; 3 runs missing</c>.</summary>
    public override string ToString()
    {
        var parts = new List<string> { Said(BoardLineKind.Reading, "reading", "readings") };
        parts.AddRange(
            new[]
            {
                Said(BoardLineKind.Other, "other", "others"),
                Said(BoardLineKind.Unusable, "unusable", "unusable"),
                Said(BoardLineKind.Overlong, "overlong", "overlong"),
                Said(BoardLineKind.Unfinished, "unfinished", "unfinished"),
                Said(BoardLineKind.TimedOut, "timed out", "timed out"),
            }.Where(part => !part.StartsWith("0 ", StringComparison.Ordinal))
        );
        var said = FormattableString.Invariant(
            $"{Lines} {(Lines == 1 ? "line" : "lines")}: {string.Join(", ", parts)}"
        );
        if (Missing > 0)
        {
            said += FormattableString.Invariant($"; {Missing} {(Missing == 1 ? "run" : "runs")} missing");
        }

        return StepsBack > 0
            ? said
                + FormattableString.Invariant(
                    $"; {StepsBack} {(StepsBack == 1 ? "time" : "times")} back in the sequence"
                )
            : said;
    }

    private string Said(BoardLineKind kind, string one, string many) =>
        FormattableString.Invariant($"{Of(kind)} {(Of(kind) == 1 ? one : many)}");
}
