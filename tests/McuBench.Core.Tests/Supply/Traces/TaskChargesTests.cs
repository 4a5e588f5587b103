using McuBench.Core.Supply.Traces;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Supply.Traces;

public sealed class TaskChargesTests
{
    [Fact]
    public void Of_PhasesWithIdleBeside_GiveGrossAndNet()
    {
        // Idle at 1 A and 2 A, tasks at 5 A, at 3 V; the first and the last phase are cut.
        var tasks = TaskCharges.Of(Phases([5, 1, 1, 5, 5, 2, 2, 2, 2, 5, 2, 2, 5]));

        Assert.Equal(2, tasks.Count);
        Assert.Equal([10, 5], tasks.Select(task => task.Gross.Coulombs));
        Assert.Equal([10.0 / 6, 2], tasks.Select(task => task.Baseline!.Value.Amperes));
        Assert.Equal(10 - 2 * 10.0 / 6, tasks[0].Net!.Value.Coulombs, 1e-15);
        Assert.Equal(3, tasks[1].Net!.Value.Coulombs, 1e-15);
        Assert.Equal(3 * (10 - 2 * 10.0 / 6), tasks[0].NetEnergy!.Value.Joules, 1e-14);
        Assert.Equal(15, tasks[1].GrossEnergy!.Value.Joules, 1e-14);
    }

    [Fact]
    public void MeanGross_Tasks_HasScatterAndMeterInItsBudget()
    {
        var tasks = TaskCharges.Of(Phases([0, 4, 0, 6, 0, 8, 0]));
        var accuracy = new TraceAccuracy { Gain = Ratio.FromPercent(1), Offset = ElectricCurrent.FromMilliamperes(10) };

        var gross = TaskCharges.MeanGross(tasks, accuracy);
        var net = TaskCharges.MeanNet(tasks, accuracy);
        Assert.Equal(6, gross.Value.Coulombs, 1e-15);
        // Scatter 2 C in 3 tasks, gain 60 mC and offset 10 mC over the root of 3.
        Assert.Equal(
            Math.Sqrt(4 / 3.0 + (0.06 * 0.06 + 0.01 * 0.01) / 3),
            gross.StandardUncertainty!.Value.Coulombs,
            1e-14
        );
        Assert.Equal(Math.Sqrt(4 / 3.0 + 0.06 * 0.06 / 3), net.StandardUncertainty!.Value.Coulombs, 1e-14);
        Assert.Equal("scatter of 3 tasks", gross.Budget[0].Component);
        Assert.True(gross.Budget[0].AveragesDown);
        Assert.Equal(3, gross.Trials);
        // t at 2 degrees of freedom is 4.303, and the meter adds next to none.
        Assert.Equal(6 + 4.3026527 * Math.Sqrt(4 / 3.0), gross.Upper!.Value.Coulombs, 0.01);
    }

    [Fact]
    public void MeanGross_OneTask_HasNoInterval()
    {
        var mean = TaskCharges.MeanGross(TaskCharges.Of(Phases([0, 4, 0])));

        Assert.Equal(4, mean.Value.Coulombs);
        Assert.False(mean.HasInterval);
        Assert.Equal("One task alone shows no scatter: there is no interval.", mean.Notes[0]);
        Refusal.Is<ArgumentException>(
            () => TaskCharges.MeanGross([]),
            "tasks",
            "Tasks must be at least 1; there were none."
        );
    }

    [Fact]
    public void Matched_TasksAndTrials_StandSideBySideInOrder()
    {
        var tasks = TaskCharges.Of(Phases([0, 4, 4, 0, 6, 0]));
        Trial[] trials = [Sketch.TrialOf(2.1), Sketch.TrialOf(1)];

        var matched = TaskCharges.Matched(tasks, trials);
        Assert.Equal(trials, matched.Select(pair => pair.Trial));
        Assert.Equal(tasks, matched.Select(pair => pair.Task));
        Refusal.Is<ArgumentException>(
            () => TaskCharges.Matched(tasks, [trials[0]]),
            "tasks",
            "Tasks must be as many as the 1 trials; were 2. Do the thresholds cut a task in two, or miss one?"
        );
        Refusal.Is<ArgumentException>(
            () => TaskCharges.Matched(tasks, [trials[1], trials[0]]),
            "tasks",
            "Task 1 must last as long as its trial, 1 s, to within 10 %; lasted 2 s."
        );
    }

    private static IReadOnlyList<TracePhase> Phases(double[] amperes)
    {
        var finder = PhaseFinder.ByThreshold(ElectricCurrent.FromAmperes(3), ElectricCurrent.FromAmperes(3));
        finder.Take(TraceChunk.Even(1, amperes, [.. amperes.Select(_ => 3.0)]));
        return finder.Phases();
    }
}
