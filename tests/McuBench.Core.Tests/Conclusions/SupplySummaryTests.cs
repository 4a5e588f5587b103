using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Three readings around 20 mA in a 100 mA range, 0.55 % of reading + 0.1 % of range + 2 digits of 10 µA, while
/// a run takes 2.4 s: all worked by hand.</summary>
public class SupplySummaryTests
{
    private static readonly double Root3 = Math.Sqrt(3);

    private static readonly double[] Amperes = [0.0200, 0.0201, 0.0199];

    private static readonly double[] RunTimes = [2.39, 2.40, 2.41];

    private static readonly Setup Marl100 = Bench.At(Bench.Marl, 100);

    private static readonly Meter Accurate = Bench.Meter(ofReading: 0.0055, ofRange: 0.001, digits: 2);

    // s = 0.1 mA of three; the readings spread over 20 digits, which dithers the last one.
    private static readonly double OfScatter = 1e-4 / Root3;
    private static readonly double OfGain = 0.0055 * 0.02 / Root3;
    private static readonly double OfOffset = (0.001 * 0.1 + 2 * 1e-5) / Root3;

    [Fact]
    public void Of_SeveralReadings_HaveScatterGainAndOffsetInTheBudget()
    {
        var current = Summary(Bench.Running(Marl100, Accurate, null, Amperes)).Current;

        Assert.Equal(0.02, Si.Amperes(current.Value), 1e-16);
        Assert.Equal(
            Math.Sqrt(OfScatter * OfScatter + OfGain * OfGain + OfOffset * OfOffset),
            Si.Amperes(current.StandardUncertainty!.Value),
            1e-12
        );
        Assert.Equal(3, current.Trials);
        Assert.Equal(
            [
                "offset of meter \"bench meter\" in its 100 mA range, running, Marl 100",
                "gain of meter \"bench meter\" in its 100 mA range",
                "scatter of 3 readings, running, Marl 100",
            ],
            current.Budget.Take(3).Select(b => b.Component)
        );
        Assert.Equal([false, false, true], current.Budget.Take(3).Select(b => b.AveragesDown));
    }

    [Fact]
    public void Of_ChargePerTask_IsCurrentTimesRunTimeWithBothUncertainties()
    {
        var supply = Summary(Bench.Running(Marl100, Accurate, null, Amperes));

        Assert.Equal(0.048, Si.Coulombs(supply.ChargePerTask.Value), 1e-16);
        Assert.Equal(75_000, supply.TasksPerAmpereHour.Value, 1e-8);
        var ofCurrent = Math.Sqrt(OfScatter * OfScatter + OfGain * OfGain + OfOffset * OfOffset) / 0.02;
        var ofTime = 0.01 / Root3 / 2.4;
        Assert.Equal(
            0.048 * Math.Sqrt(ofCurrent * ofCurrent + ofTime * ofTime),
            Si.Coulombs(supply.ChargePerTask.StandardUncertainty!.Value),
            1e-12
        );
        Assert.Equal(
            3600 / Si.Coulombs(supply.ChargePerTask.Lower!.Value),
            supply.TasksPerAmpereHour.Upper!.Value,
            1e-8
        );
    }

