using McuBench.Core.Boards;
using McuBench.Core.Planning;
using McuBench.Core.Reporting;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Planning;

public class TrialPlanTests
{
    private static readonly TrialTimer Tenths = new("stop clock", Duration.FromMilliseconds(100), TimerReading.Rounded);

    private static readonly TrialTimer Fine = new("ticks", Duration.FromNanoseconds(1), TimerReading.Rounded);

    private static readonly Workload Filter = new("median filter", 1500) { ItemName = "iteration" };

    /// <summary>Student's t of the textbooks: 2.120 at 16 and 2.145 at 14 degrees of freedom, so that 9 trials a side come to
    /// 2.120·√(2/9) = 0.9994 and 8 to 1.072 of the spread.</summary>
    [Fact]
    public void ForRatioWithin_SpreadOfTheWidthWanted_TakesNineTrials()
    {
        var plan = TrialPlan.ForRatioWithin(Basis(spread: 1, Fine), Ratio.FromPercent(1));

        Assert.True(plan.IsReached);
        Assert.Equal(9, plan.TrialsPerSession);
        Assert.Equal(1, plan.SessionsPerSpecimen);
        Assert.Equal(1, plan.Specimens);
        Assert.Equal(0.009993, plan.Expected!.Value.DecimalFractions, 1e-6);
        Assert.Equal(
            "9 trials of each setup are expected to bring the interval of the ratio of two setups to ± 1.00 %, at 95 % confidence.",
            PlanStatement.Of(plan)
        );
    }

    /// <summary>t(0.975, 6) = 2.447 and t(0.975, 5) = 2.571: 7 trials come to 2.447/√7 = 0.925, 6 to 1.050.</summary>
    [Fact]
    public void ForRunTimeWithin_SpreadOfTheWidthWanted_TakesSevenTrials() =>
        Assert.Equal(7, TrialPlan.ForRunTimeWithin(Basis(spread: 1, Fine), Ratio.FromPercent(1)).TrialsPerSession);

    [Fact]
    public void ForRatioWithin_StepInTheWay_SaysHowLongTheRunShouldBe()
    {
        var plan = TrialPlan.ForRatioWithin(Basis(spread: 0.1, Tenths), Ratio.FromPercent(1));

        // √2 · 1.960 · √(2/12) · 0.1 s / 0.01 = 11.3 s, to two digits upwards; 1500 · 12/2.4 items.
        Assert.False(plan.IsReached);
        Assert.Null(plan.TrialsPerSetup);
        Assert.Equal(12, plan.NeededRunTime!.Value.Seconds, 1e-12);
        Assert.Equal(7500, plan.NeededWorkItemsPerRun);
        Assert.Equal(
            "No number of trials brings the interval of the ratio of two setups to ± 1 % with this timer, whose step of 100 ms is 4.17 % of a run: lengthen the run to at least 12 s, 7500 iterations, or use a finer timer.",
            PlanStatement.Of(plan)
        );
    }

    [Fact]
    public void ForRatioWithin_RunAsLongAsAdvised_IsReached()
    {
        var longer = new PlanBasis(
            new Workload("median filter", 7500),
            Tenths,
            Duration.FromSeconds(12),
            Ratio.FromPercent(0.1)
        );

        Assert.True(TrialPlan.ForRatioWithin(longer, Ratio.FromPercent(1)).IsReached);
    }

    [Fact]
    public void ForRatioWithin_ScatterOfHalfAStep_AveragesTheStepOut()
    {
        var plan = TrialPlan.ForRatioWithin(Basis(spread: 5, Tenths), Ratio.FromPercent(1));

        Assert.True(plan.IsReached);
        Assert.InRange(plan.TrialsPerSetup!.Value, 190, 220);
    }

    [Fact]
    public void ForRatioWithin_SessionsSpread_TakesSessionsRatherThanTrials()
    {
        var basis = Basis(spread: 1, Fine) with { SessionSpread = Ratio.FromPercent(2) };
        var plan = TrialPlan.ForRatioWithin(basis, Ratio.FromPercent(1.5));

        Assert.True(plan.SessionsPerSpecimen >= 15);
        Assert.Equal(3, plan.TrialsPerSession);
    }

    [Fact]
    public void ForRatioWithin_SpecimensSpread_TakesSpecimens()
    {
        var basis = Basis(spread: 0.1, Fine) with { SpecimenSpread = Ratio.FromPercent(1) };
        var plan = TrialPlan.ForRatioWithin(basis, Ratio.FromPercent(1.2));

        // t(0.975, 2·6 − 2)·√(2/6) = 1.286 and with seven 2.179·√(2/7) = 1.165 of the spread.
        Assert.Equal(7, plan.Specimens);
        Assert.Contains("on each of 7 specimens (21 trials a setup)", PlanStatement.Of(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void ForRatioWithin_SpecimensBeyondTheLimit_SaysSo()
    {
        var basis = Basis(spread: 0.1, Fine) with { SpecimenSpread = Ratio.FromPercent(5) };
        var plan = TrialPlan.ForRatioWithin(basis, Ratio.FromPercent(1));

        Assert.False(plan.IsReached);
        Assert.Null(plan.NeededRunTime);
        Assert.Equal(
            "No plan within the bench's limits brings the interval of the ratio of two setups to ± 1 %: run times spread by 0.1 % between trials, 0 % between sessions and 5 % between specimens. Lessen the spread, or ask for less.",
            PlanStatement.Of(plan)
        );
    }

    [Fact]
    public void ForDifference_IsTheSmallestThatAComparisonOfSoManyWouldShow()
    {
        var plan = TrialPlan.ForDifference(Basis(spread: 1, Fine), Ratio.FromPercent(1));

        // (t(0.975, 32) + t(0.80, 32))·√(2/17) = (2.037 + 0.853)·0.343 = 0.991; with 16, 2.896·0.3536 = 1.024.
        Assert.Equal(17, plan.TrialsPerSession);
        Assert.StartsWith(
            "17 trials of each setup are expected to show a difference of 1.00 % in four studies of five",
            PlanStatement.Of(plan),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ForRatioWithin_NothingWanted_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => TrialPlan.ForRatioWithin(Basis(1, Fine), Ratio.FromPercent(0)),
            "halfWidth",
            "What is wanted must be above 0 %; was 0 %."
        );

    [Fact]
    public void ForRatioWithin_ConfidenceOfOne_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => TrialPlan.ForRatioWithin(Basis(1, Fine), Ratio.FromPercent(1), confidence: 1),
            "Confidence",
            "Confidence must be at least 0.5 and at most 0.9999; was 1."
        );

    [Fact]
    public void Limits_TooFewTrials_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new PlanLimits { TrialsPerSession = 2 },
            "TrialsPerSession",
            "Most trials a session must be at least 3; was 2."
        );

    private static PlanBasis Basis(double spread, TrialTimer timer) =>
        new(Filter, timer, Duration.FromSeconds(2.4), Ratio.FromPercent(spread));
}
