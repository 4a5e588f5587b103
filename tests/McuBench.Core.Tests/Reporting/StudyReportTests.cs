using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Reporting;

public sealed class StudyReportTests
{
    private static readonly double[] Wobble = [0.9990, 1.0004, 1.0012, 0.9996, 0.9998];

    [Fact]
    public void Brief_DifferenceWithinMargin_IsSaidToBeRealAndWithinIt()
    {
        var text = Brief(Ratio.FromPercent(2), ("Marl", 1.0), ("Tuff", 1.01));

        Assert.DoesNotContain("does not show it to be ahead", text, StringComparison.Ordinal);
        Assert.Contains("Marl takes 0.99", text, StringComparison.Ordinal);
        Assert.Contains("real, yet within the stated margin of 2 %", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Brief_EqualWithinMargin_IsListed()
    {
        var text = Brief(Ratio.FromPercent(2), ("Marl", 1.0), ("Tuff", 1.0));

        Assert.Contains(
            "Equal in run time within the stated margin of 2 %: Marl to Tuff.",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Brief_NoMargin_CallsNothingEqual()
    {
        var text = Brief(margin: null, ("Marl", 1.0), ("Tuff", 1.0));

        Assert.Contains("does not show it to be ahead of", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Equal in run time", text, StringComparison.Ordinal);
        Assert.Contains("No two setups are called equal", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5EED", "10 trials and 0 supply readings, all of them used.")]
    [InlineData(
        "BAD0",
        "10 trials and 0 supply readings; 1 trial put out something with the wrong checksum and is no result, all others were used."
    )]
    public void Full_Method_CountsWhatIsNoResult(string checksum, string said)
    {
        var trials = Trials(("Marl", 1.0), ("Tuff", 1.1)).ToArray();
        trials[0] = trials[0] with { OutputChecksum = checksum };

        var text = Text(StudyReport.Full(Conclude(trials, ConclusionOptions.Default), []));

        Assert.Contains(said, text, StringComparison.Ordinal);
    }

    private static string Brief(Ratio? margin, params (string Name, double Seconds)[] boards) =>
        Text(StudyReport.Brief(Conclude(Trials(boards), ConclusionOptions.Default with { Margin = margin })));

    private static StudyConclusions Conclude(IEnumerable<Trial> trials, ConclusionOptions options) =>
        StudyConclusions.Of(
            Study.FromTrials("Gauges", trials),
            options,
            cancellationToken: TestContext.Current.CancellationToken
        );

    private static IEnumerable<Trial> Trials(params (string Name, double Seconds)[] boards) =>
        from board in boards
        let setup = new Setup(board.Name, new Board(board.Name), Frequency.FromMegahertz(100))
        let workload = Sketch.Echo with
        {
            OutputChecksum = "5EED",
        }
        from factor in Wobble
        select new Trial(setup, workload, Sketch.Microseconds, Duration.FromSeconds(board.Seconds * factor));

    private static string Text(Report report)
    {
        using var writer = new StringWriter();
        MarkdownWriter.Write(writer, report);
        return writer.ToString();
    }
}
