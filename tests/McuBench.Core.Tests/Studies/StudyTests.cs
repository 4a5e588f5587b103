using McuBench.Core.Studies;
using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Tests.Studies;

public sealed class StudyTests
{
    private static readonly SupplyReading Idle = new(
        Sketch.MarlAt200,
        Sketch.Bench,
        SupplyPhase.Idle,
        ElectricCurrent.FromMilliamperes(12)
    );

    [Fact]
    public void FromTrials_Things_AreListedInOrderOfAppearance()
    {
        var second = Sketch.MarlAt200 with { Name = "Marl again" };

        var study = Study.FromTrials(
            "lake gauges",
            [Sketch.TrialOf(1), Sketch.TrialOf(2) with { Setup = second }, Sketch.TrialOf(1)],
            [Idle]
        );

        Assert.Equal([Sketch.MarlAt200, second], study.Setups);
        Assert.Equal([Sketch.Marl], study.Boards);
        Assert.Equal([Sketch.Bench], study.Meters);
        Assert.Equal(3, study.Trials.Count);
        Assert.Equal([2, 1], study.Series().Select(s => s.Trials.Count));
    }

    [Fact]
    public void FromTrials_TwoDifferentSetupsOfOneName_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () =>
                Study.FromTrials(
                    "lake gauges",
                    [
                        Sketch.TrialOf(1),
                        Sketch.TrialOf(1) with
                        {
                            Setup = Sketch.MarlAt200 with { Clock = new(Frequency.FromMegahertz(1)) },
                        },
                    ]
                ),
            "setups",
            "Setup names must be distinct within a study; \"Marl 200\" stands twice."
        );

    [Fact]
    public void New_TrialOfUnlistedSetup_IsRefusedWithItsPlace() =>
        Refusal.Is<ArgumentException>(
            () =>
                new Study(
                    "lake gauges",
                    [Sketch.Marl],
                    [],
                    [Sketch.Echo],
                    [Sketch.Microseconds],
                    [],
                    [Sketch.TrialOf(1)],
                    []
                ),
            "trials",
            "Trial 0 must refer to a setup of the study; \"Marl 200\" is not listed."
        );

    [Fact]
    public void New_SetupOfUnlistedBoard_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Study("lake gauges", [], [Sketch.MarlAt200], [], [], [], [], []),
            "setups",
            "Setup \"Marl 200\" must refer to a board of the study; \"Marl\" is not listed."
        );

    [Fact]
    public void New_ReadingOfAMeterListedOtherwise_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () =>
                new Study(
                    "lake gauges",
                    [Sketch.Marl],
                    [Sketch.MarlAt200],
                    [],
                    [],
                    [new Meter("bench meter", Sketch.Fifty)],
                    [],
                    [Idle]
                ),
            "readings",
            "Reading 0 must refer to a meter of the study; \"bench meter\" is listed with other properties."
        );

    [Fact]
    public void New_BlankTitle_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => Study.FromTrials("", [Sketch.TrialOf(1)]),
            "Title",
            "Study's title must hold a visible character"
        );

    [Fact]
    public void New_NullList_IsRefused() =>
        Assert.Equal("trials", Assert.Throws<ArgumentNullException>(() => Study.FromTrials("t", null!)).ParamName);

    [Fact]
    public void Equals_SameLists_IsTrue()
    {
        var one = Study.FromTrials("lake gauges", [Sketch.TrialOf(1)], [Idle]);

        Assert.Equal(one, Study.FromTrials("lake gauges", [Sketch.TrialOf(1)], [Idle]));
        Assert.NotEqual(one, Study.FromTrials("lake gauges", [Sketch.TrialOf(2)], [Idle]));
        Assert.NotEqual(one, one with { IsInvented = true });
    }
}
