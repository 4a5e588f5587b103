using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

public sealed class ColumnMapTests
{
    [Fact]
    public void WithHead_AfterAConstant_TakesItsPlaceAndTheOtherWayRound()
    {
        var constant = new ColumnMap<TrialColumn>().WithConstant(TrialColumn.Timer, "ticks");
        var head = constant.WithHead(TrialColumn.Timer, "clock");
        var again = head.WithConstant(TrialColumn.Timer, "watch");

        Assert.Equal("ticks", constant.Constants[TrialColumn.Timer]);
        Assert.Equal("clock", head.Heads[TrialColumn.Timer]);
        Assert.Empty(head.Constants);
        Assert.Equal("watch", again.Constants[TrialColumn.Timer]);
        Assert.Empty(again.Heads);
    }

    [Fact]
    public void WithHead_Blank_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new ColumnMap<TrialColumn>().WithHead(TrialColumn.Timer, " "),
            "head",
            "Column's head must hold a visible character; was \" \"."
        );

    [Fact]
    public void WithConstant_Blank_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new ColumnMap<ReadingColumn>().WithConstant(ReadingColumn.Meter, ""),
            "value",
            "Constant value must hold a visible character; was \"\"."
        );

    [Fact]
    public void WithHead_UndefinedColumn_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new ColumnMap<TrialColumn>().WithHead((TrialColumn)99, "x"),
            "column",
            "Column must be one of Setup, Workload, Timer, RunTime, Order, Session, Specimen, Build, Connection, Temperature, OutputChecksum, CycleCount; was 99."
        );
}
