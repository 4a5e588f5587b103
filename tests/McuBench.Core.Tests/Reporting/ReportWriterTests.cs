using System.Security.Cryptography;
using System.Text;
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

        // The page's own script is the only one.
        Assert.Equal(2, html.Split("<script").Length);
        Assert.Contains("<script>\"use strict\";", html, StringComparison.Ordinal);
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

        Assert.Equal(["h2", "p", "ul", "div", "figure"], main.Elements().Select(element => element.Name.LocalName));
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
    public void Html_Policy_LetsTheWrittenScriptRunAndNoOther()
    {
        var html = Written(HtmlWriter.Write);
        var start = html.IndexOf("<script>", StringComparison.Ordinal) + "<script>".Length;
        var script = html[start..html.IndexOf("</script>", start, StringComparison.Ordinal)];

        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));

        Assert.Contains($"script-src 'sha256-{hash}'\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_Anchors_LeadFromCellsPointsAndPicturesToWhatIsFolded()
    {
        var html = Html(
            new ReportHeading(2, "One"),
            new ReportTable(
                "t",
                [new ReportColumn("setup", false)],
                [
                    [new ReportCell("Marl") { Target = "a-1" }],
                ]
            ),
            new ReportList([new ReportItem("said") { Lead = "Fastest:", Links = [new ReportLink("Marl", "a-1")] }]),
            new ReportHeading(2, "Two"),
            new ReportDetails("Trials of <Marl>", [new ReportParagraph("2.4 s")]) { Anchor = "a-1" }
        );

        Assert.Contains("<th scope=\"row\"><a href=\"#a-1\">Marl</a></th>", html, StringComparison.Ordinal);
        Assert.Contains(
            "<li><b>Fastest:</b> said <span class=\"behind\">Trials: <a href=\"#a-1\">Marl</a></span></li>",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "<details id=\"a-1\">\n<summary>Trials of &lt;Marl&gt;</summary>\n<p>2.4 s</p>\n</details>",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains("<li><a href=\"#section-2\">Two</a></li>", html, StringComparison.Ordinal);
        Assert.Contains("<h2 id=\"section-2\">Two</h2>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_LinkToNowhere_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => Html(new ReportList([new ReportItem("said") { Links = [new ReportLink("Marl", "a-1")] }])),
            "report",
            "Links must lead to an anchor of the report; none is named \"a-1\"."
        );

    [Fact]
    public void Html_AnchorTwice_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => Html(new ReportHeading(2, "One") { Anchor = "a" }, new ReportDetails("Two", []) { Anchor = "a" }),
            "report",
            "Anchors must be distinct in a report; \"a\" stands twice."
        );

    [Fact]
    public void Html_Figures_CarryTheNumberThatTheyAreSortedBy()
    {
        var html = Html(
            new ReportTable(
                "t",
                [new ReportColumn("setup", false), new ReportColumn("run time", true)],
                [
                    ["Marl", new ReportCell("905 ms") { Order = 0.905 }],
                    ["Tuff", "not read"],
                ]
            )
        );

        Assert.Contains("<td class=\"figure\" data-order=\"0.905\">905 ms</td>", html, StringComparison.Ordinal);
        Assert.Contains("<td class=\"figure\">not read</td>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void MarkdownAndPlainText_FoldedPartsAndEnclosures_AreWritten()
    {
        var report = new Report(
            "t",
            [
                new ReportDetails("Trials of *Marl*", [new ReportParagraph("2.4 s")]),
                new ReportList([new ReportItem("said.") { Lead = "Fastest:" }]),
                new ReportEnclosure("study.json", "abc"u8),
            ]
        );

        // The digest of "abc" is the first example of FIPS 180-4.
        const string enclosed =
            "study.json: 3 bytes, SHA-256 ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad.";
        Assert.Equal(
            $"# t\n\nTrials of \\*Marl\\*\n\n2.4 s\n\n- **Fastest:** said.\n\n{enclosed}\n",
            Written(MarkdownWriter.Write, report)
        );
        Assert.Contains("  - Fastest: said.\n", Written(PlainTextWriter.Write, report), StringComparison.Ordinal);
        Assert.Contains(
            "Trials of *Marl*\n\n2.4 s\n",
            Written(PlainTextWriter.Write, report),
            StringComparison.Ordinal
        );
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

    private static string Html(params IEnumerable<ReportBlock> blocks) =>
        Written(HtmlWriter.Write, new Report("t", blocks));

    private static string Written(Action<TextWriter, Report> write) => Written(write, Hostile);

    private static string Written(Action<TextWriter, Report> write, Report report)
    {
        using var writer = new StringWriter();
        write(writer, report);
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
