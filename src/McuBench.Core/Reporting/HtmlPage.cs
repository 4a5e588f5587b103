using System.Globalization;
using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>One page while it is written.</summary>
internal sealed class HtmlPage
{
    private readonly TextWriter writer;
    private readonly Report report;
    private readonly Dictionary<ReportHeading, string> sections = new(ReferenceEqualityComparer.Instance);
    private int tables;
    private int enclosures;

    public HtmlPage(TextWriter writer, Report report)
    {
        this.writer = writer;
        this.report = report;
        ReportAnchors.Check(report);
        foreach (var heading in report.Blocks.OfType<ReportHeading>().Where(heading => heading.Level == 2))
        {
            sections.TryAdd(heading, heading.Anchor ?? FormattableString.Invariant($"section-{sections.Count + 1}"));
        }
    }

    public void Write()
    {
        var title = HtmlText.Escape(report.Title);
        writer.Write(
            $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'sha256-{HtmlScript.Hash}'">
            <title>{title}</title>
            <style>
            {HtmlStyle.Text}
            </style>
            </head>
            <body>
            <header>
            <h1>{title}</h1>

            """.ReplaceLineEndings("\n")
        );
        var opening = report.Blocks.TakeWhile(block => block is ReportParagraph).Count();
        Write(report.Blocks.Take(opening));
        Line("</header>");
        WriteContents();
        Line("<main>");
        Write(report.Blocks.Skip(opening));
        Line("</main>");
        writer.Write($"<script>{HtmlScript.Text}</script>\n</body>\n</html>\n");
    }

    private void WriteContents()
    {
        if (sections.Count < 2)
        {
            return;
        }

        Line("<nav aria-label=\"Contents\">\n<ol>");
        foreach (var heading in report.Blocks.OfType<ReportHeading>().Where(sections.ContainsKey))
        {
            Line($"<li><a href=\"#{sections[heading]}\">{HtmlText.Escape(heading.Text)}</a></li>");
        }

        Line("</ol>\n</nav>");
    }

    private void Write(IEnumerable<ReportBlock> blocks)
    {
        foreach (var block in blocks)
        {
            Write(block);
        }
    }

    private void Write(ReportBlock block)
    {
        switch (block)
        {
            case ReportHeading heading:
                var id = sections.GetValueOrDefault(heading) ?? heading.Anchor;
                Line($"<h{heading.Level}{Id(id)}>{HtmlText.Escape(heading.Text)}</h{heading.Level}>");
                break;
            case ReportParagraph paragraph:
                Line($"<p>{HtmlText.Escape(paragraph.Text)}</p>");
                break;
            case ReportList list:
                Write(list);
                break;
            case ReportTable table:
                Write(table);
                break;
            case ReportFigure figure:
                Write(figure);
                break;
            case ReportDetails details:
                Line($"<details{Id(details.Anchor)}>\n<summary>{HtmlText.Escape(details.Summary)}</summary>");
                Write(details.Blocks);
                Line("</details>");
                break;
            case ReportEnclosure enclosure:
                Write(enclosure);
                break;
            default:
                throw new InvalidOperationException($"No way to write a {block.GetType().Name} as HTML.");
        }
    }

    private void Write(ReportList list)
    {
        Line("<ul>");
        foreach (var item in list.Items)
        {
            var lead = item.Lead is null ? "" : $"<b>{HtmlText.Escape(item.Lead)}</b> ";
            Line($"<li>{lead}{HtmlText.Escape(item.Text)}{Behind(item.Links)}</li>");
        }

        Line("</ul>");
    }

    private void Write(ReportTable table)
    {
        // The frame scrolls where a table is wider than the screen, so it must be reachable by keyboard and have a name.
        var id = FormattableString.Invariant($"table-{++tables}");
        Line($"<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-labelledby=\"{id}\">\n<table>");
        writer.Write($"<caption id=\"{id}\">{HtmlText.Escape(table.Caption)}</caption>\n<thead><tr>");
        foreach (var column in table.Columns)
        {
            writer.Write($"<th scope=\"col\"{Class(column)}>{HtmlText.Escape(column.Head)}</th>");
        }

        Line("</tr></thead>\n<tbody>");
        foreach (var row in table.Rows)
        {
            writer.Write("<tr>");
            for (var i = 0; i < row.Count; i++)
            {
                var (open, close) = i == 0 && table.HasRowHeads ? ("th scope=\"row\"", "th") : ("td", "td");
                writer.Write($"<{open}{Class(table.Columns[i])}{Order(row[i])}>{Content(row[i])}</{close}>");
            }

            Line("</tr>");
        }

        Line("</tbody>\n</table>\n</div>");
    }

    private void Write(ReportFigure figure)
    {
        // As an image of its own, a picture can't clash with another's identifiers, nor run anything.
        var data = Convert.ToBase64String(Encoding.UTF8.GetBytes(figure.Svg));
        Line(
            $"<figure>\n<img alt=\"{HtmlText.Escape(figure.AlternativeText)}\" src=\"data:image/svg+xml;base64,{data}\">"
        );
        Line($"<figcaption>{HtmlText.Escape(figure.Caption)}{Behind(figure.Links)}</figcaption>\n</figure>");
    }

    private void Write(ReportEnclosure enclosure)
    {
        var id = FormattableString.Invariant($"enclosed-{++enclosures}");
        var name = HtmlText.Escape(enclosure.Name);
        Line($"<p>{HtmlText.Escape(EnclosureText.Of(enclosure))}</p>");
        Line(
            $"<p><button class=\"save\" type=\"button\" hidden data-of=\"{id}\" data-name=\"{name}\">Save {name}</button></p>"
        );

        // A block of data, which no browser runs.
        Line(
            $"{EnclosureText.OpeningTag} id=\"{id}\" data-sha256=\"{enclosure.Sha256}\">{EnclosureText.Packed(enclosure)}</script>"
        );
    }

    private static string Content(ReportCell cell) =>
        cell.Target is { } target
            ? $"<a href=\"#{HtmlText.Escape(target)}\">{HtmlText.Escape(cell.Text)}</a>"
            : HtmlText.Escape(cell.Text);

    private static string Behind(IReadOnlyList<ReportLink> links) =>
        links.Count == 0
            ? ""
            : $" <span class=\"behind\">Trials: {string.Join(", ", links.Select(link => $"<a href=\"#{HtmlText.Escape(link.Target)}\">{HtmlText.Escape(link.Text)}</a>"))}</span>";

    private static string Order(ReportCell cell) =>
        cell.Order is { } order ? string.Create(CultureInfo.InvariantCulture, $" data-order=\"{order:R}\"") : "";

    private static string Id(string? anchor) => anchor is null ? "" : $" id=\"{HtmlText.Escape(anchor)}\"";

    private static string Class(ReportColumn column) => column.IsFigure ? " class=\"figure\"" : "";

    private void Line(string text)
    {
        writer.Write(text);
        writer.Write('\n');
    }
}
