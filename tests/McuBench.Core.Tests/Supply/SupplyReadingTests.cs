using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Tests.Supply;

public sealed class SupplyReadingTests
{
    private static SupplyReading Idle(double milliamperes) =>
        new(Sketch.MarlAt200, Sketch.Bench, SupplyPhase.Idle, ElectricCurrent.FromMilliamperes(milliamperes));

    [Fact]
    public void New_NegativeCurrent_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(() => Idle(-1), "current", "Current read must not be negative; was ");

    [Fact]
    public void New_BeyondTheMetersRanges_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => Idle(501),
            "current",
            "A reading must lie within a range of its meter (\"bench meter\" reads up to 500 mA); was 501 mA."
        );

    [Theory]
    [InlineData(SupplyPhase.Running)]
    [InlineData(SupplyPhase.Waiting)]
    public void New_ExecutingWithoutWorkload_IsRefused(SupplyPhase phase) =>
        Refusal.Is<ArgumentException>(
            () => new SupplyReading(Sketch.MarlAt200, Sketch.Bench, phase, ElectricCurrent.FromMilliamperes(1)),
            "workload",
            $"A reading in phase {phase} must name the workload that was executed; it names none."
        );

    [Theory]
    [InlineData(SupplyPhase.Idle)]
    [InlineData(SupplyPhase.AttachmentAlone)]
    public void New_WorkloadWhereNothingRuns_IsRefused(SupplyPhase phase) =>
        Refusal.Is<ArgumentException>(
            () =>
                new SupplyReading(
                    Sketch.MarlAt200,
                    Sketch.Bench,
                    phase,
                    ElectricCurrent.FromMilliamperes(1),
                    Sketch.Echo
                ),
            "workload",
            $"A reading in phase {phase} must name no workload; it names \"echo spectrum\"."
        );

    [Fact]
    public void New_BadParts_AreRefused()
    {
        var current = ElectricCurrent.FromMilliamperes(1);

        Assert.Equal(
            "setup",
            Assert
                .Throws<ArgumentNullException>(() => new SupplyReading(null!, Sketch.Bench, SupplyPhase.Idle, current))
                .ParamName
        );
        Assert.Equal(
            "meter",
            Assert
                .Throws<ArgumentNullException>(() =>
                    new SupplyReading(Sketch.MarlAt200, null!, SupplyPhase.Idle, current)
                )
                .ParamName
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new SupplyReading(Sketch.MarlAt200, Sketch.Bench, (SupplyPhase)9, current),
            "phase",
            "Supply phase must be one of Running, Waiting, Computing, Idle, AttachmentAlone; was 9."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Idle(1) with { Point = (MeasuringPoint)5 },
            "Point",
            "Measuring point must be one of BeforeRegulator, AfterRegulator; was 5."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Idle(1) with { BoardVoltage = ElectricPotential.Zero },
            "BoardVoltage",
            "Board voltage must be above zero; was "
        );
        Refusal.Is<ArgumentException>(() => _ = Idle(1) with { Session = "" }, "Session", "Session must hold");
        Refusal.Is<ArgumentException>(() => _ = Idle(1) with { Specimen = "" }, "Specimen", "Specimen must hold");
        Refusal.Is<ArgumentException>(
            () => _ = Idle(1) with { Attachment = "" },
            "Attachment",
            "Attachment read alone must hold"
        );
    }

    [Theory]
    [InlineData(
        200,
        "must be one of meter \"bench meter\"'s (50 mA, 500 mA) and hold the reading of 120 mA; was 200 mA."
    )]
    [InlineData(
        50,
        "must be one of meter \"bench meter\"'s (50 mA, 500 mA) and hold the reading of 120 mA; was 50 mA."
    )]
    public void With_RangeThatIsNotTheMetersOrTooSmall_IsRefused(double milliamperes, string message) =>
        Refusal.Is<ArgumentException>(
            () => _ = Idle(120) with { Range = ElectricCurrent.FromMilliamperes(milliamperes) },
            "Range",
            "Range in use " + message
        );

    [Fact]
    public void MeterRange_NotNoted_IsTheSmallestThatHolds()
    {
        Assert.Equal(Sketch.Fifty, Idle(12).MeterRange);
        Assert.Equal(Sketch.FiveHundred, (Idle(12) with { Range = ElectricCurrent.FromMilliamperes(500) }).MeterRange);
    }
}
