using DemoStudy;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using UnitsNet;

namespace McuBench.Core.Tests.Demo;

/// <summary>Asks whether the analysis of the demo study finds what the demo's model is known to hold.</summary>
public sealed class ModelRecoveryTests
{
    private static readonly StudyConclusions Conclusions = StudyConclusions.Of(
        DemoData.Make(),
        new ConclusionOptions { Margin = Ratio.FromPercent(2) }
    );

    [Fact]
    public void RunTimes_AllSeries_HoldTheTruthAsOftenAsPromised()
    {
        var missed = Conclusions
            .Summaries.Where(summary => !Holds(summary.RunTime, time => time.Seconds, TrueRunTime(summary)))
            .Select(summary => $"{summary.Setup.Name}, {summary.Workload.Name}")
            .ToArray();

        // Of 36 intervals at 95 %, more than 5 miss in one study of a hundred if the promise is kept.
        Assert.Equal(36, Conclusions.Summaries.Count);
        Assert.True(missed.Length <= 5, string.Join("; ", missed));
    }

    [Theory]
    [InlineData(0.80, 18, 50)]
    [InlineData(0.95, 1, 18)]
    [InlineData(0.99, 0, 7)]
    public void RunTimes_OtherSeedsFineTimers_MissTheTruthAsOftenAsPromised(double confidence, int fewest, int most)
    {
        // Of 168 intervals a binomial number misses; the bounds leave out about one set in a thousand on either side.
        var options = new ConclusionOptions { Confidence = confidence };
        var summaries = Enumerable
            .Range(1, 6)
            .SelectMany(seed => DemoData.Make((ulong)seed).Series())
            .Where(series => series.Timer != DemoModel.Tuff.Timer)
            .Select(series => SetupSummary.Of(series, options: options))
            .Where(summary => !IsDisturbed(summary))
            .ToArray();

        Assert.Equal(168, summaries.Length);
        Assert.InRange(
            summaries.Count(summary => !Holds(summary.RunTime, time => time.Seconds, TrueRunTime(summary))),
            fewest,
            most
        );
    }

    [Fact]
    public void Charges_AllSeries_HoldTheTruth()
    {
        foreach (var summary in Conclusions.Summaries)
        {
            var truth = DemoModel.RunningCurrent(summary.Setup) * TrueRunTime(summary);
            Assert.True(
                Holds(summary.Supply!.ChargePerTask, charge => charge.Coulombs, truth),
                $"{summary.Setup.Name}, {summary.Workload.Name}"
            );
        }
    }

    [Fact]
    public void NetCharges_DisplaySubtracted_HoldTheTruth()
    {
        foreach (var summary in Conclusions.Summaries)
        {
            var net = Assert.Single(summary.Supply!.Net, net => net.Kind == BaselineKind.Attachment);
            var truth = (DemoModel.RunningCurrent(summary.Setup) - DemoModel.DisplayCurrent) * TrueRunTime(summary);
            Assert.True(
                Holds(net.ChargePerTask, charge => charge.Coulombs, truth),
                $"{summary.Setup.Name}, {summary.Workload.Name}"
            );
        }
    }

    [Fact]
    public void Splits_SoundSeries_HoldFixedTimeAndCycles()
    {
        var checkedSplits = 0;
        foreach (var split in Conclusions.Splits)
        {
            if (split.Points.Any(point => IsDisturbed(point.Summary)))
            {
                continue;
            }

            checkedSplits++;
            var task = DemoModel.TaskOf(split.Points[0].Summary.Setup, split.Workload);
            Assert.True(Holds(split.FixedTime, time => time.Seconds, task.FixedTime), $"{split.Name}: fixed time");
            Assert.True(Holds(split.Cycles, cycles => cycles, task.Cycles), $"{split.Name}: cycles");
        }

        Assert.Equal(10, checkedSplits);
    }

    [Fact]
    public void Currents_AllCores_HoldBaseAndSlope()
    {
        Assert.Equal(12, Conclusions.Currents.Count);
        foreach (var line in Conclusions.Currents)
        {
            var core = DemoModel.CoreOf(line.Summaries[0].Setup);
            var truth = core.Board.BaseCurrent + DemoModel.DisplayCurrent;
            Assert.True(Holds(line.BaseCurrent, current => current.Amperes, truth), $"{line.Name}: base");
            Assert.True(
                Holds(line.CurrentPerMegahertz, current => current.Amperes, core.CurrentPerHertz * 1e6),
                $"{line.Name}: slope"
            );
        }
    }

