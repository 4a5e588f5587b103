using McuBench.Core.Boards;
using UnitsNet;

namespace McuBench.Core.Tests.Boards;

public sealed class SetupTests
{
    private static readonly Clock At160 = new(Frequency.FromMegahertz(160));

    [Fact]
    public void New_CoreOfAnotherBoard_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Setup("s", Sketch.Schist, new ExecutionCore("C"), At160),
            "core",
            "A setup's core must be one of board \"Schist\"'s (A, B); was \"C\"."
        );

    [Fact]
    public void New_BoardOfTwoCoresWithoutSayingWhich_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Setup("s", Sketch.Schist, Frequency.FromMegahertz(160)),
            "board",
            "Board \"Schist\" offers 2 execution cores: say which of them is in use."
        );

    [Fact]
    public void New_Nulls_AreRefused()
    {
        var core = Sketch.Marl.Cores[0];

        Assert.Equal("board", Assert.Throws<ArgumentNullException>(() => new Setup("s", null!, core, At160)).ParamName);
        Assert.Equal(
            "core",
            Assert.Throws<ArgumentNullException>(() => new Setup("s", Sketch.Marl, null!, At160)).ParamName
        );
        Assert.Equal(
            "Clock",
            Assert.Throws<ArgumentNullException>(() => new Setup("s", Sketch.Marl, core, null!)).ParamName
        );
        Assert.Equal(
            "board",
            Assert.Throws<ArgumentNullException>(() => new Setup("s", null!, Frequency.FromMegahertz(1))).ParamName
        );
    }

    [Fact]
    public void New_BlankName_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Setup("", Sketch.Marl, Frequency.FromMegahertz(160)),
            "Name",
            "Setup's name must hold a visible character"
        );

    [Fact]
    public void With_TwoAttachmentsOfOneName_IsRefused()
    {
        var display = new Attachment(AttachmentKind.Display, "panel", AttachmentState.Active);
        var light = new Attachment(AttachmentKind.Indicator, "panel", AttachmentState.Off);

        Refusal.Is<ArgumentException>(
            () => _ = Sketch.MarlAt200 with { Attachments = [display, light] },
            "Attachments",
            "Attachments of a setup must have distinct names; \"panel\" stands twice."
        );
    }

    [Fact]
    public void Equals_SameFrequencyInAnotherUnit_IsTrue()
    {
        var hertz = new Setup("s", Sketch.Marl, Frequency.FromHertz(200e6));
        var megahertz = new Setup("s", Sketch.Marl, Frequency.FromMegahertz(200));

        Assert.Equal(hertz, megahertz);
        Assert.NotEqual(hertz, megahertz with { Toolchain = new Toolchain("cc") });
    }
}
