using System.Text.Json;
using McuBench.Core.Supply.Cells;
using UnitsNet;

namespace McuBench.Core.Tests.Supply.Cells;

public sealed class CellLifeTests
{
    private static readonly ElectricPotential ThreeVolts = ElectricPotential.FromVolts(3);

    private static readonly Cell Lake = new(
        ElectricCharge.FromMilliampereHours(2400),
        ElectricPotential.FromVolts(3.6),
        ElectricPotential.FromVolts(3.2),
        Ratio.FromPercent(85)
    )
    {
        CapacityTolerance = Ratio.FromPercent(5),
        UsableShareTolerance = Ratio.FromPercent(4),
        TemperatureDerating = Ratio.FromPercent(80),
        TemperatureDeratingTolerance = Ratio.FromPercent(10),
        SelfDischargePerYear = Ratio.FromPercent(2),
        SelfDischargeTolerance = Ratio.FromPercent(50),
    };

    private static readonly DutyCycle Gauging = new(
        Duration.FromSeconds(10),
        Duration.FromMilliseconds(50),
        ElectricCharge.FromMicrocoulombs(716),
        ElectricCurrent.FromMicroamperes(12)
    )
    {
        TaskChargeUncertainty = ElectricCharge.FromMicrocoulombs(2.2),
        IdleCurrentTolerance = Ratio.FromPercent(5),
    };

    private static readonly LinearRegulator Linear = new(
        ThreeVolts,
        ElectricCurrent.FromMicroamperes(1.5),
        ElectricPotential.FromVolts(0.15)
    )
    {
        QuiescentTolerance = Ratio.FromPercent(30),
    };

    private static readonly SwitchingRegulator Switching = new(
        ThreeVolts,
        ElectricCurrent.FromMicroamperes(0.4),
        ElectricPotential.FromVolts(3.1),
        new EfficiencyPoint(ElectricCurrent.FromMicroamperes(10), Ratio.FromPercent(78)),
        new EfficiencyPoint(ElectricCurrent.FromMilliamperes(1), Ratio.FromPercent(90)),
        new EfficiencyPoint(ElectricCurrent.FromMilliamperes(20), Ratio.FromPercent(94))
    )
    {
        QuiescentTolerance = Ratio.FromPercent(30),
        EfficiencyTolerance = Ratio.FromPercent(2),
    };

    [Theory]
    [InlineData("direct")]
    [InlineData("linear")]
    [InlineData("switching")]
    public void Of_LakeCell_AgreesWithQuadratureAtFiftyDigits(string path)
    {
        using var file = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", "cells-mpmath.json"))
        );
        var expected = file.RootElement.GetProperty(path);

        var life = CellLife.Of(Lake, Gauging, Between(path));

