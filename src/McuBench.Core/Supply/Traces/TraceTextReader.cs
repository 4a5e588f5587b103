using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Studies.Tables;

namespace McuBench.Core.Supply.Traces;

/// <summary>Reads one trace in text: takes its bytes in pieces, finds the columns, and goes through the rows.</summary>
internal sealed class TraceTextReader(
    Stream stream,
    string sourceName,
    ITraceConsumer consumer,
    TraceTextOptions options
)
{
    private const int PieceLength = 1 << 20;

    // What a number may be read ahead by.
    private const int Slack = 16;

    private static readonly TableLayout<TraceColumn> Layout = new()
    {
        Required = [TraceColumn.Time, TraceColumn.Current],
        Quantities = ImmutableDictionary<TraceColumn, QuantityKind>
            .Empty.Add(TraceColumn.Time, QuantityKind.Duration)
            .Add(TraceColumn.Current, QuantityKind.Current)
            .Add(TraceColumn.Voltage, QuantityKind.Voltage),
    };

    private readonly byte[] buffer = new byte[PieceLength + Slack];
    private readonly FaultList faults = new();
    private readonly byte delimiter = (byte)options.Table.Delimiter;
    private readonly TraceNumber number = new((byte)(options.DecimalComma ? ',' : '.'));
    private TraceField[] fields = [];
    private TraceRows? rows;
    private int line;
    private long offset;
    private bool isStopped;

    public TraceReading Read()
    {
        var filled = 0;
        var isAtEnd = false;
        while (!isStopped && !isAtEnd)
        {
            isAtEnd = Fill(ref filled);
            if (filled == 0)
            {
                break;
            }

            var whole = buffer.AsSpan(0, filled).LastIndexOf((byte)'\n') + 1;
            if (whole == 0 && filled > TraceText.LongestLine)
            {
                TooLong();
                break;
            }

            Take(whole);
            buffer.AsSpan(whole, filled - whole).CopyTo(buffer);
            filled -= whole;
            offset += whole;
            if (isAtEnd && filled > 0 && !isStopped)
            {
                EndWithoutBreak(filled);
            }
        }

        if (line == 0 && faults.Count == 0)
        {
            faults.Add(new StudyFault(sourceName, "The trace is empty.", "Its first line must be the heads."));
        }

        rows?.Flush();
        return new TraceReading(rows?.Samples ?? 0, rows?.LeftOut ?? 0, faults);
    }

    private bool Fill(ref int filled)
    {
        while (filled < PieceLength)
        {
            var read = stream.Read(buffer, filled, PieceLength - filled);
            if (read == 0)
            {
                return true;
            }

            filled += read;
        }

        return false;
    }

    /// <summary>Goes through whole lines.</summary>
    private void Take(int whole)
    {
        var at = offset == 0 && buffer.AsSpan(0, whole).StartsWith("\uFEFF"u8) ? 3 : 0;
        while (at < whole && !isStopped)
        {
            if (rows is not null && !MayBeSkipped(buffer[at]) && TryRow(ref at))
            {
                line++;
                continue;
            }

            var length = buffer.AsSpan(at, whole - at).IndexOf((byte)'\n');
            line++;
            var text = buffer.AsSpan(at, length);
            TakeSlowly(text is [.., (byte)'\r'] ? text[..^1] : text, at);
            at += length + 1;
        }
    }

    private bool MayBeSkipped(byte first) =>
        first is (byte)'\r' or (byte)'\n' || (first == '#' && options.Table.HashComments);

    /// <summary>Reads a row of plain numbers; where it is anything else, nothing is taken and another look is needed.</summary>
    private bool TryRow(ref int start)
    {
        ref var bytes = ref MemoryMarshal.GetArrayDataReference(buffer);
        var at = start;
        var row = rows!.Row;
        for (var i = 0; i < fields.Length; i++)
        {
            var field = fields[i];
            if (field.Unit is null)
            {
                at = Skipped(ref bytes, at, field);
            }
            else
            {
                while (Unsafe.Add(ref bytes, at) == ' ')
                {
                    at++;
                }

                at = number.Read(ref bytes, at, field.Unit, out var si);
                row[field.Slot] = si;
            }

            if (at < 0)
            {
                return false;
            }

            var next = Unsafe.Add(ref bytes, at++);
            if (i + 1 < fields.Length)
            {
                if (next != delimiter)
                {
                    return false;
                }
            }
            else if (next != '\n' && (next != '\r' || Unsafe.Add(ref bytes, at++) != '\n'))
            {
                return false;
            }
        }

        if (!rows!.TryAccept())
        {
            return false;
        }

        start = at;
        return true;
    }

    /// <summary>The place behind a field that is no quantity; −1 where another look is needed.</summary>
    private int Skipped(ref byte bytes, int begin, TraceField field)
    {
        var at = begin;
        byte one;
        while ((one = Unsafe.Add(ref bytes, at)) != delimiter && one is not ((byte)'\n' or (byte)'\r'))
        {
            if (one == '"')
            {
                return -1;
            }

            at++;
        }

        if (field.Column is null)
        {
            return at;
        }

        // A marker in one digit; any other form is looked at again.
        one = Unsafe.Add(ref bytes, begin);
        rows!.SetMarker(one != '0');
        return at == begin + 1 && char.IsAsciiDigit((char)one) ? at : -1;
    }

    private void TakeSlowly(ReadOnlySpan<byte> bytes, int at)
    {
        if (bytes.Trim((byte)' ').IsEmpty || MayBeSkipped(bytes[0]))
        {
            return;
        }

        if (bytes.Length > TraceText.LongestLine)
        {
            TooLong();
            return;
        }

        var text = System.Text.Encoding.UTF8.GetString(bytes);
        var slow = new TraceRowText(sourceName, options, faults, line, offset + at);
        if (slow.Split(text) is not { } parts)
        {
            Fault();
            return;
        }

        if (rows is null)
        {
            Bind(parts);
            return;
        }

        if (!slow.Read(parts, fields, rows))
        {
            Fault();
        }
    }

    private void Bind(string[] heads)
    {
        var bound = new TableBinding<TraceColumn>(Layout, options.Columns, options.Table, sourceName, faults).Bind(
            heads,
            line
        );
        if (faults.Count > 0)
        {
            isStopped = true;
            return;
        }

        fields = new TraceField[heads.Length];
        for (var i = 0; i < heads.Length; i++)
        {
            var column = bound
                .Where(pair => pair.Value.Index == i)
                .Select(pair => (TraceColumn?)pair.Key)
                .FirstOrDefault();
            var kind = column is { } known ? Layout.KindOf(known) : null;
            var unit = column is { } named ? bound[named].Unit : null;
            if (kind is not null && unit is null)
            {
                var error = HeadDiagnosis.NoUnit(heads[i], heads[i], kind);
                faults.Add(
                    new StudyFault(sourceName, error.Problem(), error.Mend)
                    {
                        Line = line,
                        Column = i + 1,
                        ColumnHead = Excerpt.Of(heads[i]),
                        Offending = Excerpt.Of(heads[i]),
                    }
                );
            }

            fields[i] = new TraceField(column, heads[i], unit, kind);
        }

        isStopped = faults.Count > 0;
        rows = TraceRows.Of(bound, options, consumer, sourceName, faults);
    }

    /// <summary>What a fault in a row leads to.</summary>
    private void Fault()
    {
        isStopped = rows is null || options.BadRows == BadRows.Stop;
        rows?.LeaveOut(isGap: !isStopped);
    }

    private void TooLong()
    {
        line = Math.Max(line, 1);
        faults.Add(
            new StudyFault(
                sourceName,
                FormattableString.Invariant(
                    $"A line must have at most {TraceText.LongestLine} bytes; the one from byte {offset} on has more."
                ),
                "Is this a trace in text?"
            )
            {
                Line = line,
            }
        );
        isStopped = true;
    }

    private void EndWithoutBreak(int length)
    {
        line++;
        faults.Add(
            new StudyFault(
                sourceName,
                FormattableString.Invariant(
                    $"The file ends within a line, {length} bytes behind byte {offset}: digits may be cut off."
                ),
                "End the last line with a line break, or have bad rows left out."
            )
            {
                Line = line,
            }
        );
        Fault();
    }
}
