using System.Text;
using System.Text.RegularExpressions;

namespace McuBench.Core.Capture;

/// <summary>Cuts a stream of characters into lines as they come, whatever ends them, in bounded memory.</summary>
/// <remarks>LF, CR LF and a lone CR end a line at once: a board is not waited for to see whether LF follows CR.</remarks>
internal sealed class LineSplitter(LinePattern pattern, int longest)
{
    private readonly StringBuilder line = new();
    private readonly Queue<BoardLine> done = new();
    private long number;
    private long dropped;

    /// <summary>Takes in characters; the lines they complete wait in <see cref="TryTake"/>.</summary>
    public void Feed(ReadOnlySpan<char> text)
    {
        while (!text.IsEmpty)
        {
            var end = text.IndexOfAny('\n', '\r', '\0');
            Keep(end < 0 ? text : text[..end]);
            if (end < 0)
            {
                return;
            }

            if (text[end] != '\0')
            {
                Finish(isWhole: true);
            }

            text = text[(end + 1)..];
        }
    }

    /// <summary>Ends the text: what stands after the last line end is an unfinished line.</summary>
    public void End() => Finish(isWhole: false);

    public bool TryTake(out BoardLine taken) => done.TryDequeue(out taken!);

    private void Keep(ReadOnlySpan<char> text)
    {
        var room = Math.Min(longest - line.Length, text.Length);
        line.Append(text[..room]);
        dropped += text.Length - room;
    }

    // CR LF ends a line and an empty one, and empty ones don't count.
    private void Finish(bool isWhole)
    {
        if (line.Length == 0)
        {
            return;
        }

        var text = line.ToString();
        number++;
        done.Enqueue(
            dropped > 0 ? new BoardLine(number, text, BoardLineKind.Overlong) { CharactersDropped = dropped }
            : isWhole ? Read(text)
            : new BoardLine(number, text, BoardLineKind.Unfinished)
        );
        line.Clear();
        dropped = 0;
    }

    private BoardLine Read(string text)
    {
        Match? match;
        try
        {
            match = pattern.Match(text);
        }
        catch (RegexMatchTimeoutException)
        {
            return new BoardLine(number, text, BoardLineKind.TimedOut);
        }

        if (match is null)
        {
            return new BoardLine(number, text, BoardLineKind.Other);
        }

        var (reading, problem) = LineFigures.Of(match, pattern);
        return new BoardLine(number, text, reading is null ? BoardLineKind.Unusable : BoardLineKind.Reading)
        {
            Reading = reading,
            Problem = problem,
        };
    }
}
