using System.Xml.Linq;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using UnitsNet;

namespace CompareBoards.Tests;

public sealed class ChartSetTests
{
    private static readonly double[] Wobble = [0.999, 1, 1.001];
    private static readonly int[] Clocks = [80, 160];

    [Fact]
    public void Of_TwoLinesOfOneBoard_AreNamedAfterTheirSetups()
    {
        var words = WordsOfClockChart(["plain", "tuned"]);

        Assert.Contains("plain 80, plain 160", words, StringComparison.Ordinal);
        Assert.Contains("tuned 80, tuned 160", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneLineOfABoard_IsNamedAfterTheBoard()
    {
        var words = WordsOfClockChart(["plain"]);

        Assert.Contains("Gneiss", words, StringComparison.Ordinal);
        Assert.DoesNotContain("plain 80", words, StringComparison.Ordinal);
    }

    private static string WordsOfClockChart(string[] builds)
    {
        var board = new Board("Gneiss");
        var sorting = new Workload("sorting", 100);
        var timer = new TrialTimer("counter", Duration.FromMicroseconds(1), TimerReading.Rounded);
        var trials =
            from build in builds
            from megahertz in Clocks
            from wobble in Wobble
            let setup = new Setup(
                FormattableString.Invariant($"{build} {megahertz}"),
                board,
                Frequency.FromMegahertz(megahertz)
            )
            {
                Toolchain = new Toolchain(build),
            }
            select new Trial(setup, sorting, timer, Duration.FromSeconds(0.1 + 96 * wobble / megahertz));
        var conclusions = StudyConclusions.Of(
            Study.FromTrials("Two invented builds", trials),
            cancellationToken: TestContext.Current.CancellationToken
        );
        var chart = ChartSet.Of(conclusions).Single(chart => chart.Name.StartsWith("clock", StringComparison.Ordinal));
        return XDocument.Parse(chart.ToSvg()).Root!.Value;
    }
}
