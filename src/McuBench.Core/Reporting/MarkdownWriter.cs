using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>Writes a report as Markdown (CommonMark with pipe tables); names are escaped, so they stay text. Links within the
/// report and enclosed files stay with the HTML form; an enclosed file's digest is given.</summary>
public static class MarkdownWriter
{
    /// <summary>Writes a report. O(n) in its text. Pictures are referred to as files beside the report, named after them.</summary>
    /// <param name="writer">Where to; stays open.</param>
    /// <param name="report">What.</param>
    public static void Write(TextWriter writer, Report report)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(report);
        writer.Write($"# {Escape(report.Title)}\n");
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
                writer.Write($"{new string('#', heading.Level)} {Escape(heading.Text)}\n");
                break;
            case ReportParagraph paragraph:
                writer.Write(Escape(paragraph.Text) + "\n");
                break;
            case ReportList list:
                foreach (var item in list.Items)
                {
                    var lead = item.Lead is null ? "" : $"**{Escape(item.Lead)}** ";
                    writer.Write($"- {lead}{Escape(item.Text)}\n");
                }

                break;
            case ReportTable table:
                writer.Write($"{Escape(table.Caption)}\n\n");
                Row(writer, table.Columns.Select(column => column.Head));
                writer.Write($"|{string.Concat(table.Columns.Select(c => c.IsFigure ? " ---: |" : " --- |"))}\n");
                foreach (var row in table.Rows)
                {
                    Row(writer, row.Select(cell => cell.Text));
                }

                break;
            case ReportFigure figure:
                writer.Write(
                    $"![{Escape(figure.AlternativeText)}]({Uri.EscapeDataString(figure.Name)}.svg)\n\n{Escape(figure.Caption)}\n"
                );
                break;
            case ReportDetails details:
                writer.Write($"{Escape(details.Summary)}\n");
                foreach (var folded in details.Blocks)
                {
                    writer.Write('\n');
                    Write(writer, folded);
                }

                break;
            case ReportEnclosure enclosure:
                writer.Write($"{Escape(EnclosureText.Of(enclosure))}\n");
                break;
            default:
                throw new InvalidOperationException($"No way to write a {block.GetType().Name} as Markdown.");
        }
    }

    private static void Row(TextWriter writer, IEnumerable<string> cells) =>
        writer.Write($"| {string.Join(" | ", cells.Select(Escape))} |\n");

    private static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (char.IsControl(c))
            {
                escaped.Append(' ');
                continue;
            }

            // A backslash before these is taken away again by every CommonMark reader. The rest of the ASCII
            // punctuation steers nothing in the middle of a line; at its start only '-', '+' and '#' do.
            if (c is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '#' or '~' or '&')
            {
                escaped.Append('\\');
            }
            else if (escaped.Length == 0 && c is '-' or '+')
            {
                escaped.Append('\\');
            }

            escaped.Append(c);
        }

        return escaped.ToString();
    }
}
