using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Reporting;

public sealed class SupplyStatementTests
{
    private static readonly Attachment Panel = new(AttachmentKind.Display, "panel", AttachmentState.Active);

    [Fact]
    public void Gross_Read_SaysChargeEnergyAndWhatIsIncluded()
    {
        // 40 mA for 2 s are 80 mC, and 400 mJ at 5 V.
        var said = SupplyStatement.Gross(Summary([40, 40]));

        Assert.StartsWith("Marl takes 80.", said, StringComparison.Ordinal);
        Assert.Contains(" mC (95 % interval ", said, StringComparison.Ordinal);
        Assert.Contains("of charge per task for the echo spectrum, and 400.", said, StringComparison.Ordinal);
        Assert.EndsWith(
            "gross, the whole board, panel included; 3 trials, 2 readings of current.",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Gross_OneReading_IsSaidInTheSingular() =>
        Assert.EndsWith(
            "3 trials, 1 reading of current.",
            SupplyStatement.Gross(Summary([40])),
            StringComparison.Ordinal
        );

    [Fact]
    public void Net_AttachmentReadAlone_SaysItsShareAndBothFigures()
    {
        // The panel's 10 mA are a quarter of 40 mA; the other 30 mA make 60 mC in 2 s.
        var summary = Summary([40, 40], alone: 10);

        var said = SupplyStatement.Net(summary, Assert.Single(summary.Supply!.Net));

        Assert.StartsWith("Less panel alone, which has 25.0", said, StringComparison.Ordinal);
        Assert.Contains(
            " of it, the charge per task of Marl for the echo spectrum is 60.",
            said,
            StringComparison.Ordinal
        );
        Assert.Contains("), net; gross it is 80.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Net_ShareOfABaseline_HoldsTheTruthAndLosesTheMetersGain()
    {
        var summary = Summary([40, 40], alone: 10);
        var share = Assert.Single(summary.Supply!.Net).BaselineShare;

        Assert.Equal(0.25, share.Value.DecimalFractions, 1e-12);
        Assert.InRange(0.25, share.Lower!.Value.DecimalFractions, share.Upper!.Value.DecimalFractions);

        // One range reads both with a gain known to 1 %, which a share does not depend on.
        Assert.DoesNotContain(share.Budget, line => line.Component.Contains("gain", StringComparison.Ordinal));
        Assert.Contains(
            summary.Supply.ChargePerTask.Budget,
            line => line.Component.Contains("gain", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Gross_NotRead_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => SupplyStatement.Gross(Summary([])),
            "summary",
            "The supply of a setup must have been read to say what a task costs; that of Marl was not."
        );

    [Fact]
    public void Net_OfAnother_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => SupplyStatement.Net(Summary([40]), Summary([40], alone: 10).Supply!.Net[0]),
            "net",
            "Net figures must be of the summary; Marl has none less \"panel alone\" that are these."
        );

    private static SetupSummary Summary(IReadOnlyList<double> milliamperes, double? alone = null)
    {
        var setup = new Setup("Marl", Sketch.Marl, Frequency.FromMegahertz(200))
        {
            Attachments = [Panel],
            Supply = new BoardSupply(ElectricPotential.FromVolts(5)),
        };
        var meter = new Meter("bench meter", Sketch.Fifty with { Digits = 2, OfReading = Ratio.FromPercent(1) });
        var running = milliamperes.Select(current => new SupplyReading(
            setup,
            meter,
            SupplyPhase.Running,
            ElectricCurrent.FromMilliamperes(current),
            Sketch.Echo
        ));
        var apart = alone is { } panel
            ? new[]
            {
                new SupplyReading(setup, meter, SupplyPhase.AttachmentAlone, ElectricCurrent.FromMilliamperes(panel))
                {
                    Attachment = "panel",
                },
            }
            : [];
        return SetupSummary.Of(
            TrialSeries.Of(setup, Sketch.Echo, Sketch.Microseconds, "1.999 s", "2 s", "2.001 s"),
            running.Concat(apart)
        );
    }
}
