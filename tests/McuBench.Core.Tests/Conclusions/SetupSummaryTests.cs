using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats;
using McuBench.Stats.Intervals;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class SetupSummaryTests
{
    private static readonly double[] FiveTimes = [2.41, 2.38, 2.44, 2.40, 2.39];

    private static readonly Setup Marl100 = Bench.At(Bench.Marl, 100);

    [Fact]
    public void Of_FineTimer_IntervalIsStudents()
    {
        var runTime = SetupSummary.Of(Bench.Series(Marl100, Bench.Fine, FiveTimes)).RunTime;

        var student = MeanInterval.StudentT(Sample.Of(FiveTimes));
        Assert.Equal(student.Value, Si.Seconds(runTime.Value), 1e-14);
        Assert.Equal(student.Interval!.Lower, Si.Seconds(runTime.Lower!.Value), 1e-12);
        Assert.Equal(student.Interval.Upper, Si.Seconds(runTime.Upper!.Value), 1e-12);
        Assert.Equal(4, runTime.DegreesOfFreedom!.Value, 1e-9);
        Assert.Equal(5, runTime.Trials);
        Assert.Equal(0.95, runTime.Confidence);
        Assert.Empty(runTime.Notes);
    }

    [Fact]
    public void Of_PerItemAndPerCycleFigures_AreReciprocalsEndsAndAll()
    {
        var summary = SetupSummary.Of(Bench.Series(Marl100, Bench.Fine, FiveTimes));

        // 1000 frames in 2.404 s at 100 MHz.
        Assert.Equal(1000 / 2.404, Si.Hertz(summary.Throughput.Value), 1e-10);
        Assert.Equal(240_400, summary.CyclesPerItem.Value, 1e-8);
        Assert.Equal(1e6 / 240_400, summary.ItemsPerMegacycle.Value, 1e-13);
        Assert.Equal(1000 / Si.Seconds(summary.RunTime.Upper!.Value), Si.Hertz(summary.Throughput.Lower!.Value), 1e-10);
        Assert.Equal(1000 / Si.Seconds(summary.RunTime.Lower!.Value), Si.Hertz(summary.Throughput.Upper!.Value), 1e-10);
        Assert.Equal(1e6 / summary.CyclesPerItem.Upper!.Value, summary.ItemsPerMegacycle.Lower!.Value, 1e-13);
    }

    [Fact]
    public void Of_TenEqualReadingsOfTenths_IsNotZeroWideAndSaysWhy()
    {
        var runTime = SetupSummary.Of(Bench.Series(Marl100, Bench.Tenths, Enumerable.Repeat(2.4, 10))).RunTime;

        Assert.Equal(2.35, Si.Seconds(runTime.Lower!.Value), 1e-12);
        Assert.Equal(2.45, Si.Seconds(runTime.Upper!.Value), 1e-12);
        Assert.Contains(runTime.Notes, note => note.Contains("step enters undivided", StringComparison.Ordinal));
        Assert.StartsWith("mean of run times read in steps (likelihood", runTime.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneTrial_HasNoIntervalAndGivesBoundsInWords()
    {
        var summary = SetupSummary.Of(Bench.Series(Marl100, Bench.Tenths, 2.4));

        Assert.False(summary.RunTime.HasInterval);
        Assert.Null(summary.RunTime.StandardUncertainty);
        Assert.Null(summary.RunTime.Upper);
        Assert.Null(summary.RunTime.DegreesOfFreedom);
        Assert.Empty(summary.RunTime.Budget);
        Assert.False(summary.Throughput.HasInterval);
        Assert.False(summary.CyclesPerItem.HasInterval);
        Assert.Contains(
            "The reading itself stands for a run time from 2.35 s to 2.45 s, the timer's tolerance apart: bounds of this one run, not a confidence interval.",
            summary.RunTime.Notes
        );
    }

    [Fact]
    public void Of_TruncatedReadings_AreLiftedByHalfAStep()
    {
        var timer = Bench.Tenths with { Reading = TimerReading.Truncated };
        var runTime = SetupSummary.Of(Bench.Series(Marl100, timer, 2.4, 2.4, 2.4)).RunTime;

        Assert.Equal(2.45, Si.Seconds(runTime.Value), 1e-14);
        Assert.Contains(runTime.Notes, note => note.Contains("lifted by half a step, 50 ms", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_TimerTolerance_EntersWhateverTheNumberOfTrials()
    {
        // ±1 % is rectangular: 1 %/√3 of 2.404 s; the scatter adds s/√5.
        var timer = Bench.Fine with
        {
            Tolerance = Ratio.FromPercent(1),
        };
        var runTime = SetupSummary.Of(Bench.Series(Marl100, timer, FiveTimes)).RunTime;

        var ofTolerance = 2.404 * 0.01 / Math.Sqrt(3);
        var scatter = MeanInterval.StudentT(Sample.Of(FiveTimes)).StandardError!.Value;
        var both = Math.Sqrt(ofTolerance * ofTolerance + scatter * scatter);
        Assert.Equal(both, Si.Seconds(runTime.StandardUncertainty!.Value), 1e-14);
        var freedom = 4 * Math.Pow(both / scatter, 4);
        Assert.Equal(freedom, runTime.DegreesOfFreedom!.Value, 1e-9);

        // A uniform ±0.02404 s and a t of four degrees of freedom exceed this in 2.5 %, by SciPy's quadrature.
        Assert.Equal(2.4416244348990874, Si.Seconds(runTime.Upper!.Value), 1e-12);
    }

    [Fact]
    public void Of_Budget_NamesSharesThatAddUpAndWhatWouldHelp()
    {
        var timer = Bench.Fine with { Tolerance = Ratio.FromPercent(1) };
        var budget = SetupSummary.Of(Bench.Series(Marl100, timer, FiveTimes)).RunTime.Budget;

        Assert.Equal(2, budget.Count);
        Assert.Equal(1, budget.Sum(line => line.Share), 1e-12);
        Assert.True(budget[0].Share > budget[1].Share);
        Assert.Equal(
            ("tolerance of timer \"fine timer\"", EvaluationType.TypeB, false),
            (budget[0].Component, budget[0].Evaluation, budget[0].AveragesDown)
        );
        Assert.Equal(0.01 / Math.Sqrt(3), budget[0].RelativeStandardUncertainty, 1e-15);
        Assert.Equal(
            ("scatter of 5 trials, Marl 100", EvaluationType.TypeA, true),
            (budget[1].Component, budget[1].Evaluation, budget[1].AveragesDown)
        );
    }

    [Fact]
    public void Of_ClockTolerance_EntersCyclesAndNotRunTime()
    {
        var setup = Bench.At(Bench.Marl, 100, tolerance: 0.01);
        var summary = SetupSummary.Of(Bench.Series(setup, Bench.Fine, FiveTimes));

        Assert.Single(summary.RunTime.Budget);
        Assert.Equal("tolerance of the 100 MHz clock of Marl", summary.CyclesPerItem.Budget[0].Component);
    }

    [Fact]
    public void Of_UnknownTolerances_SaysSo()
    {
        var timer = new TrialTimer("ticks", Duration.FromMicroseconds(1), TimerReading.Rounded);
        var summary = SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100, tolerance: null), timer, FiveTimes));

        Assert.Contains("The timer's tolerance is unknown and not in the interval.", summary.RunTime.Notes);
        Assert.Contains("The clock's tolerance is unknown and not in the interval.", summary.CyclesPerItem.Notes);
        Assert.DoesNotContain("The clock's tolerance is unknown and not in the interval.", summary.RunTime.Notes);
    }

    [Fact]
    public void Of_TwoTrialsFarApart_StaysAboveZeroAndSaysHow()
    {
        var summary = SetupSummary.Of(Bench.Series(Marl100, Bench.Fine, 1, 3));

        Assert.True(Si.Seconds(summary.RunTime.Lower!.Value) > 0);
        Assert.Equal(4, Si.Seconds(summary.RunTime.Lower.Value) * Si.Seconds(summary.RunTime.Upper!.Value), 1e-6);
        Assert.Contains(summary.RunTime.Notes, note => note.Contains("on logarithms", StringComparison.Ordinal));
        Assert.True(double.IsFinite(Si.Hertz(summary.Throughput.Upper!.Value)));
    }

    [Fact]
    public void Of_WrongOutputs_AreLeftOutAndSaid()
    {
        var workload = Bench.Frames with { OutputChecksum = "AB12" };
        var trials = FiveTimes
            .Select(s => new Trial(Marl100, workload, Bench.Fine, Duration.FromSeconds(s)) { OutputChecksum = "ab12" })
            .Append(new Trial(Marl100, workload, Bench.Fine, Duration.FromSeconds(9)) { OutputChecksum = "ffff" });
        var summary = SetupSummary.Of(new TrialSeries(trials));

        Assert.Equal(2.404, Si.Seconds(summary.RunTime.Value), 1e-14);
        Assert.Contains("1 trial with the wrong output left out.", summary.RunTime.Notes);
    }

    [Fact]
    public void Of_OnlyWrongOutputs_Refuses()
    {
        var workload = Bench.Frames with { OutputChecksum = "AB12" };
        var series = new TrialSeries([
            new Trial(Marl100, workload, Bench.Fine, Duration.FromSeconds(9)) { OutputChecksum = "ffff" },
        ]);

        Refusal.Is<ArgumentException>(
            () => SetupSummary.Of(series),
            "series",
            "A series must hold a trial that counts as a result; all 1 of Marl 100, frame checksum, had the wrong checksum."
        );
    }

    [Fact]
    public void Of_SameInput_GivesEqualSummaries() =>
        Assert.Equal(
            SetupSummary.Of(Bench.Series(Marl100, Bench.Tenths, FiveTimes)),
            SetupSummary.Of(Bench.Series(Marl100, Bench.Tenths, FiveTimes))
        );
}