    [Fact]
    public void Of_VoltageRead_GivesEnergy()
    {
        var supply = Summary(Bench.Running(Marl100, Accurate, volts: 5, Amperes));

        Assert.Equal(5, Si.Volts(supply.Voltage!.Value));
        Assert.Equal(0.1, Si.Watts(supply.MeanPower!.Value), 1e-15);
        Assert.Equal(0.24, Si.Joules(supply.EnergyPerTask!.Value), 1e-15);
        Assert.Equal(15_000, supply.TasksPerWattHour!.Value, 1e-9);
        Assert.Equal(0.576, supply.EnergyDelayProduct!.Value, 1e-14);
        Assert.Contains(
            supply.Notes,
            n => n.StartsWith("Energy rests on 3 voltage readings", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_EnergyDelayProduct_CountsTheRunTimesUncertaintyTwice()
    {
        // E·t = V·I·t²: of the time twice as much as of the current.
        var product = Summary(Bench.Running(Marl100, Accurate, volts: 5, Amperes)).EnergyDelayProduct!;

        var ofTime = product.Budget.Single(b =>
            b.Component.StartsWith("scatter of 3 trials", StringComparison.Ordinal)
        );
        Assert.Equal(2 * 0.01 / Root3 / 2.4, ofTime.RelativeStandardUncertainty, 1e-12);
    }

    [Fact]
    public void Of_NominalVoltage_EntersWithItsTolerance()
    {
        var setup = Marl100 with
        {
            Supply = new BoardSupply(ElectricPotential.FromVolts(5)) { Tolerance = Ratio.FromPercent(3) },
        };
        var supply = Summary(Bench.Running(setup, Accurate, null, Amperes));

        Assert.Equal(0.24, Si.Joules(supply.EnergyPerTask!.Value), 1e-15);
        var line = supply.EnergyPerTask.Budget.Single(b => b.Component == "tolerance of the supply voltage, Marl 100");
        Assert.Equal(0.03 / Root3, line.RelativeStandardUncertainty, 1e-15);
        Assert.Contains(
            "Energy rests on the supply's nominal voltage of 5 V within 3 %; the voltage wasn't read.",
            supply.Notes
        );
    }

    [Fact]
    public void Of_NoVoltage_LeavesEnergyOutAndSaysSo()
    {
        var supply = Summary(Bench.Running(Marl100, Accurate, null, Amperes));

        Assert.Null(supply.EnergyPerTask);
        Assert.Null(supply.MeanPower);
        Assert.Null(supply.TasksPerWattHour);
        Assert.Contains(supply.Notes, n => n.StartsWith("No voltage is known", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_NominalVoltageWithTheMeterBehindTheRegulator_LeavesEnergyOut()
    {
        var setup = Marl100 with { Supply = new BoardSupply(ElectricPotential.FromVolts(5)) };
        var supply = Summary(
            Bench.Running(setup, Accurate, null, Amperes).Select(r => r with { Point = MeasuringPoint.AfterRegulator })
        );

        Assert.Null(supply.EnergyPerTask);
        Assert.Contains(
            "Current was read behind the regulator and the voltage there wasn't; power and energy are left out.",
            supply.Notes
        );
    }

    [Fact]
    public void Of_OneReadingOfAnAccurateMeter_HasTheMetersIntervalAndSaysWhatIsMissing()
    {
        var supply = Summary(Bench.Running(Marl100, Accurate, null, 0.02));

        Assert.True(supply.Current.HasInterval);
        Assert.Equal(
            Math.Sqrt(OfGain * OfGain + OfOffset * OfOffset + 1e-5 * 1e-5 / 12),
            Si.Amperes(supply.Current.StandardUncertainty!.Value),
            1e-15
        );
        Assert.Contains(supply.Notes, n => n.StartsWith("The current rests on one reading", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_OneReadingOfAMeterWithoutStatedAccuracy_HasNoInterval()
    {
        var supply = Summary(Bench.Running(Marl100, Bench.Meter(), null, 0.02));

        Assert.False(supply.Current.HasInterval);
        Assert.False(supply.ChargePerTask.HasInterval);
    }

    [Fact]
    public void Of_NoRunningReading_HasNoSupply() =>
        Assert.Null(
            SetupSummary
                .Of(
                    Bench.Series(Marl100, Bench.Fine, RunTimes),
                    Bench.Read(Marl100, Accurate, SupplyPhase.Idle, null, Amperes)
                )
                .Supply
        );

    [Fact]
    public void Of_IdleRead_StandsBesideTheGrossFigures()
    {
        var readings = Bench
            .Running(Marl100, Accurate, volts: 5, Amperes)
            .Concat(Bench.Read(Marl100, Accurate, SupplyPhase.Idle, null, [0.0050, 0.0052, 0.0048]));
        var supply = Summary(readings);
        var net = Assert.Single(supply.Net);

        Assert.Equal(0.048, Si.Coulombs(supply.ChargePerTask.Value), 1e-16);
        Assert.Equal((BaselineKind.Idle, "idle current of Marl 100"), (net.Kind, net.Baseline));
        Assert.Equal(0.005, Si.Amperes(net.BaselineCurrent.Value), 1e-16);
        Assert.Equal(0.015, Si.Amperes(net.Current.Value), 1e-16);
        Assert.Equal(0.036, Si.Coulombs(net.ChargePerTask.Value), 1e-15);
        Assert.Equal(0.18, Si.Joules(net.EnergyPerTask!.Value), 1e-15);

        // Both scatters and both offsets in full; the one gain on the difference alone.
        var scatterOfIdle = 2e-4 / Root3;
        var gain = 0.0055 * 0.015 / Root3;
        Assert.Equal(
            Math.Sqrt(OfScatter * OfScatter + scatterOfIdle * scatterOfIdle + gain * gain + 2 * OfOffset * OfOffset),
            Si.Amperes(net.Current.StandardUncertainty!.Value),
            1e-12
        );
    }

    [Fact]
    public void Of_AttachmentReadAlone_IsNamedInTheNetFigure()
    {
        var readings = Bench
            .Running(Marl100, Accurate, null, Amperes)
            .Concat(
                Bench
                    .Read(Marl100, Accurate, SupplyPhase.AttachmentAlone, null, [0.008, 0.008])
                    .Select(r => r with { Attachment = "display" })
            );
        var net = Assert.Single(Summary(readings).Net);

        Assert.Equal((BaselineKind.Attachment, "display alone"), (net.Kind, net.Baseline));
        Assert.Equal(0.012, Si.Amperes(net.Current.Value), 1e-16);
    }

    [Fact]
    public void Of_WaitingReadWithoutASplit_CountsRunningForTheWholeAndSaysSo()
    {
        var readings = Bench
            .Running(Marl100, Accurate, null, Amperes)
            .Concat(Bench.Read(Marl100, Accurate, SupplyPhase.Waiting, null, [0.01]));
        var supply = Summary(readings);

        Assert.True(supply.IsWholeRunMean);
        Assert.Equal(0.048, Si.Coulombs(supply.ChargePerTask.Value), 1e-16);
        Assert.Contains(supply.Notes, n => n.StartsWith("Waiting was read too (1 reading)", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_ReadingsOfOtherSetups_ArePassedOver() =>
        Assert.Equal(
            3,
            Summary(
                Bench
                    .Running(Marl100, Accurate, null, Amperes)
                    .Concat(Bench.Running(Bench.At(Bench.Tuff, 50), Accurate, null, 0.09))
            ).Readings.Count
        );

    private static SupplySummary Summary(IEnumerable<SupplyReading> readings)
    {
        SupplyReading[] all = [.. readings];
        return SetupSummary.Of(Bench.Series(all[0].Setup, Bench.Fine, RunTimes), all).Supply!;
    }
}
