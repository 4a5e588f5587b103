namespace McuBench.Core.Studies.Tables;

/// <summary>The caller's text as the tokeniser may have it: not closed when the tokeniser is done, not longer than the
/// limit, and without a byte order mark and comments, whose quotation marks would mean something to the tokeniser. The lines of comments stay,
/// empty, so that lines are counted right.</summary>
internal sealed class TableText(TextReader text, bool hashComments) : TextReader
{
    private long taken;
    private bool isLineStart = true;
    private bool isQuoted;
    private bool isComment;

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        while (true)
        {
            var read = text.Read(buffer);
            taken += read;
            if (taken > StudyLimits.FileBytes)
            {
                throw new TooLongException();
            }

            var kept = read;
            if (taken == read && buffer[..read] is ['\uFEFF', .. var rest])
            {
                // A byte order mark that the caller's decoding left in place.
                rest.CopyTo(buffer);
                kept--;
            }

            kept = hashComments ? WithoutComments(buffer[..kept]) : kept;
            if (kept > 0 || read == 0)
            {
                return kept;
            }
        }
    }

    public override int Read()
    {
        Span<char> one = stackalloc char[1];
        return Read(one) == 0 ? -1 : one[0];
    }

    private int WithoutComments(Span<char> chars)
    {
        var kept = 0;
        foreach (var c in chars)
        {
            var isBreak = c is '\n' or '\r';
            isComment = isComment ? !isBreak : isLineStart && !isQuoted && c == '#';
            isLineStart = isBreak;
            if (!isComment)
            {
                isQuoted ^= c == '"';
                chars[kept++] = c;
            }
        }

        return kept;
    }

    /// <summary>The text passes the limit. Caught within the reading of tables.</summary>
    internal sealed class TooLongException : IOException;
}
