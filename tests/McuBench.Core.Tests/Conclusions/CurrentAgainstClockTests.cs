using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>I = 5 mA + 0.1 mA/MHz: 15 mA at 100 MHz, 25 mA at 200 MHz.</summary>
public class CurrentAgainstClockTests
{
    [Fact]
    public void Of_TwoClocks_GivesBaseAndSlope()
    {
        var line = CurrentAgainstClock.Of([At(100, Bench.Meter(), 0.015), At(200, Bench.Meter(), 0.025)]);

        Assert.Equal(0.005, Si.Amperes(line.BaseCurrent.Value), 1e-15);
        Assert.Equal(1e-4, Si.Amperes(line.CurrentPerMegahertz.Value), 1e-16);
        Assert.True(line.IsApparent);
        Assert.Equal(0.02, Si.Amperes(line.CurrentAt(Frequency.FromMegahertz(150))), 1e-15);

        // Means of three at ±0.1 mA; base = 2·I₁ − I₂.
        var u = 1e-4 / Math.Sqrt(3);
        Assert.Equal(u * Math.Sqrt(5), Si.Amperes(line.BaseCurrent.StandardUncertainty!.Value), 1e-12);
        Assert.Equal(u * Math.Sqrt(2) / 100, Si.Amperes(line.CurrentPerMegahertz.StandardUncertainty!.Value), 1e-14);
    }

    [Fact]
    public void Of_SharedGain_ScalesBothCoefficients()
    {
        var meter = Bench.Meter(ofReading: 0.02);
        var line = CurrentAgainstClock.Of([At(100, meter, 0.015), At(200, meter, 0.025)]);

        Assert.Equal(0.02 / Math.Sqrt(3), OfGain(line.BaseCurrent.Budget), 1e-12);
        Assert.Equal(0.02 / Math.Sqrt(3), OfGain(line.CurrentPerMegahertz.Budget), 1e-12);

        static double OfGain(IEnumerable<BudgetLine> budget) =>
            budget.Single(b => b.Component.StartsWith("gain", StringComparison.Ordinal)).RelativeStandardUncertainty;
    }

    [Fact]
    public void Of_ThreeClocksOffTheLine_IsRefuted()
    {
        var line = CurrentAgainstClock.Of([
            At(100, Bench.Meter(), 0.015),
            At(200, Bench.Meter(), 0.028),
            At(400, Bench.Meter(), 0.045),
        ]);

        Assert.True(line.LackOfFit!.IsRefuted);
        Assert.True(line.IsApparent);
        Assert.Contains(
            line.Notes,
            n => n.StartsWith("Currents at 3 clocks don't lie on a line", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void CurrentAt_BeyondTheRange_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () =>
                CurrentAgainstClock
                    .Of([At(100, Bench.Meter(), 0.015), At(200, Bench.Meter(), 0.025)])
                    .CurrentAt(Frequency.FromMegahertz(50)),
            "clock",
            "Clock must lie within the range that was run, 100 MHz to 200 MHz; was 50 MHz."
        );

    [Fact]
    public void Of_CurrentAtOneClockOnly_Refuses() =>
        Refusal.Is<ArgumentException>(
            () =>
                CurrentAgainstClock.Of([
                    At(100, Bench.Meter(), 0.015),
                    SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 200), Bench.Fine, 0.3, 0.31)),
                ]),
            "summaries",
            "A line of current against clock must be of setups that differ in name and clock only"
        );

    private static SetupSummary At(double megahertz, Meter meter, double amperes)
    {
        var setup = Bench.At(Bench.Marl, megahertz);
        return SetupSummary.Of(
            Bench.Series(setup, Bench.Fine, 0.3, 0.31, 0.29),
            Bench.Running(setup, meter, null, amperes - 1e-4, amperes, amperes + 1e-4)
        );
    }
}
