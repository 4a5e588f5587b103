using System.Buffers.Binary;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;

namespace McuBench.Core.Supply.Traces;

/// <summary>Reads traces that are written as plain little-endian numbers at equal steps of time.</summary>
/// <remarks>A whole number at either end of its range is a converter at its stop, and a floating-point number that is not
/// finite is none: both are given on as missing samples, so that neither is integrated. Memory is constant, below 1 MiB,
/// and samples allocate nothing. Safe to use from many threads. O(n).</remarks>
public static class BinaryTrace
{
    private const int Samples = 16_384;

    /// <summary>Reads a trace in which nothing is wrong.</summary>
    /// <param name="stream">The bytes. They are read to their end, and the stream stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="layout">What the bytes stand for.</param>
    /// <param name="consumer">Takes the samples. Where there is a fault it has taken all up to there.</param>
    /// <exception cref="StudyFormatException">The bytes end within a sample, or within the head.</exception>
    public static TraceReading Read(
        Stream stream,
        string sourceName,
        BinaryTraceLayout layout,
        ITraceConsumer consumer
    ) => ReadWithFaults(stream, sourceName, layout, consumer).OrThrow();

    /// <summary>Reads the whole samples of a trace, and says what is wrong with its end.</summary>
    /// <param name="stream">The bytes. They are read to their end, and the stream stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="layout">What the bytes stand for.</param>
    /// <param name="consumer">Takes the samples.</param>
    public static TraceReading ReadWithFaults(
        Stream stream,
        string sourceName,
        BinaryTraceLayout layout,
        ITraceConsumer consumer
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentException.ThrowIfNullOrEmpty(sourceName);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(consumer);
        var faults = new FaultList();
        var sampleLength = layout.NumberLength * layout.Channels;
        var bytes = new byte[Samples * sampleLength];
        var amperes = new double[Samples];
        var volts = layout.VoltageStep is null ? [] : new double[Samples];
        long samples = 0;
        if (Skipped(stream, layout.HeadLength) is var skipped && skipped < layout.HeadLength)
        {
            var problem = FormattableString.Invariant(
                $"The file has {skipped} bytes; its head alone has {layout.HeadLength}."
            );
            faults.Add(new StudyFault(sourceName, problem, "Is it cut, or of another layout?"));
            return new TraceReading(0, 0, faults);
        }

        var read = bytes.Length;
        while (read == bytes.Length)
        {
            read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            var count = read / sampleLength;
            Convert(
                bytes,
                layout,
                channel: 0,
                amperes.AsSpan(0, count),
                Si.Amperes(layout.CurrentStep),
                Si.Amperes(layout.CurrentAtZero)
            );
            if (layout.VoltageStep is { } step)
            {
                Convert(
                    bytes,
                    layout,
                    channel: 1,
                    volts.AsSpan(0, count),
                    Si.Volts(step),
                    Si.Volts(layout.VoltageAtZero)
                );
            }

            if (count > 0)
            {
                consumer.Take(
                    TraceChunk.Even(
                        Si.Seconds(layout.SamplePeriod),
                        amperes.AsSpan(0, count),
                        volts.Length > 0 ? volts.AsSpan(0, count) : default
                    )
                );
            }

            samples += count;
        }

        if (read % sampleLength is var rest and > 0)
        {
            var end = layout.HeadLength + samples * sampleLength;
            faults.Add(
                new StudyFault(
                    sourceName,
                    FormattableString.Invariant(
                        $"The file ends within a sample: {rest} of its {sampleLength} bytes stand behind byte {end}."
                    ),
                    "Is it cut, or of another layout?"
                )
            );
        }
        else if (samples == 0)
        {
            faults.Add(new StudyFault(sourceName, "The trace has no sample."));
        }

        return new TraceReading(samples, 0, faults);
    }

    private static int Skipped(Stream stream, int count)
    {
        var skipped = 0;
        var some = new byte[Math.Min(count, Samples)];
        while (skipped < count && stream.Read(some, 0, Math.Min(some.Length, count - skipped)) is var read and > 0)
        {
            skipped += read;
        }

        return skipped;
    }

    private static void Convert(
        ReadOnlySpan<byte> bytes,
        BinaryTraceLayout layout,
        int channel,
        Span<double> values,
        double step,
        double atZero
    )
    {
        var stride = layout.NumberLength * layout.Channels;
        var from = bytes[(channel * layout.NumberLength)..];
        for (var i = 0; i < values.Length; i++)
        {
            var number = from[(i * stride)..];
            var plain = layout.Format switch
            {
                SampleFormat.Whole16 => Unstopped(
                    BinaryPrimitives.ReadInt16LittleEndian(number),
                    short.MinValue,
                    short.MaxValue
                ),
                SampleFormat.Whole32 => Unstopped(
                    BinaryPrimitives.ReadInt32LittleEndian(number),
                    int.MinValue,
                    int.MaxValue
                ),
                SampleFormat.Floating32 => BinaryPrimitives.ReadSingleLittleEndian(number),
                _ => BinaryPrimitives.ReadDoubleLittleEndian(number),
            };
            values[i] = plain * step + atZero;
        }
    }

    private static double Unstopped(int code, int least, int greatest) =>
        code == least || code == greatest ? double.NaN : code;
}
