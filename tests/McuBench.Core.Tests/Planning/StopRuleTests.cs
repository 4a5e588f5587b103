using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Planning;
using UnitsNet;

namespace McuBench.Core.Tests.Planning;

public sealed class StopRuleTests
{
    private static readonly StopRule OnePercent = new(Ratio.FromPercent(1));

    [Fact]
    public void Judge_NoTrial_GoesOn()
    {
        var decision = OnePercent.Judge(null);

        Assert.Equal(StopOutlook.GoOn, decision.Outlook);
        Assert.Equal(0, decision.Trials);
        Assert.Null(decision.HalfWidth);
        Assert.Equal("0 trials: no interval yet, and ±1 % is wanted; about 14 in all.", decision.ToString());
    }

    [Fact]
    public void Judge_NarrowAtTheMinimum_AsksForFourMoreAndThenHasEnough()
    {
        double[] times = [.. Enumerable.Range(0, 14).Select(i => 2.4 + (0.001 * (i % 3)))];

        var outlooks = Enumerable.Range(1, 14).Select(n => OnePercent.Judge(Series(times[..n])).Outlook).ToArray();

        Assert.Equal(
            [
                .. Enumerable.Repeat(StopOutlook.GoOn, 9),
                .. Enumerable.Repeat(StopOutlook.Confirm, 4),
                StopOutlook.Enough,
            ],
            outlooks
        );
        Assert.Equal(
            "12 trials: ±1 % was reached, and 2 more confirm it.",
            OnePercent.Judge(Series(times[..12])).ToString()
        );
    }

    [Fact]
    public void Judge_WideScatter_SaysAboutHowManyAreNeeded()
    {
        double[] times = [.. Enumerable.Range(0, 10).Select(i => i % 2 == 0 ? 2.3 : 2.5)];

        var decision = OnePercent.Judge(Series(times));

        // s = 0.1·√(10/9), t at 9 degrees of freedom 2.26216: 0.0754 s, 3.14 %; 10·3.14² = 98.7, and 4 confirm.
        Assert.Equal(StopOutlook.GoOn, decision.Outlook);
        Assert.Equal(103, decision.ExpectedTrials);
        Assert.Equal(0.0314, Si.Fraction(decision.HalfWidth!.Value), 4);
    }

    [Fact]
    public void Judge_AtTheMaximum_GivesUp()
    {
        var rule = OnePercent with { Options = new SequentialOptions { Maximum = 10 } };
        double[] times = [.. Enumerable.Range(0, 10).Select(i => i % 2 == 0 ? 2.3 : 2.5)];

        var decision = rule.Judge(Series(times));

        Assert.Equal(StopOutlook.AtMaximum, decision.Outlook);
        Assert.True(decision.IsDone);
        Assert.EndsWith(", and ±1 % was wanted; no more are allowed.", decision.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_TimerTooCoarse_SaysThatNoNumberReachesIt()
    {
        var tenths = new TrialTimer("display", Duration.FromSeconds(0.1), TimerReading.Rounded);
        double[] times = [.. Enumerable.Repeat(2.4, 10)];

        var decision = OnePercent.Judge(
            TrialSeries.Of(Sketch.MarlAt200, Sketch.Echo, tenths, times.Select(t => Duration.FromSeconds(t)))
        );

        Assert.Equal(StopOutlook.OutOfReach, decision.Outlook);
        Assert.True(decision.IsDone);
        Assert.True(Si.Fraction(decision.Fixed!.Value) > 0.01);
        Assert.Contains(
            "No number of trials reaches ±1 %, since timer and tolerance alone leave ±",
            decision.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void HalfWidth_Zero_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new StopRule(Ratio.Zero),
            "HalfWidth",
            "Wanted half-width must be above 0 %; was 0 %."
        );

    private static TrialSeries Series(double[] seconds) =>
        TrialSeries.Of(
            Sketch.MarlAt200,
            Sketch.Echo,
            Sketch.Microseconds,
            seconds.Select(s => Duration.FromSeconds(s))
        );
}
