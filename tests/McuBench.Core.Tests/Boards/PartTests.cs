using McuBench.Core.Boards;
using UnitsNet;

namespace McuBench.Core.Tests.Boards;

/// <summary>The small records that a setup is made of.</summary>
public sealed class PartTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(-160e6)]
    public void Clock_NotAboveZero_IsRefused(double hertz) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new Clock(Frequency.FromHertz(hertz)),
            "Nominal",
            "Clock's frequency must be above zero; was "
        );

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1)]
    public void Tolerances_OutsideZeroToOne_AreRefused(double fraction)
    {
        var share = Ratio.FromDecimalFractions(fraction);
        var clock = new Clock(Frequency.FromMegahertz(1));
        var supply = new BoardSupply(ElectricPotential.FromVolts(5));

        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = clock with { Tolerance = share },
            "Tolerance",
            "Clock's tolerance must be at least 0 % and below 100 %; was "
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = supply with { Tolerance = share },
            "Tolerance",
            "Supply's tolerance must be at least 0 % and below 100 %; was "
        );
    }

    [Fact]
    public void Clock_Tolerance_IsHeldAsAFraction() =>
        Assert.Equal(
            5e-5,
            (new Clock(Frequency.FromMegahertz(1)) with { Tolerance = Ratio.FromPartsPerMillion(50) })
                .Tolerance!
                .Value
                .Value
        );

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void BoardSupply_VoltageNotAboveZero_IsRefused(double volts) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new BoardSupply(ElectricPotential.FromVolts(volts)),
            "Voltage",
            "Supply's voltage must be above zero; was "
        );

    [Fact]
    public void BoardSupply_BlankInput_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new BoardSupply(ElectricPotential.FromVolts(5)) { Input = " " },
            "Input",
            "Supply's input must hold a visible character"
        );

    [Fact]
    public void Toolchain_BadParts_AreRefused()
    {
        Refusal.Is<ArgumentException>(() => new Toolchain(""), "Name", "Toolchain's name must hold");
        Refusal.Is<ArgumentException>(
            () => _ = new Toolchain("cc") { Version = "" },
            "Version",
            "Toolchain's version must"
        );
        Refusal.Is<ArgumentException>(
            () => _ = new Toolchain("cc") { Settings = ["optimise", ""] },
            "Settings",
            "Build setting must hold a visible character"
        );
        Refusal.Is<ArgumentException>(
            () => _ = new Toolchain("cc") { Settings = ["optimise", null!] },
            "Settings",
            "Build settings must hold no null; item 1 was null."
        );
    }

    [Fact]
    public void Toolchain_SettingsInAnotherOrder_AreNotEqual()
    {
        var one = new Toolchain("cc") { Settings = ["size", "inline"] };

        Assert.Equal(one, new Toolchain("cc") { Settings = ["size", "inline"] });
        Assert.NotEqual(one, new Toolchain("cc") { Settings = ["inline", "size"] });
    }

    [Fact]
    public void Attachment_BadParts_AreRefused()
    {
        Refusal.Is<ArgumentException>(
            () => new Attachment(AttachmentKind.Display, "", AttachmentState.Off),
            "Name",
            "Attachment's name must hold"
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new Attachment((AttachmentKind)9, "panel", AttachmentState.Off),
            "Kind",
            "Attachment's kind must be one of Display, Radio, Indicator, Other; was 9."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new Attachment(AttachmentKind.Display, "panel", (AttachmentState)7),
            "State",
            "Attachment's state must be one of Off, Idle, Active; was 7."
        );
    }

    [Fact]
    public void ExecutionCore_BadParts_AreRefused()
    {
        Refusal.Is<ArgumentException>(() => new ExecutionCore(" "), "Name", "Execution core's name must hold");
        Refusal.Is<ArgumentException>(
            () => _ = new ExecutionCore("A") { Description = "\t" },
            "Description",
            "Execution core's description must hold"
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Workload_NoItem_IsRefused(long items) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new Workload("echo", items),
            "WorkItemsPerRun",
            FormattableString.Invariant($"Work items per run must be at least 1; was {items}.")
        );

    [Fact]
    public void Workload_BlankWords_AreRefused()
    {
        Refusal.Is<ArgumentException>(() => new Workload("", 1), "Name", "Workload's name must hold");
        Refusal.Is<ArgumentException>(
            () => _ = Sketch.Echo with { ItemName = "" },
            "ItemName",
            "Work item's name must"
        );
        Refusal.Is<ArgumentException>(
            () => _ = Sketch.Echo with { Description = "" },
            "Description",
            "Workload's description must"
        );
        Refusal.Is<ArgumentException>(
            () => _ = Sketch.Echo with { OutputChecksum = "" },
            "OutputChecksum",
            "Workload's output checksum must"
        );
    }
}
