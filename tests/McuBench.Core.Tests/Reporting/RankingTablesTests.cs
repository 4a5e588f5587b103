using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;
using McuBench.Core.Tests.Conclusions;

namespace McuBench.Core.Tests.Reporting;

public sealed class RankingTablesTests
{
    private static readonly double[] Wobble = [0.9990, 1.0004, 1.0012, 0.9996, 0.9998];

    [Fact]
    public void Full_ThreeSetups_TablesPlacesThatAreOpen()
    {
        var table = Table("Ranked by run time, frame checksum.", ("a", 1.0), ("b", 1.0001), ("c", 2.0));

        Assert.Equal(["1 (1 to 2)", "2 (1 to 2)", "3"], table.Rows.Select(r => r[0].Text));
        Assert.Equal(["a", "b", "c"], table.Rows.Select(r => r[1].Text));
        Assert.Equal(["2", "1", ""], table.Rows.Select(r => r[5].Text));
        Assert.Equal(["< 1 %", "> 99 %"], table.Rows[2].Skip(3).Take(2).Select(c => c.Text));
    }

    [Fact]
    public void Full_Rankings_SayWhatToldApartMeans()
    {
        var text = Text(("a", 1.0), ("b", 2.0));

        Assert.Contains(
            "Told apart means: with 95 % confidence none of the 2 comparisons of this study is called different that isn't.",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "By run time on the frame checksum a comes first, told apart from the other.",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Full_Budgets_SayWhatWouldNarrow()
    {
        var table = Table(
            "Run times: the largest part of each interval, and the width after a change as a share of the width now.",
            ("a", 1.0)
        );

        // Twenty trials for five: 2.093/2.776/2 of Student's t.
        Assert.Equal(
            ["frame checksum", "a", "scatter of 5 trials, a (100 % of the variance)", "0.38", "none would pay"],
            table.Rows[0].Select(c => c.Text)
        );
    }

    private static ReportTable Table(string caption, params (string Name, double Seconds)[] setups) =>
        Assert.Single(
            StudyReport.Full(Conclude(setups), []).Blocks.SelectMany(Opened).OfType<ReportTable>(),
            t => string.Equals(t.Caption, caption, StringComparison.Ordinal)
        );

    private static IEnumerable<ReportBlock> Opened(ReportBlock block) =>
        block is ReportDetails details ? details.Blocks.SelectMany(Opened) : [block];

    private static string Text(params (string Name, double Seconds)[] setups)
    {
        using var writer = new StringWriter();
        MarkdownWriter.Write(writer, StudyReport.Full(Conclude(setups), []));
        return writer.ToString();
    }

    private static StudyConclusions Conclude((string Name, double Seconds)[] setups) =>
        Bench.Conclude(
            Study.FromTrials(
                "study",
                setups.SelectMany(s =>
                    Bench
                        .Series(
                            Bench.At(new Board(s.Name), 100) with
                            {
                                Name = s.Name,
                            },
                            Bench.Fine,
                            Wobble.Select(w => w * s.Seconds)
                        )
                        .Trials.Select(t => t with { Order = null })
                )
            )
        );
}
