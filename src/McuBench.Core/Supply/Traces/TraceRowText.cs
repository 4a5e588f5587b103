using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Studies.Tables;

namespace McuBench.Core.Supply.Traces;

/// <summary>A row that is not all plain numbers: quoted, spaced, missing or at fault. Reads it with care and says what is
/// wrong.</summary>
internal readonly struct TraceRowText(
    string sourceName,
    TraceTextOptions options,
    FaultList faults,
    int line,
    long offset
)
{
    /// <summary>The fields of a line, without their quotation marks; null where these are at fault.</summary>
    public string[]? Split(string text)
    {
        var parts = new List<string>();
        var begin = 0;
        var isQuoted = false;
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && (text[i] != options.Table.Delimiter || isQuoted))
            {
                isQuoted ^= text[i] == '"';
                continue;
            }

            var raw = text.AsSpan(begin, i - begin);
            if (FieldText.Unquote(raw) is not { } field)
            {
                Add(
                    parts.Count,
                    null,
                    raw,
                    "Quotation marks stand within a field, or are never closed.",
                    "Close them."
                );
                return null;
            }

            parts.Add(field);
            begin = i + 1;
        }

        return [.. parts];
    }

    /// <summary>Reads a row into the rows; whether it was right.</summary>
    public bool Read(string[] parts, TraceField[] fields, TraceRows rows)
    {
        if (parts.Length != fields.Length)
        {
            Add(
                -1,
                null,
                default,
                FormattableString.Invariant(
                    $"The row from byte {offset} on has {parts.Length} fields where the heads are {fields.Length}."
                ),
                parts.Length > fields.Length
                    ? "Write decimals with a point, or say that they have a comma."
                    : "Is the file cut?"
            );
            return false;
        }

        for (var i = 0; i < fields.Length; i++)
        {
            if (!Read(i, parts[i], fields[i], rows))
            {
                return false;
            }
        }

        if (rows.TryAccept())
        {
            return true;
        }

        var time = Array.FindIndex(fields, field => field.Column == TraceColumn.Time);
        Add(
            time,
            fields[time].Head,
            parts[time],
            $"The time {Excerpt.Quoted(parts[time])} is not after the one before, {QuantityText.Format(Si.Duration(rows.LastAsWritten))}.",
            "Sort the rows, or say at what time the meter's clock starts again."
        );
        return false;
    }

    private bool Read(int index, string text, TraceField field, TraceRows rows)
    {
        if (field.Column is not { } column)
        {
            return true;
        }

        if (column == TraceColumn.Marker)
        {
            if (double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var state))
            {
                rows.SetMarker(state != 0);
                return true;
            }

            Add(index, field.Head, text, $"The marker must be a number; was {Excerpt.Quoted(text)}.", "Write 0 or 1.");
            return false;
        }

        if (column != TraceColumn.Time && string.Equals(text, "nan", StringComparison.OrdinalIgnoreCase))
        {
            rows.Row[(int)column] = double.NaN;
            return true;
        }

        var plain = options.DecimalComma ? text.Replace(',', '.') : text;
        if (QuantityParser.ReadBare(plain, field.Unit!, field.Kind!, out var si) is { } error)
        {
            Add(index, field.Head, text, error.Problem(), error.Mend);
            return false;
        }

        rows.Row[(int)column] = si;
        return true;
    }

    private void Add(int index, string? head, ReadOnlySpan<char> offending, string problem, string mend)
    {
        if (!faults.HasRoom)
        {
            faults.CountOne();
            return;
        }

        faults.Add(
            new StudyFault(sourceName, problem, mend)
            {
                Line = line,
                Column = index < 0 ? null : index + 1,
                ColumnHead = head is null ? null : Excerpt.Of(head),
                Offending = offending.IsEmpty ? null : Excerpt.Of(offending),
            }
        );
    }
}
