using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>
/// Writes a report as one self-contained HTML page: no network, no script; light and dark; fit for paper. Whatever
/// comes from the study is escaped, so a board named <c>&lt;script&gt;</c> is text.
/// </summary>
public static class HtmlWriter
{
    // A picture keeps white behind it, since its lines are drawn for paper; in the dark only the page around it turns.
    private const string Style = """
        :root { color-scheme: light dark; --ink: #1b1d1f; --paper: #fdfdfb; --rule: #c9ccc6; --faint: #5a5f63; --band: #f1f2ed; }
        @media (prefers-color-scheme: dark) {
          :root { --ink: #e6e4df; --paper: #17191b; --rule: #44494d; --faint: #a9aeb2; --band: #212427; }
        }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.55 "Charter", "Georgia", "DejaVu Serif", serif; }
        main { max-width: 62rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; }
        h1, h2, h3, th, caption, figcaption { font-family: "Helvetica Neue", "Arial", "DejaVu Sans", sans-serif; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 1rem; }
        h2 { font-size: 1.25rem; margin: 2.5rem 0 .75rem; padding-top: .75rem; border-top: 2px solid var(--ink); }
        h3 { font-size: 1.05rem; margin: 1.75rem 0 .5rem; }
        p, li { max-width: 46rem; }
        li { margin: .35rem 0; }
        .wide { overflow-x: auto; margin: 1rem 0; }
        .wide:focus-visible { outline: 2px solid currentColor; outline-offset: 2px; }
        table { border-collapse: collapse; font-size: .9rem; font-variant-numeric: tabular-nums; }
        caption { text-align: left; font-size: .9rem; color: var(--faint); padding: 0 0 .4rem; }
        th, td { text-align: left; vertical-align: top; padding: .3rem .75rem .3rem 0; border-bottom: 1px solid var(--rule); }
        th { border-bottom: 1.5px solid var(--ink); font-size: .8rem; vertical-align: bottom; }
        tbody td:first-child { min-width: 11rem; }
        .figure { text-align: right; white-space: nowrap; }
        figure { margin: 1.5rem 0; }
        figure img { display: block; width: 100%; max-width: 40rem; height: auto; background: #fff; border-radius: 2px; }
        figcaption { font-size: .9rem; color: var(--faint); margin-top: .4rem; max-width: 46rem; }
        @media print {
          @page { size: A4; margin: 16mm; }
          :root { --ink: #000; --paper: #fff; --rule: #999; --faint: #333; --band: #fff; }
          body { font-size: 10pt; }
          main { max-width: none; padding: 0; }
          .wide { overflow: visible; }
          table { font-size: 7.5pt; }
          h2, h3 { break-after: avoid; }
          figure, tr { break-inside: avoid; }
        }
        """;

    /// <summary>Writes a report as a page. O(n) in its text and pictures.</summary>
    /// <param name="writer">Where to; stays open. Write it as UTF-8, which is what the page says it is.</param>
    /// <param name="report">What.</param>
    public static void Write(TextWriter writer, Report report)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(report);
        var title = Escape(report.Title);
        writer.Write(
            $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
            <title>{title}</title>
            <style>
            {Style}
            </style>
            </head>
            <body>
            <main>
            <h1>{title}</h1>

            """.ReplaceLineEndings("\n")
        );
        foreach (var block in report.Blocks)
        {
            Write(writer, block);
        }

        writer.Write("</main>\n</body>\n</html>\n");
    }

    private static void Write(TextWriter writer, ReportBlock block)
    {
        switch (block)
        {
            case ReportHeading heading:
                writer.Write($"<h{heading.Level}>{Escape(heading.Text)}</h{heading.Level}>\n");
                break;
            case ReportParagraph paragraph:
                writer.Write($"<p>{Escape(paragraph.Text)}</p>\n");
                break;
            case ReportList list:
                writer.Write("<ul>\n");
                foreach (var item in list.Items)
                {
                    writer.Write($"<li>{Escape(item)}</li>\n");
                }

                writer.Write("</ul>\n");
                break;
            case ReportTable table:
                Write(writer, table);
                break;
            case ReportFigure figure:
                Write(writer, figure);
                break;
            default:
                throw new InvalidOperationException($"No way to write a {block.GetType().Name} as HTML.");
        }
    }

    private static void Write(TextWriter writer, ReportTable table)
    {
        var caption = Escape(table.Caption);
        // The frame scrolls where a table is wider than the screen, so it must be reachable by keyboard and have a name.
        writer.Write($"<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"{caption}\">\n");
        writer.Write($"<table>\n<caption>{caption}</caption>\n<thead><tr>");
        foreach (var column in table.Columns)
        {
            writer.Write($"<th scope=\"col\"{Class(column)}>{Escape(column.Head)}</th>");
        }

        writer.Write("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            writer.Write("<tr>");
            for (var i = 0; i < row.Count; i++)
            {
                writer.Write($"<td{Class(table.Columns[i])}>{Escape(row[i])}</td>");
            }

            writer.Write("</tr>\n");
        }

        writer.Write("</tbody>\n</table>\n</div>\n");
    }

    private static void Write(TextWriter writer, ReportFigure figure)
    {
        // As an image of its own, a picture can't clash with another's identifiers, nor run anything.
        var data = Convert.ToBase64String(Encoding.UTF8.GetBytes(figure.Svg));
        writer.Write(
            $"<figure>\n<img alt=\"{Escape(figure.AlternativeText)}\" src=\"data:image/svg+xml;base64,{data}\">\n"
        );
        writer.Write($"<figcaption>{Escape(figure.Caption)}</figcaption>\n</figure>\n");
    }

    private static string Class(ReportColumn column) => column.IsFigure ? " class=\"figure\"" : string.Empty;

    private static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),
                _ when char.IsControl(c) => escaped.Append(' '),
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }
}
