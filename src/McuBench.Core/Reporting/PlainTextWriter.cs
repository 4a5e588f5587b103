using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>Writes a report as plain text for a terminal: paragraphs wrapped, tables aligned, pictures by their captions.</summary>
public static class PlainTextWriter
{
    private const int LineWidth = 100;

    /// <summary>Stands for a space at which no line may break. No text holds it: control characters are taken out.</summary>
    private const char Glue = '\u0001';

    /// <summary>Writes a report. O(n) in its text.</summary>
    /// <param name="writer">Where to; stays open.</param>
    /// <param name="report">What.</param>
    public static void Write(TextWriter writer, Report report)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(report);
        Underlined(writer, report.Title, '=');
        foreach (var block in report.Blocks)
        {
            writer.Write('\n');
            Write(writer, block);
        }
    }

    private static void Write(TextWriter writer, ReportBlock block)
    {
        switch (block)
        {
            case ReportHeading heading:
                Underlined(writer, Safe(heading.Text), heading.Level == 2 ? '-' : '.');
                break;
            case ReportParagraph paragraph:
                Wrapped(writer, string.Empty, string.Empty, paragraph.Text);
                break;
            case ReportList list:
                foreach (var item in list.Items)
                {
                    Wrapped(writer, "  - ", "    ", item.Lead is null ? item.Text : $"{item.Lead} {item.Text}");
                }

                break;
            case ReportTable table:
                Write(writer, table);
                break;
            case ReportFigure figure:
                Wrapped(writer, "[picture] ", "          ", figure.Caption);
                break;
            case ReportDetails details:
                Wrapped(writer, string.Empty, string.Empty, details.Summary);
                foreach (var folded in details.Blocks)
                {
                    writer.Write('\n');
                    Write(writer, folded);
                }

                break;
            case ReportEnclosure enclosure:
                Wrapped(writer, string.Empty, string.Empty, EnclosureText.Of(enclosure));
                break;
            default:
                throw new InvalidOperationException($"No way to write a {block.GetType().Name} as plain text.");
        }
    }

    private static void Write(TextWriter writer, ReportTable table)
    {
        Wrapped(writer, string.Empty, string.Empty, table.Caption);
        var widths = table
            .Columns.Select(
                (column, i) => table.Rows.Select(row => Width(Safe(row[i].Text))).Append(Width(Safe(column.Head))).Max()
            )
            .ToArray();
        Row(writer, table, [.. table.Columns.Select(column => column.Head)], widths);
        writer.Write("  " + string.Join("  ", widths.Select(width => new string('-', width))) + "\n");
        foreach (var row in table.Rows)
        {
            Row(writer, table, [.. row.Select(cell => cell.Text)], widths);
        }
    }

    private static void Row(TextWriter writer, ReportTable table, IReadOnlyList<string> cells, int[] widths)
    {
        var line = new StringBuilder();
        for (var i = 0; i < cells.Count; i++)
        {
            var cell = Safe(cells[i]);
            var padding = new string(' ', widths[i] - Width(cell));
            line.Append("  ").Append(table.Columns[i].IsFigure ? padding + cell : cell + padding);
        }

        writer.Write(line.ToString().TrimEnd() + "\n");
    }

    private static void Underlined(TextWriter writer, string text, char line)
    {
        writer.Write(Safe(text) + "\n");
        writer.Write(new string(line, Math.Max(1, Width(Safe(text)))) + "\n");
    }

    private static void Wrapped(TextWriter writer, string first, string rest, string text)
    {
        var line = new StringBuilder(first);
        var (width, isEmpty) = (first.Length, true);
        var words = Safe(text)
            .Replace(" %", $"{Glue}%", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        foreach (var glued in words)
        {
            var word = glued.Replace(Glue, ' ');
            if (!isEmpty && width + 1 + Width(word) > LineWidth)
            {
                writer.Write(line + "\n");
                line.Clear().Append(rest);
                (width, isEmpty) = (rest.Length, true);
            }

            line.Append(isEmpty ? "" : " ").Append(word);
            width += (isEmpty ? 0 : 1) + Width(word);
            isEmpty = false;
        }

        writer.Write(line.ToString().TrimEnd() + "\n");
    }

    /// <summary>Nothing in a study's names may steer the terminal.</summary>
    private static string Safe(string text) =>
        text.Any(char.IsControl) ? string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)) : text;

    private static int Width(string text) => text.EnumerateRunes().Count();
}