    [Fact]
    public void Comparison_FasterCoreAtLowerClock_SaysByHowMuch()
    {
        var comparison = Pair("Schist B 160 MHz", "Marl 200 MHz", DemoModel.EchoSpectrum);
        var truth =
            DemoModel.RunTime(comparison.First.Setup, DemoModel.EchoSpectrum)
            / DemoModel.RunTime(comparison.Second.Setup, DemoModel.EchoSpectrum);

        Assert.Equal(Verdict.Different, comparison.RunTime.Verdict);
        Assert.Equal(Side.First, comparison.RunTime.Less);
        Assert.True(Holds(comparison.RunTime.Ratio, ratio => ratio, truth));
    }

    [Fact]
    public void Comparison_OnlyToolchainDiffersAndChangesNothing_IsEqualWithinTheMargin()
    {
        foreach (var workload in DemoModel.Workloads)
        {
            var comparison = Pair(DemoBench.SchistA160.Name, DemoBench.SchistA160Newer.Name, workload);
            Assert.Equal(Verdict.EqualWithinMargin, comparison.RunTime.Verdict);
            Assert.Equal(SetupAspect.Toolchain, Assert.Single(comparison.Differences).Aspect);
        }
    }

    [Fact]
    public void Comparison_ChargesTooCloseForTheMeter_IsNotResolvedWithoutAMargin()
    {
        var pair = Pair("Tuff 48 MHz", "Schist B 160 MHz", DemoModel.EchoSpectrum);
        var comparison = SetupComparison.Of(pair.First, pair.Second);

        Assert.Equal(Verdict.NotResolved, comparison.ChargePerTask!.Verdict);
        Assert.Equal(Verdict.Different, comparison.RunTime.Verdict);
    }

    [Fact]
    public void Scaled_SlowDisplayTakenOut_ReversesTheOrder()
    {
        var reversed = Conclusions
            .ScaledComparisons.SelectMany(scaled => scaled.Pairs)
            .Where(pair => pair.IsOrderReversed)
            .Select(pair => pair.Gross)
            .ToArray();

        Assert.Contains(
            reversed,
            gross =>
                gross.Workload == DemoModel.MedianFilter && Names(gross).SetEquals(["Marl 200 MHz", "Schist B 160 MHz"])
        );
        foreach (var gross in reversed)
        {
            Assert.True(IsReversedInTheModel(gross), $"{string.Join(" and ", Names(gross))}, {gross.Workload.Name}");
        }
    }

    [Theory]
    [InlineData(FindingKind.Drift, "Schist A 80 MHz", "median filter")]
    [InlineData(FindingKind.Outliers, "Schist B 80 MHz", "frame checksum")]
    [InlineData(FindingKind.ChecksumMismatch, "Marl 200 MHz", "echo spectrum")]
    [InlineData(FindingKind.CoarseTimer, "Tuff 48 MHz", "frame checksum")]
    public void Review_WhatWasPutIn_IsFound(FindingKind kind, string setup, string workload) =>
        Assert.Contains(
            Conclusions.Review.Findings,
            finding =>
                finding.Kind == kind
                && finding.Subject.Contains(setup, StringComparison.Ordinal)
                && finding.Subject.Contains(workload, StringComparison.Ordinal)
        );

    /// <summary>A drifting series has a mean run time that lies above the first one.</summary>
    private static double TrueRunTime(SetupSummary summary)
    {
        var drift =
            (summary.Setup, summary.Workload) == DemoBench.Drifting
                ? DemoModel.DriftPerTrial * (DemoData.TrialsPerSeries - 1) / 2
                : 0;
        return DemoModel.RunTime(summary.Setup, summary.Workload) * (1 + drift);
    }

    private static bool IsDisturbed(SetupSummary summary) =>
        (summary.Setup, summary.Workload) == DemoBench.Drifting
        || (summary.Setup, summary.Workload) == DemoBench.WithOutliers;

    private static bool Holds<T>(Measured<T> measured, Func<T, double> si, double truth)
        where T : struct =>
        measured is { Lower: { } lower, Upper: { } upper } && si(lower) <= truth && truth <= si(upper);

    private static SetupComparison Pair(string first, string second, Workload workload) =>
        SetupComparison.Of(Summary(first, workload), Summary(second, workload), Conclusions.Options);

    private static SetupSummary Summary(string setup, Workload workload) =>
        Conclusions.Summaries.Single(summary => summary.Setup.Name == setup && summary.Workload == workload);

    private static HashSet<string> Names(SetupComparison comparison) =>
        [comparison.First.Setup.Name, comparison.Second.Setup.Name];

    private static bool IsReversedInTheModel(SetupComparison gross)
    {
        double Gross(Setup setup) => DemoModel.RunTime(setup, gross.Workload);
        double Scaling(Setup setup) => Gross(setup) - DemoModel.TaskOf(setup, gross.Workload).FixedTime;
        var (first, second) = (gross.First.Setup, gross.Second.Setup);
        return Gross(first) < Gross(second) != Scaling(first) < Scaling(second);
    }
}
