using System.Text.RegularExpressions;
using System.Xml.Linq;
using CompareBoards.Charts;

namespace CompareBoards.Tests.Charts;

public sealed partial class ChartTests
{
    private const string Interval = "95 % interval";
    private static readonly byte[] PngSignature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    public static TheoryData<string> Kinds =>
        ["run times", "charge", "clock", "current", "ratios", "trade", "best clock"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_AnyChart_IsXmlWithItsWordsAndUnits(string kind)
    {
        var words = Words(Draw(kind, setups: 3));

        Assert.Contains("Setup 2 of Gneiss", words, StringComparison.Ordinal);
        Assert.Contains(Interval, words, StringComparison.Ordinal);
        Assert.Matches(@"\((s|ms|mC|mA)\)|÷", words);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_DrawnAgain_GivesTheSameText(string kind) =>
        Assert.Equal(Draw(kind, setups: 3).ToSvg(), Draw(kind, setups: 3).ToSvg());

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToPng_AnyChart_IsAPictureThreeTimesAsWide(string kind)
    {
        var png = Draw(kind, setups: 3).ToPng();

        Assert.Equal(PngSignature, png[..8]);
        Assert.Equal(
            3 * ChartStyle.Width,
            System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16, 4))
        );
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Draw_ManySetups_GivesEachAPlaceOfItsOwn(string kind)
    {
        var chart = Draw(kind, setups: 30);
        var names = XDocument
            .Parse(chart.ToSvg())
            .Descendants()
            .Where(element =>
                element.Name.LocalName == "text" && element.Value.Contains("Setup ", StringComparison.Ordinal)
            )
            .Select(element => Translation().Match((string)element.Attribute("transform")!).Groups["y"].Value)
            .ToArray();

        Assert.Equal(30, names.Length);
        Assert.Equal(30, names.Distinct(StringComparer.Ordinal).Count());
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Draw_NoIntervals_DrawsThePointsAlone(string kind)
    {
        var with = Draw(kind, setups: 2);
        var without = Draw(kind, setups: 2, withIntervals: false);

        Assert.Contains("Setup 1", Words(without), StringComparison.Ordinal);
        Assert.True(without.ToSvg().Length < with.ToSvg().Length);
    }

    [Fact]
    public void Draw_LongName_IsCutInItsMiddle()
    {
        var name = "Gneiss " + new string('x', 180) + " 160 MHz";
        var row = new RunTimeRow(name, 0, new ChartPoint(1, 0.9, 1.1), [1]);

        var words = Words(RunTimeChart.Draw("sorting", [row], Interval));

        Assert.Contains("Gneiss xxx", words, StringComparison.Ordinal);
        Assert.Contains("…", words, StringComparison.Ordinal);
        Assert.Contains("x 160 MHz", words, StringComparison.Ordinal);
        Assert.DoesNotContain(name, words, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_NegativeFixedPart_ShowsTheAxisBelowZero()
    {
        var line = new DrawnLine(
            "Gneiss",
            0,
            [(80e6, new ChartPoint(2.3, 2.29, 2.31)), (160e6, new ChartPoint(1.1, 1.09, 1.11))],
            new ChartPoint(-0.1, -0.13, -0.07),
            192e6
        );

        Assert.Contains("Gneiss", Words(ClockChart.Draw("sorting", [line], Interval)), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_EqualTrials_DrawsThem()
    {
        var row = new RunTimeRow("Gneiss", 0, new ChartPoint(1.8, 1.77, 1.83), [1.8, 1.8, 1.8]);

        Assert.Contains("run time (s)", Words(RunTimeChart.Draw("sorting", [row], Interval)), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_TrialsInOrder_NamesTheDriftThatWasFound()
    {
        var chart = OrderChart.Draw(
            "sorting",
            [
                new OrderRow("Gneiss", 0, 1.0, [(1, 0.99), (3, 1.0), (5, 1.01)], 0.01),
                new OrderRow("Chert", 1, 2.0, [(2, 2.0), (4, 2.01), (6, 1.99)], null),
            ]
        );

        Assert.Contains("a drift was found for Gneiss.", chart.Description, StringComparison.Ordinal);
        Assert.Contains("place in the order of all trials", Words(chart), StringComparison.Ordinal);
        Assert.Contains("Chert", Words(chart), StringComparison.Ordinal);
    }

    [Fact]
    public void Unbeaten_AnySetups_AreThoseThatNoOtherBeatsInBoth()
    {
        TradePoint Setup(string name, double seconds, double coulombs) =>
            new(name, 0, new ChartPoint(seconds, null, null), new ChartPoint(coulombs, null, null));

        var front = TradeChart.Unbeaten([
            Setup("slow and cheap", 9, 0.1),
            Setup("beaten by the middle", 6, 0.4),
            Setup("fast and dear", 1, 0.9),
            Setup("as dear, slower", 2, 0.9),
            Setup("middle", 5, 0.3),
        ]);

        Assert.Equal(["fast and dear", "middle", "slow and cheap"], front.Select(point => point.Name));
    }

    private static Chart Draw(string kind, int setups, bool withIntervals = true)
    {
        ChartPoint Point(double value) =>
            withIntervals ? new(value, value * 0.98, value * 1.02) : new ChartPoint(value, null, null);
        string Name(int i) => $"Setup {i} of {(i % 2 == 0 ? "Gneiss" : "Chert")}";
        var all = Enumerable.Range(1, setups).ToArray();
        return kind switch
        {
            "run times" => RunTimeChart.Draw(
                "sorting",
                [.. all.Select(i => new RunTimeRow(Name(i), i % 2, Point(i), [i * 0.999, i * 1.001, i * 1.03]))],
                Interval
            ),
            "charge" => ChargeChart.Draw(
                "sorting",
                [.. all.Select(i => new ChargeRow(Name(i), i % 2, Point(i * 0.01), Point(i * 0.008)))],
                "display alone",
                Interval
            ),
            "clock" => ClockChart.Draw(
                "sorting",
                [
                    .. all.Select(i => new DrawnLine(
                        Name(i),
                        i,
                        [(80e6, Point(i)), (160e6, Point(i / 2.0))],
                        Point(0.01 * i),
                        i * 78e6
                    )),
                ],
                Interval
            ),
            "ratios" => RatioChart.Draw(
                "sorting",
                [.. all.Select(i => new RatioRow(Name(i), "the next", i % 2, Point(0.9 + i * 0.01), i % 2 == 0))],
                0.02,
                Interval
            ),
            "trade" => TradeChart.Draw(
                "sorting",
                [.. all.Select(i => new TradePoint(Name(i), i % 2, Point(i), Point(0.2 / i)))],
                Interval
            ),
            "best clock" => BestClockChart.Draw(
                "sorting",
                [
                    .. all.Select(i => new BestClockLine(
                        Name(i),
                        i % 2,
                        [(80e6, Point(0.01 * i)), (160e6, Point(0.009 * i))],
                        [(80e6, 0.01 * i), (120e6, 0.0085 * i), (160e6, 0.009 * i)],
                        Point(120e6)
                    )),
                ],
                Interval
            ),
            _ => CurrentChart.Draw(
                "sorting",
                [
                    .. all.Select(i => new DrawnLine(
                        Name(i),
                        i,
                        [(80e6, Point(0.01 * i)), (160e6, Point(0.02 * i))],
                        Point(0.001 * i),
                        1e-10 * i
                    )),
                ],
                Interval
            ),
        };
    }

    /// <summary>What is written in a chart. Runs of one text are put together as they stand.</summary>
    private static string Words(Chart chart) =>
        string.Join(
            '\n',
            XDocument.Parse(chart.ToSvg()).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)
        );

    [GeneratedRegex(@"translate\([^ ]+ (?<y>[^)]+)\)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Translation();
}