        // The model is smooth at the estimates: what is left is the extrapolation of the differences.
        Close(expected.GetProperty("runTime").GetDouble(), life.RunTime.Value.Seconds, 1e-12);
        Close(expected.GetProperty("uncertainty").GetDouble(), life.RunTime.StandardUncertainty!.Value.Seconds, 1e-8);
        Close(expected.GetProperty("meanCurrent").GetDouble(), life.MeanCurrent.Value.Amperes, 1e-12);
        Close(life.RunTime.Value.Seconds / 10, life.Tasks.Value, 1e-12);
        Close(life.RunTime.Lower!.Value.Seconds / 10, life.Tasks.Lower!.Value, 1e-12);
        Assert.Equal("temperature derating", life.RunTime.Budget[0].Component);
        Assert.Empty(life.Cautions);
    }

    [Fact]
    public void Of_NothingUncertainNothingLost_IsChargeOverCurrent()
    {
        var life = CellLife.Of(Plain(Ratio.FromPercent(50)), Steady);

        // Half of 3600 C at 1 mA.
        Close(1.8e6, life.RunTime.Value.Seconds, 1e-14);
        Close(1.8e6, life.Tasks.Value, 1e-14);
        Assert.Equal(0, life.LostToSelfDischarge.DecimalFractions);
        Assert.False(life.RunTime.HasInterval);
    }

    [Fact]
    public void Of_SelfDischargeOfNextToNothing_LosesNoDigits()
    {
        var cell = Plain(Ratio.FromPercent(100)) with { SelfDischargePerYear = Ratio.FromDecimalFractions(1e-15) };

        Close(3.6e6, CellLife.Of(cell, Steady).RunTime.Value.Seconds, 1e-13);
    }

    [Fact]
    public void Of_IdleLostAsMuchAsDrawn_SaysWhatDecides()
    {
        var cell = Plain(Ratio.FromPercent(100)) with { SelfDischargePerYear = Ratio.FromPercent(99) };
        var cycle = new DutyCycle(
            Duration.FromSeconds(1),
            Duration.FromSeconds(1),
            ElectricCharge.FromMicrocoulombs(1),
            ElectricCurrent.Zero
        );

        var life = CellLife.Of(cell, cycle);

        Assert.True(life.LostToSelfDischarge.DecimalFractions is > 0.98 and < 1);
        Assert.Equal(
            ["More than half of the charge is lost by itself: the self-discharge decides, not the board."],
            life.Cautions
        );
    }

    [Fact]
    public void Of_TaskAboveGreatestCurrent_Cautions()
    {
        var life = CellLife.Of(
            Plain(Ratio.FromPercent(100)) with
            {
                GreatestCurrent = ElectricCurrent.FromMicroamperes(500),
            },
            Steady
        );

        Assert.Equal(
            [
                "A task draws 1 mA on average, more than the 500 uA that the cell may give: its capacity does not hold there.",
            ],
            life.Cautions
        );
    }

    [Fact]
    public void Of_RegulatorNeedsMoreThanCutoff_Refuses()
    {
        var needy = new LinearRegulator(ThreeVolts, ElectricCurrent.Zero, ElectricPotential.FromVolts(0.3));

        Refusal.Is<ArgumentException>(
            () => CellLife.Of(Lake, Gauging, needy),
            "regulator",
            "Regulator must hold its output down to the cell's cutoff of 3.2 V; needs 3.3 V: give the cell that cutoff and the share that comes out down to it."
        );
    }

    [Fact]
    public void Of_IdleBelowTheTable_Refuses()
    {
        var cycle = new DutyCycle(
            Gauging.Period,
            Gauging.TaskTime,
            Gauging.TaskCharge,
            ElectricCurrent.FromMicroamperes(2)
        );

        Refusal.Is<ArgumentException>(
            () => CellLife.Of(Lake, cycle, Switching),
            "cycle",
            "Idle current must lie within the table of efficiencies, 10 uA to 20 mA; was 2 uA."
        );
    }

    [Fact]
    public void Constructors_OutOfRange_Refuse()
    {
        Refusal.Is<ArgumentOutOfRangeException>(
            () => Plain(Ratio.FromPercent(0)),
            "usableShare",
            "Usable share must be above 0 % and at most 100 %; was 0 %."
        );
        Refusal.Is<ArgumentException>(
            () =>
                new Cell(
                    ElectricCharge.FromCoulombs(1),
                    ThreeVolts,
                    ElectricPotential.FromVolts(4),
                    Ratio.FromPercent(1)
                ),
            "meanVoltage",
            "Cell's mean voltage must not lie below its cutoff of 4 V; was 3 V."
        );
        Refusal.Is<ArgumentException>(
            () =>
                new DutyCycle(
                    Duration.FromSeconds(1),
                    Duration.FromSeconds(2),
                    ElectricCharge.FromCoulombs(1),
                    ElectricCurrent.Zero
                ),
            "taskTime",
            "Task's time must be at most the period of 1 s; was 2 s."
        );
        Refusal.Is<ArgumentException>(
            () =>
                new SwitchingRegulator(
                    ThreeVolts,
                    ElectricCurrent.Zero,
                    ThreeVolts,
                    Switching.Table[1],
                    Switching.Table[0]
                ),
            "table",
            "Loads of the efficiency must ascend; 10 uA follows 1 mA."
        );
    }

    private static DutyCycle Steady =>
        new(
            Duration.FromSeconds(1),
            Duration.FromSeconds(1),
            ElectricCharge.FromMillicoulombs(1),
            ElectricCurrent.Zero
        );

    private static Cell Plain(Ratio usableShare) =>
        new(ElectricCharge.FromAmpereHours(1), ThreeVolts, ThreeVolts, usableShare);

    private static Regulator? Between(string path) =>
        path switch
        {
            "linear" => Linear,
            "switching" => Switching,
            _ => null,
        };

    private static void Close(double expected, double actual, double relative) =>
        Assert.True(
            Math.Abs(actual - expected) <= relative * Math.Abs(expected),
            FormattableString.Invariant($"expected {expected:R}, was {actual:R}")
        );
}
