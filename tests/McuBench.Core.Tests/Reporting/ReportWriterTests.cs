using System.Xml.Linq;
using McuBench.Core.Reporting;

namespace McuBench.Core.Tests.Reporting;

/// <summary>The three writers on one report whose words try to be more than words.</summary>
public sealed class ReportWriterTests
{
    private static readonly Report Hostile = new(
        "Lake <gauges> & \"more\"",
        [
            new ReportHeading(2, "Which <b>board</b>?"),
            new ReportParagraph("A board named <script>alert(1)</script> | `code` \u001b[31m_red_."),
            new ReportList(["- first", "second <i>"]),
            new ReportTable(
                "Times & more",
                [new ReportColumn("setup", false), new ReportColumn("run time", true)],
                [
                    ["<img src=x onerror=alert(1)>", "2.4 s"],
                    ["Marl | 200", "412.10 ms"],
                ]
            ),
            new ReportFigure(
                "run-times",
                "Every trial is a point.",
                "Run \"times\"",
                "<svg xmlns=\"http://www.w3.org/2000/svg\"/>"
            ),
        ]
    );

    [Fact]
    public void Html_HostileNames_AreText()
    {
        var html = Written(HtmlWriter.Write);

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src=x", html, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', html);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt;", html, StringComparison.Ordinal);
        Assert.Contains("alt=\"Run &quot;times&quot;\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_Tags_NestAndCarryEveryBlock()
    {
        var html = Written(HtmlWriter.Write);
        var body = html[
            html.IndexOf("<main>", StringComparison.Ordinal)..(html.IndexOf("</main>", StringComparison.Ordinal) + 7)
        ];

        // Void elements closed, the page's body is well-formed XML: every tag nests.
        var main = XElement.Parse(body.Replace("base64,", string.Empty, StringComparison.Ordinal).ReplaceVoid());

        Assert.Equal(
            ["h1", "h2", "p", "ul", "div", "figure"],
            main.Elements().Select(element => element.Name.LocalName)
        );
        Assert.Equal(["2.4 s", "412.10 ms"], main.Descendants("td").Where(IsFigure).Select(td => td.Value));
    }

    [Fact]
    public void Html_Page_ReachesForNothing()
    {
        var html = Written(HtmlWriter.Write);

        Assert.DoesNotContain("http:", html, StringComparison.Ordinal);
        Assert.DoesNotContain("https:", html, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", html, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Markdown_HostileNames_AreEscaped()
    {
        var markdown = Written(MarkdownWriter.Write);

        Assert.Contains("# Lake \\<gauges\\> \\& \"more\"\n", markdown, StringComparison.Ordinal);
        Assert.Contains("- \\- first\n- second \\<i\\>\n", markdown, StringComparison.Ordinal);
        Assert.Contains("| setup | run time |\n| --- | ---: |\n", markdown, StringComparison.Ordinal);
        Assert.Contains("| Marl \\| 200 | 412.10 ms |\n", markdown, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', markdown);
    }

    [Fact]
    public void PlainText_Table_IsAligned()
    {
        var text = Written(PlainTextWriter.Write);

        Assert.Contains(
            """
              setup                          run time
              ----------------------------  ---------
              <img src=x onerror=alert(1)>      2.4 s
              Marl | 200                    412.10 ms

            """.ReplaceLineEndings("\n"),
            text,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain('\u001b', text);
    }

    [Fact]
    public void PlainText_LongParagraph_IsWrappedAtWords()
    {
        var report = new Report("t", [new ReportParagraph(string.Join(' ', Enumerable.Repeat("seven77", 40)))]);
        using var writer = new StringWriter();

        PlainTextWriter.Write(writer, report);

        var lines = writer.ToString().Split('\n')[3..^1];
        Assert.True(lines.Length > 1);
        Assert.All(lines, line => Assert.InRange(line.Length, 1, 100));
        Assert.Equal(40, lines.Sum(line => line.Split(' ').Length));
    }

    [Fact]
    public void Table_RowOfAnotherLength_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () =>
                new ReportTable(
                    "t",
                    [new ReportColumn("a", false)],
                    [
                        ["1"],
                        ["1", "2"],
                    ]
                ),
            "rows",
            "Every row must have 1 cells, one a column; row 1 had 2."
        );

    [Fact]
    public void Table_NoColumn_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new ReportTable("t", [], []),
            "columns",
            "A table must have at least one column; the list was empty."
        );

    private static bool IsFigure(XElement td) => td.Attribute("class")?.Value == "figure";

    private static string Written(Action<TextWriter, Report> write)
    {
        using var writer = new StringWriter();
        write(writer, Hostile);
        return writer.ToString();
    }
}

file static class VoidElements
{
    public static string ReplaceVoid(this string html)
    {
        // The only void element that the body holds is img; its attributes hold no '>'.
        var start = html.IndexOf("<img", StringComparison.Ordinal);
        var end = html.IndexOf('>', start);
        return html[..end] + "/" + html[end..];
    }
}
