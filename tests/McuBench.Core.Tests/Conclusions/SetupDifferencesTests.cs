using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class SetupDifferencesTests
{
    [Fact]
    public void Between_SetupsOfOneKind_ListsNothing()
    {
        var one = Bench.At(Bench.Marl, 100);

        Assert.Empty(Between(one, one with { Name = "again" }));
    }

    [Fact]
    public void Between_BoardAndClock_AreNamed() =>
        Assert.Equal(
            [(SetupAspect.Board, "Marl", "Tuff"), (SetupAspect.ClockFrequency, "100 MHz", "200 MHz")],
            Between(Bench.At(Bench.Marl, 100), Bench.At(Bench.Tuff, 200)).Select(d => (d.Aspect, d.First, d.Second))
        );

    [Fact]
    public void Between_RadioOffAndOn_IsADifferenceOfState()
    {
        var off = Bench.At(Bench.Marl, 100) with
        {
            Attachments = [new Attachment(AttachmentKind.Radio, "uplink", AttachmentState.Off)],
        };
        var on = off with { Attachments = [new Attachment(AttachmentKind.Radio, "uplink", AttachmentState.Active)] };
        var difference = Assert.Single(Between(off, on));

        Assert.Equal(
            (SetupAspect.AttachmentState, "radio \"uplink\"", "off", "active"),
            (difference.Aspect, difference.What, difference.First, difference.Second)
        );
    }

    [Fact]
    public void Between_DisplayOnOneOnly_IsNoneOnTheOther()
    {
        var bare = Bench.At(Bench.Marl, 100);
        var withDisplay = bare with
        {
            Attachments = [new Attachment(AttachmentKind.Display, "panel", AttachmentState.Active)],
        };

        Assert.Equal(("none", "active"), Ends(Assert.Single(Between(bare, withDisplay))));
        Assert.Equal(("active", "none"), Ends(Assert.Single(Between(withDisplay, bare))));
    }

    [Fact]
    public void Between_ToolchainAndSupply_AreComparedPartByPart()
    {
        var plain = Bench.At(Bench.Marl, 100) with
        {
            Toolchain = new Toolchain("invented compiler") { Version = "3.1", Settings = ["-O2"] },
            Supply = new BoardSupply(ElectricPotential.FromVolts(5)),
        };
        var other = plain with
        {
            Toolchain = plain.Toolchain! with { Settings = ["-O2", "code in RAM"] },
            Supply = new BoardSupply(ElectricPotential.FromVolts(3.3)) { FedElsewhereToo = true },
        };

        Assert.Equal(
            [
                (SetupAspect.SupplyVoltage, "5 V", "3.3 V"),
                (SetupAspect.FedElsewhere, "not known", "yes"),
                (SetupAspect.BuildSettings, "-O2", "-O2, code in RAM"),
            ],
            Between(plain, other).Select(d => (d.Aspect, d.First, d.Second))
        );
    }

    [Fact]
    public void Between_TrialsSessionsAndTemperatures_AreCompared()
    {
        var setup = Bench.At(Bench.Marl, 100);
        var cold = Taken(setup, "Monday", 293.15);
        var warm = Taken(setup with { Name = "again" }, "Tuesday", 303.15);
        var differences = SetupComparison.Of(cold, warm).Differences;

        Assert.Equal([SetupAspect.Session, SetupAspect.Temperature], differences.Select(d => d.Aspect));
        Assert.Equal(("Monday", "Tuesday"), Ends(differences[0]));
    }

    private static SetupSummary Taken(Setup setup, string session, double kelvins) =>
        SetupSummary.Of(
            new TrialSeries(
                Enumerable
                    .Range(1, 3)
                    .Select(i => new Trial(setup, Bench.Frames, Bench.Fine, Duration.FromSeconds(2 + 0.01 * i))
                    {
                        Session = session,
                        Temperature = Temperature.FromKelvins(kelvins),
                    })
            )
        );

    private static IReadOnlyList<SetupDifference> Between(Setup first, Setup second) =>
        SetupComparison
            .Of(
                SetupSummary.Of(Bench.Series(first, Bench.Fine, 2.0, 2.1)),
                SetupSummary.Of(Bench.Series(second, Bench.Fine, 2.0, 2.1))
            )
            .Differences;

    private static (string, string) Ends(SetupDifference difference) => (difference.First, difference.Second);
}
