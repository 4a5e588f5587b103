using McuBench.Core.Studies;

namespace McuBench.Core.Supply.Traces;

/// <summary>Reads traces that are written as text: a row of heads with units, then a row a sample.</summary>
/// <remarks>
/// <para>The text is UTF-8. A head gives its unit in brackets: "time [ms]", "current [mA]". Fields may stand in quotation
/// marks, lines may end by CRLF, and a byte order mark is skipped; blank lines don't count. A value is as exact as the
/// decimal it is written as, unit included. "NaN" for a current or a voltage is a sample that is missing.</para>
/// <para>Times must rise from row to row. The last line must end with a line break: where it doesn't, the file was cut,
/// and nobody knows how many digits of the last number are gone.</para>
/// <para>Memory is constant, below 2 MiB, and rows allocate nothing. Safe to use from many threads.</para>
/// </remarks>
public static class TraceText
{
    /// <summary>The most bytes in a line: 65,536.</summary>
    public const int LongestLine = 65_536;

    /// <summary>Reads a trace in which nothing is wrong.</summary>
    /// <param name="stream">The text. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="consumer">Takes the samples. Where there is a fault it has taken all up to there.</param>
    /// <param name="options">How the text is written, and what is to be done at faults.</param>
    /// <exception cref="StudyFormatException">Something is wrong; all faults are listed.</exception>
    public static TraceReading Read(
        Stream stream,
        string sourceName,
        ITraceConsumer consumer,
        TraceTextOptions? options = null
    ) => ReadWithFaults(stream, sourceName, consumer, options).OrThrow();

    /// <summary>Reads whatever can be read of a trace, and says what is wrong.</summary>
    /// <param name="stream">The text. It is read to its end, or to the fault that stops it, and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="consumer">Takes the samples.</param>
    /// <param name="options">How the text is written, and what is to be done at faults.</param>
    public static TraceReading ReadWithFaults(
        Stream stream,
        string sourceName,
        ITraceConsumer consumer,
        TraceTextOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentException.ThrowIfNullOrEmpty(sourceName);
        ArgumentNullException.ThrowIfNull(consumer);
        var chosen = options ?? TraceTextOptions.Default;
        if (chosen.DecimalComma && chosen.Table.Delimiter == ',')
        {
            throw new ArgumentException(
                "Delimiter must be another character where numbers have a decimal comma; was \",\".",
                nameof(options)
            );
        }

        return new TraceTextReader(stream, sourceName, consumer, chosen).Read();
    }
}
