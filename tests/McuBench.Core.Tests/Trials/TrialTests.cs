using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Trials;

public sealed class TrialTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(-2.4)]
    public void New_TimeNotAboveZero_IsRefused(double seconds) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => Sketch.TrialOf(seconds),
            "RunTime",
            "Run time must be above zero; was "
        );

    [Fact]
    public void New_Nulls_AreRefused()
    {
        var time = Duration.FromSeconds(1);

        Assert.Equal(
            "Setup",
            Assert
                .Throws<ArgumentNullException>(() => new Trial(null!, Sketch.Echo, Sketch.Microseconds, time))
                .ParamName
        );
        Assert.Equal(
            "Workload",
            Assert
                .Throws<ArgumentNullException>(() => new Trial(Sketch.MarlAt200, null!, Sketch.Microseconds, time))
                .ParamName
        );
        Assert.Equal(
            "Timer",
            Assert.Throws<ArgumentNullException>(() => new Trial(Sketch.MarlAt200, Sketch.Echo, null!, time)).ParamName
        );
    }

    [Fact]
    public void With_OrderBelowOne_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Sketch.TrialOf(1) with { Order = 0 },
            "Order",
            "Trial's order must be at least 1; was 0."
        );

    [Fact]
    public void With_BlankWords_AreRefused()
    {
        var trial = Sketch.TrialOf(1);

        Refusal.Is<ArgumentException>(() => _ = trial with { Session = "" }, "Session", "Session must hold");
        Refusal.Is<ArgumentException>(() => _ = trial with { Specimen = "" }, "Specimen", "Specimen must hold");
        Refusal.Is<ArgumentException>(() => _ = trial with { Build = "" }, "Build", "Build must hold");
        Refusal.Is<ArgumentException>(
            () => _ = trial with { Connection = "" },
            "Connection",
            "Cable and port must hold"
        );
        Refusal.Is<ArgumentException>(
            () => _ = trial with { OutputChecksum = "" },
            "OutputChecksum",
            "Output checksum must hold"
        );
    }

    [Theory]
    [InlineData(null, null, true)]
    [InlineData("A1", null, true)]
    [InlineData(null, "a1", true)]
    [InlineData("A1", "a1", true)]
    [InlineData("A1", "A2", false)]
    public void IsResult_Checksums_CountOnlyWhereBothAreKnownAndDiffer(string? workload, string? trial, bool expected)
    {
        var run = Sketch.TrialOf(1) with
        {
            Workload = Sketch.Echo with { OutputChecksum = workload },
            OutputChecksum = trial,
        };

        Assert.Equal(expected, run.IsResult);
    }

    [Fact]
    public void Equals_SameTimeInAnotherUnit_IsTrue()
    {
        var seconds = Sketch.TrialOf(0.4121);
        var milliseconds = new Trial(
            Sketch.MarlAt200,
            Sketch.Echo,
            Sketch.Microseconds,
            Duration.FromMilliseconds(412.1)
        );

        Assert.Equal(seconds, milliseconds);
    }
}
