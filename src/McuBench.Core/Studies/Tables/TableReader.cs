using System.Globalization;
using McuBench.Core.Quantities;
using nietras.SeparatedValues;

namespace McuBench.Core.Studies.Tables;

/// <summary>Reads a table row by row: splits, unquotes, checks the count of fields and the limits, and finds the columns.</summary>
internal sealed class TableReader<TColumn> : IDisposable
    where TColumn : struct, Enum
{
    private readonly string sourceName;
    private readonly CsvOptions options;
    private readonly FaultList faults;
    private readonly SepReader? reader;
    private readonly TableRow<TColumn>? row;
    private readonly string[] heads = [];
    private string[] fields = [];

    public TableReader(
        TextReader text,
        string sourceName,
        TableLayout<TColumn> layout,
        ColumnMap<TColumn> map,
        CsvOptions options,
        FaultList faults
    )
    {
        this.sourceName = sourceName;
        this.options = options;
        this.faults = faults;
        reader = Guarded(() =>
            Sep.New(options.Delimiter)
                .Reader(o => o with { HasHeader = false, DisableColCountCheck = true })
                .From(new TableText(text, options.HashComments))
        );
        if (reader is null || !Advance(isHead: true))
        {
            if (faults.Count == 0)
            {
                faults.Add(new StudyFault(sourceName, "The table is empty.", "Its first line must be the heads."));
            }

            return;
        }

        heads = fields;
        fields = new string[heads.Length];
        var before = faults.Count;
        var bound = new TableBinding<TColumn>(layout, map, options, sourceName, faults).Bind(heads, Line);
        if (faults.Count == before)
        {
            row = new TableRow<TColumn>(layout, bound, sourceName, faults);
        }
    }

    /// <summary>How many rows were met, heads apart.</summary>
    public int RowsMet { get; private set; }

    private int Line { get; set; }

    /// <summary>The next sound row, valid until the next call; null at the end.</summary>
    public TableRow<TColumn>? Next()
    {
        if (row is null)
        {
            return null;
        }

        if (!Advance(isHead: false))
        {
            return null;
        }

        row.Take(fields, Line);
        return row;
    }

    public void Dispose() => reader?.Dispose();

    /// <summary>Moves to the next row that is neither blank nor faulty in itself.</summary>
    private bool Advance(bool isHead)
    {
        while (Guarded(() => reader!.MoveNext() ? reader : null) is not null)
        {
            var current = reader!.Current;
            // The tokeniser (0.17.1) gives the first row the number of the line after it.
            Line = current.RowIndex == 0 ? 1 : current.LineNumberFrom;
            if (current.Span.IsWhiteSpace())
            {
                continue;
            }

            RowsMet += isHead ? 0 : 1;
            if (RowsMet > StudyLimits.Rows)
            {
                RowsMet--;
                Add(FormattableString.Invariant($"The table has more than {StudyLimits.Rows} rows."), "Split it.");
                return false;
            }

            if (Split(current, isHead))
            {
                return true;
            }

            if (isHead)
            {
                return false;
            }
        }

        return false;
    }

    private bool Split(SepReader.Row current, bool isHead)
    {
        if (current.Span.Length > StudyLimits.RowLength)
        {
            Add(
                FormattableString.Invariant(
                    $"A row must have at most {StudyLimits.RowLength} characters; has {current.Span.Length}."
                ),
                "Is a quotation mark left open?"
            );
            return false;
        }

        if (current.ColCount > StudyLimits.Columns)
        {
            Add(
                FormattableString.Invariant(
                    $"A table must have at most {StudyLimits.Columns} columns; has {current.ColCount}."
                )
            );
            return false;
        }

        if (isHead)
        {
            fields = new string[current.ColCount];
        }

        for (var i = 0; i < current.ColCount; i++)
        {
            var raw = current[i].Span;
            if (raw.Length > StudyLimits.FieldLength)
            {
                AddAt(
                    i,
                    raw,
                    FormattableString.Invariant(
                        $"A field must have at most {StudyLimits.FieldLength} characters; has {raw.Length}."
                    )
                );
                return false;
            }

            if (FieldText.Unquote(raw) is not { } text)
            {
                var (problem, mend) = FieldText.IsUnclosed(raw)
                    ? ("A quotation mark is never closed.", "Close it.")
                    : (
                        $"Quotation marks stand inside the field {Excerpt.Quoted(raw)}.",
                        "Put the whole field in quotation marks and double those inside."
                    );
                AddAt(i, raw, problem, mend);
                return false;
            }

            if (i < fields.Length)
            {
                fields[i] = text;
            }
        }

        if (current.ColCount != fields.Length)
        {
            Add(
                FormattableString.Invariant(
                    $"The row has {current.ColCount} fields where the heads are {fields.Length}."
                ),
                current.ColCount > fields.Length
                    ? "Write decimals with a point, and quote fields that hold the delimiter."
                    : "Fill in what is missing; a field may be empty."
            );
            return false;
        }

        return true;
    }

    /// <summary>Runs the tokeniser, whose own limits and refusals become faults.</summary>
    private SepReader? Guarded(Func<SepReader?> step)
    {
        try
        {
            return step();
        }
        catch (TableText.TooLongException)
        {
            faults.Add(
                new StudyFault(
                    sourceName,
                    FormattableString.Invariant($"The table has more than {StudyLimits.FileBytes} characters."),
                    "Split it."
                )
            );
        }
        catch (NotSupportedException)
        {
            faults.Add(
                new StudyFault(
                    sourceName,
                    FormattableString.Invariant($"A row must have at most {StudyLimits.RowLength} characters."),
                    "Is a quotation mark left open?"
                )
            );
        }

        return null;
    }

    private void Add(string problem, string? mend = null) =>
        faults.Add(new StudyFault(sourceName, problem, mend) { Line = Line });

    private void AddAt(int index, ReadOnlySpan<char> raw, string problem, string? mend = null) =>
        faults.Add(
            new StudyFault(sourceName, problem, mend)
            {
                Line = Line,
                Column = index + 1,
                ColumnHead = index < heads.Length ? Excerpt.Of(heads[index]) : null,
                Offending = Excerpt.Of(raw),
            }
        );
}
