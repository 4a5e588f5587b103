using System.IO.Pipelines;
using System.Runtime.CompilerServices;
using System.Text;

namespace McuBench.Core.Capture;

/// <summary>Reads the lines that a board prints, from a serial port, a socket, a file or a text.</summary>
/// <remarks>
/// Every line comes out, in order, whether it was understood or not; <see cref="LineTally"/> counts them. LF, CR LF and
/// CR end lines, empty lines are passed over, NUL characters are taken out. Nothing is read ahead of the caller beyond a
/// buffer of 4,096 characters, so that a slow caller slows the source. Memory is bounded by
/// <see cref="BoardLineOptions.LongestLine"/>. The source stays open.
/// </remarks>
public static class BoardLines
{
    private const int BufferSize = 4096;

    /// <summary>Reads lines from a text.</summary>
    /// <param name="text">The text; read as the caller goes on.</param>
    /// <param name="pattern">How a line says its figures.</param>
    /// <param name="options">How lines are taken in.</param>
    public static IEnumerable<BoardLine> Read(TextReader text, LinePattern pattern, BoardLineOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(pattern);
        return Lines(text, new LineSplitter(pattern, (options ?? BoardLineOptions.Default).LongestLine));
    }

    /// <summary>Reads lines from a text as they come.</summary>
    /// <param name="text">The text.</param>
    /// <param name="pattern">How a line says its figures.</param>
    /// <param name="options">How lines are taken in.</param>
    /// <param name="cancellationToken">Ends the waiting. What had come of a line by then is lost.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    /// <exception cref="IOException">The port vanished or the file failed; the lines before it have come out.</exception>
    public static IAsyncEnumerable<BoardLine> ReadAsync(
        TextReader text,
        LinePattern pattern,
        BoardLineOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(pattern);
        return Lines(text.ReadAsync, pattern, options ?? BoardLineOptions.Default, cancellationToken);
    }

    /// <summary>Reads lines from bytes as they come: a serial port's stream, a socket's, a file's.</summary>
    /// <param name="bytes">The bytes, in the options' encoding.</param>
    /// <param name="pattern">How a line says its figures.</param>
    /// <param name="options">How lines are taken in.</param>
    /// <param name="cancellationToken">Ends the waiting. What had come of a line by then is lost.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    /// <exception cref="IOException">The port vanished or the file failed; the lines before it have come out.</exception>
    public static IAsyncEnumerable<BoardLine> ReadAsync(
        Stream bytes,
        LinePattern pattern,
        BoardLineOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(pattern);
        options ??= BoardLineOptions.Default;
        return Lines(new Decoding(bytes, options.Encoding).ReadAsync, pattern, options, cancellationToken);
    }

    /// <summary>Reads lines from a pipe as they come.</summary>
    /// <param name="pipe">The pipe, not completed by this.</param>
    /// <param name="pattern">How a line says its figures.</param>
    /// <param name="options">How lines are taken in.</param>
    /// <param name="cancellationToken">Ends the waiting. What had come of a line by then is lost.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IAsyncEnumerable<BoardLine> ReadAsync(
        PipeReader pipe,
        LinePattern pattern,
        BoardLineOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(pipe);
        return ReadAsync(pipe.AsStream(leaveOpen: true), pattern, options, cancellationToken);
    }

    private static IEnumerable<BoardLine> Lines(TextReader text, LineSplitter splitter)
    {
        var buffer = new char[BufferSize];
        while (text.Read(buffer, 0, buffer.Length) is var count and > 0)
        {
            splitter.Feed(buffer.AsSpan(0, count));
            while (splitter.TryTake(out var line))
            {
                yield return line;
            }
        }

        splitter.End();
        if (splitter.TryTake(out var last))
        {
            yield return last;
        }
    }

    private static async IAsyncEnumerable<BoardLine> Lines(
        Func<Memory<char>, CancellationToken, ValueTask<int>> read,
        LinePattern pattern,
        BoardLineOptions options,
        [EnumeratorCancellation] CancellationToken cancellationToken
    )
    {
        var splitter = new LineSplitter(pattern, options.LongestLine);
        var buffer = new char[BufferSize];
        while (await read(buffer, cancellationToken).ConfigureAwait(false) is var count and > 0)
        {
            splitter.Feed(buffer.AsSpan(0, count));
            while (splitter.TryTake(out var line))
            {
                yield return line;
            }
        }

        splitter.End();
        if (splitter.TryTake(out var last))
        {
            yield return last;
        }
    }

    // A StreamReader would wait on some streams until its buffer is full; this gives on what one read gives.
    private sealed class Decoding(Stream bytes, Encoding encoding)
    {
        // What a read before has left of a character may come out as one U+FFFD a byte.
        private const int LongestCharacter = 8;

        private readonly Decoder decoder = Tolerant(encoding).GetDecoder();
        private readonly byte[] buffer = new byte[BufferSize];
        private bool hasEnded;

        public async ValueTask<int> ReadAsync(Memory<char> text, CancellationToken cancellationToken)
        {
            // A read may hold no more than the beginning of a character, and zero would mean the end.
            while (!hasEnded)
            {
                var count = await bytes
                    .ReadAsync(buffer.AsMemory(0, text.Length - LongestCharacter), cancellationToken)
                    .ConfigureAwait(false);
                hasEnded = count == 0;
                var characters = decoder.GetChars(buffer.AsSpan(0, count), text.Span, flush: hasEnded);
                if (characters > 0)
                {
                    return characters;
                }
            }

            return 0;
        }

        private static Encoding Tolerant(Encoding encoding)
        {
            var tolerant = (Encoding)encoding.Clone();
            tolerant.DecoderFallback = new DecoderReplacementFallback("\uFFFD");
            return tolerant;
        }
    }
}
