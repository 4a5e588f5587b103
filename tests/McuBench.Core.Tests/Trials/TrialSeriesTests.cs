using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Trials;

public sealed class TrialSeriesTests
{
    [Fact]
    public void New_NoTrial_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new TrialSeries([]),
            "trials",
            "A series must hold at least one trial; the list was empty."
        );

    [Fact]
    public void New_TrialsOfTwoSetups_IsRefusedWithThePlace()
    {
        var one = Sketch.TrialOf(1);
        var other = one with { Setup = Sketch.MarlAt200 with { Name = "Marl again" } };

        Refusal.Is<ArgumentException>(
            () => new TrialSeries([one, other]),
            "trials",
            "A series must be of one setup, workload and timer (Marl 200, echo spectrum, on-board ticks); item 1 was of Marl again, echo spectrum, on-board ticks."
        );
    }

    [Fact]
    public void New_OrdersKnown_SortsByThem()
    {
        var series = new TrialSeries([
            Sketch.TrialOf(3) with
            {
                Order = 3,
            },
            Sketch.TrialOf(9),
            Sketch.TrialOf(1) with
            {
                Order = 1,
            },
        ]);

        Assert.Equal([1, 3, 9], series.RunTimes.Select(t => t.Seconds));
    }

    [Fact]
    public void New_WrongChecksum_IsSetApart()
    {
        var workload = Sketch.Echo with { OutputChecksum = "00FF" };
        var right = Sketch.TrialOf(2) with { Workload = workload, OutputChecksum = "00ff" };
        var wrong = Sketch.TrialOf(1) with { Workload = workload, OutputChecksum = "BEEF" };

        var series = new TrialSeries([wrong, right]);

        Assert.Equal(right, Assert.Single(series.Trials));
        Assert.Equal(wrong, Assert.Single(series.NotResults));
        Assert.Equal(2, Assert.Single(series.RunTimes).Seconds);
    }

    [Fact]
    public void Of_Texts_ReadsThemWithTheirUnits()
    {
        var series = TrialSeries.Of(Sketch.MarlAt200, Sketch.Echo, Sketch.Microseconds, "412.1 ms", "0.5 s");

        Assert.Equal([0.4121, 0.5], series.RunTimes.Select(t => t.Seconds));
        Assert.Equal([1, 2], series.Trials.Select(t => t.Order));
    }

    [Fact]
    public void Of_NothingGiven_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            TrialSeries.Of(Sketch.MarlAt200, Sketch.Echo, Sketch.Microseconds, Array.Empty<Duration>())
        );
}
