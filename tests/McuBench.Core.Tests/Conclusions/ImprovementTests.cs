using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;

namespace McuBench.Core.Tests.Conclusions;

public class ImprovementTests
{
    [Fact]
    public void Improvements_StepAlone_AFinerTimerPaysAndTrialsDont()
    {
        var runTime = SetupSummary
            .Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Tenths, 2.4, 2.4, 2.4, 2.4, 2.4))
            .RunTime;

        var finer = runTime.Improvements[0];
        Assert.Equal(BudgetKind.TimerStep, finer.Kind);
        Assert.True(finer.Pays);
        Assert.Equal(0.1, finer.WidthFactor, 1e-12);
        Assert.Equal(0, finer.LeastWidthFactor);
        var trials = runTime.Improvements[^1];
        Assert.Equal(BudgetKind.Scatter, trials.Kind);
        Assert.False(trials.Pays);
        Assert.Equal(1, trials.WidthFactor);
        Assert.Empty(trials.Components);
        Assert.Equal(
            "100 % of the variance is timer step of 100 ms, Marl 100. A timer step of 10 ms in place of 100 ms, or runs ten times as long, would narrow this interval to 0.1 of its width; 4 times as many trials and readings would not narrow it.",
            BudgetStatement.Of(runTime)
        );
    }

    /// <summary>Four times five trials: half the standard uncertainty, and 2.093 at 19 degrees of freedom in place of 2.776
    /// at 4 (Student's t of the textbooks).</summary>
    [Fact]
    public void Improvements_ScatterAlone_TrialsPay()
    {
        var runTime = SetupSummary
            .Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Fine, 2.40, 2.41, 2.42, 2.39, 2.38))
            .RunTime;

        var trials = runTime.Improvements[0];
        Assert.Equal(BudgetKind.Scatter, trials.Kind);
        Assert.Equal(2.093 / 2.776 / 2, trials.WidthFactor, 1e-3);
        Assert.Equal(
            "100 % of the variance is scatter of 5 trials, Marl 100. 4 times as many trials and readings would narrow this interval to 0.38 of its width; no finer instrument would do as much.",
            BudgetStatement.Of(runTime)
        );
    }

    [Fact]
    public void Improvements_ChargeByAMeterOfStatedAccuracy_NameWhatWouldPay()
    {
        var setup = Bench.At(Bench.Marl, 100);
        var supply = SetupSummary
            .Of(
                Bench.Series(setup, Bench.Fine, 2.4, 2.4001, 2.3999),
                Bench.Running(setup, Bench.Meter(ofReading: 0.02), null, 0.05, 0.05)
            )
            .Supply!;

        var kinds = supply.ChargePerTask.Budget.Select(l => l.Kind).Distinct().ToArray();
        Assert.Equal(BudgetKind.MeterGain, supply.ChargePerTask.Improvements[0].Kind);
        Assert.Contains(BudgetKind.MeterStep, kinds);
        Assert.Equal(
            ["gain of meter \"bench meter\" in its 100 mA range"],
            supply.ChargePerTask.Improvements[0].Components
        );
    }

    [Fact]
    public void Improvements_NoInterval_AreNone()
    {
        var runTime = SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Fine, 2.4)).RunTime;

        Assert.Empty(runTime.Improvements);
        Assert.StartsWith(
            "There is no interval to narrow: One trial alone",
            BudgetStatement.Of(runTime),
            StringComparison.Ordinal
        );
    }
}
