using System.Globalization;
using McuBench.Core.Studies;

namespace McuBench.Core.Reporting;

/// <summary>Writes a report's table as CSV for a spreadsheet: as it reads, with the plain numbers beside it.</summary>
/// <remarks>
/// A field that holds the delimiter, a quotation mark or a line break stands in quotation marks. A text that begins with
/// = + - @, a tab or a line break is written with an apostrophe before it, so that no spreadsheet runs it as a formula.
/// Behind each column of figures that are sorted by a number stands one with that number alone, in the SI unit.
/// Lines end by LF; numbers have a decimal point.
/// </remarks>
public static class CsvTableWriter
{
    /// <summary>Writes a table. O(n) in its cells.</summary>
    /// <param name="writer">Where to; stays open.</param>
    /// <param name="table">What.</param>
    /// <param name="options">What stands between fields; <see cref="CsvOptions.Default"/> when null.</param>
    public static void Write(TextWriter writer, ReportTable table, CsvOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(table);
        var delimiter = (options ?? CsvOptions.Default).Delimiter;
        bool[] numbered =
        [
            .. table.Columns.Select((column, i) => column.IsFigure && table.Rows.Any(row => row[i].Order is not null)),
        ];
        Line(
            table.Columns.SelectMany(
                (column, i) => numbered[i] ? [column.Head, $"{column.Head} (number, SI)"] : new[] { column.Head }
            ),
            text => Guarded(text, delimiter)
        );
        foreach (var row in table.Rows)
        {
            Line(
                row.SelectMany((cell, i) => numbered[i] ? [Text(cell), Number(cell)] : new[] { Text(cell) }),
                field => field
            );
        }

        string Text(ReportCell cell) => Guarded(cell.Text, delimiter);

        void Line(IEnumerable<string> fields, Func<string, string> written)
        {
            writer.Write(string.Join(delimiter, fields.Select(written)));
            writer.Write('\n');
        }
    }

    /// <summary>A number of ours, minus sign and all: it runs nothing.</summary>
    private static string Number(ReportCell cell) => cell.Order?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static string Guarded(string text, char delimiter)
    {
        var guarded = text is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..] ? $"'{text}" : text;
        return guarded.AsSpan().ContainsAny('"', '\r', '\n') || guarded.Contains(delimiter, StringComparison.Ordinal)
            ? $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : guarded;
    }
}
