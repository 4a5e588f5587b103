using McuBench.Core.Reporting;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Reporting;

public sealed class CsvTableWriterTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-0.5 %", "'-0.5 %")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\tx", "'\tx")]
    [InlineData("\rx", "\"'\rx\"")]
    [InlineData("\nx", "\"'\nx\"")]
    [InlineData("=HYPERLINK(\"x\",\"y\")", "\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\"")]
    [InlineData("a=1", "a=1")]
    [InlineData("Marl, 200", "\"Marl, 200\"")]
    [InlineData("", "")]
    public void Write_TextThatASpreadsheetMightRun_IsGuarded(string text, string written) =>
        Assert.Equal(
            $"setup\n{written}\n",
            Written(
                new ReportTable(
                    "t",
                    [new ReportColumn("setup", false)],
                    [
                        [text],
                    ]
                )
            )
        );

    [Fact]
    public void Write_HeadThatASpreadsheetMightRun_IsGuarded() =>
        Assert.Equal("'=setup\n", Written(new ReportTable("t", [new ReportColumn("=setup", false)], [])));

    [Fact]
    public void Write_FiguresWithNumbers_HaveThemInAColumnBeside()
    {
        var table = new ReportTable(
            "t",
            [new ReportColumn("setup", false), new ReportColumn("net", true), new ReportColumn("n", true)],
            [
                ["Marl", new ReportCell("-905 mA [-907, -903]") { Order = -0.905 }, "12"],
                ["Tuff", "not read", "11"],
            ]
        );

        Assert.Equal(
            "setup;net;net (number, SI);n\nMarl;'-905 mA [-907, -903];-0.905;12\nTuff;not read;;11\n",
            Written(table, new CsvOptions { Delimiter = ';' })
        );
    }

    private static string Written(ReportTable table, CsvOptions? options = null)
    {
        using var writer = new StringWriter();
        CsvTableWriter.Write(writer, table, options);
        return writer.ToString();
    }
}
