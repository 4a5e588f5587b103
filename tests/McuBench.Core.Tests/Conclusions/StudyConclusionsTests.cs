using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class StudyConclusionsTests
{
    [Fact]
    public void Of_TwoBoardsAtTwoClocks_DrawsEverything()
    {
        var conclusions = Bench.Conclude(TwoBoards());

        Assert.Equal(["Marl 100", "Marl 200", "Tuff 100", "Tuff 200"], conclusions.Summaries.Select(s => s.Setup.Name));
        Assert.Equal(6, conclusions.Comparisons.Count);
        Assert.Equal(["Marl", "Tuff"], conclusions.Splits.Select(s => s.Name));
        Assert.Equal(4, Assert.Single(conclusions.ScaledComparisons).Pairs.Count);
        Assert.Equal(2, conclusions.Currents.Count);
        Assert.Same(ConclusionOptions.Default, conclusions.Options);
    }

    [Fact]
    public void Of_WaitingRead_PutsChargeTogetherByTheSplit()
    {
        // Marl: 0.4 s fixed and 20 million cycles. At 100 MHz: 0.2 s at 30 mA and 0.4 s at 10 mA: 10 mC, not 18.
        var conclusions = Bench.Conclude(TwoBoards(waiting: true));
        var supply = conclusions.Summaries[0].Supply!;

        Assert.False(supply.IsWholeRunMean);
        Assert.Equal(0.010, Si.Coulombs(supply.ChargePerTask.Value), 1e-9);
        Assert.Equal(0.010 / 0.6, Si.Amperes(supply.Current.Value), 1e-9);
        Assert.Equal(conclusions.Summaries[0], conclusions.Splits[0].Points[0].Summary);
        Assert.Contains(supply.Notes, n => n.StartsWith("Charge is put together", StringComparison.Ordinal));

        // Tuff has no fixed time to wait in.
        Assert.True(conclusions.Summaries[2].Supply!.IsWholeRunMean);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void BestClocks_CurrentsAtTwoClocks_AreFoundForEachSplit(bool waiting)
    {
        var conclusions = Bench.Conclude(TwoBoards(waiting));

        Assert.Equal(["Marl", "Tuff"], conclusions.BestClocks.Select(best => best.Split.Name));
        Assert.All(conclusions.BestClocks, best => Assert.Equal(!waiting, best.RestsOnEqualDraw));
        Assert.All(conclusions.BestClocks, best => Assert.Contains(best.Split, conclusions.Splits));
    }

    [Fact]
    public void Of_SameStudyTwice_GivesEqualConclusions()
    {
        var one = Bench.Conclude(TwoBoards());
        var two = Bench.Conclude(TwoBoards());

        Assert.Equal(one, two);
        Assert.Equal(one.GetHashCode(), two.GetHashCode());
    }

    [Fact]
    public void Of_Progress_TellsEachStageToItsEnd()
    {
        var steps = new List<ConclusionProgress>();
        Bench.Conclude(TwoBoards(), new Now(steps));

        Assert.Equal(
            [
                new(ConclusionStage.Summaries, 4, 4),
                new(ConclusionStage.Clocks, 2, 2),
                new(ConclusionStage.Comparisons, 6, 6),
                new(ConclusionStage.Rankings, 1, 1),
                new(ConclusionStage.Review, 4, 4),
            ],
            steps.Where(s => s.Done == s.Total)
        );
        Assert.Equal(17, steps.Count);
    }

    [Fact]
    public void Of_Cancelled_Stops()
    {
        using var cancellation = new CancellationTokenSource();
        var steps = new List<ConclusionProgress>();
        var progress = new Now(steps, () => cancellation.Cancel());

        Assert.Throws<OperationCanceledException>(() =>
            StudyConclusions.Of(TwoBoards(), progress: progress, cancellationToken: cancellation.Token)
        );
        Assert.Single(steps);
    }

    [Fact]
    public void Of_OneSetupTimedTwice_IsNotComparedWithItself()
    {
        var setup = Bench.At(Bench.Marl, 100);
        Trial[] trials =
        [
            .. Bench.Series(setup, Bench.Fine, 2.0, 2.1).Trials,
            .. Bench.Series(setup, Bench.Tenths, 2.0, 2.1).Trials,
        ];

        Assert.Empty(Bench.Conclude(Study.FromTrials("study", trials)).Comparisons);
    }

    [Fact]
    public void Of_OnlyWrongOutputs_HasNoSummaryAndSaysSo()
    {
        var workload = Bench.Frames with { OutputChecksum = "ab" };
        var trial = new Trial(Bench.At(Bench.Marl, 100), workload, Bench.Fine, Duration.FromSeconds(1))
        {
            OutputChecksum = "cd",
        };
        var conclusions = Bench.Conclude(Study.FromTrials("study", [trial]));

        Assert.Empty(conclusions.Summaries);
        Assert.Equal(FindingKind.ChecksumMismatch, conclusions.Review.Findings[0].Kind);
    }

    [Fact]
    public void Of_EmptyStudy_HasNothingToSay()
    {
        var conclusions = Bench.Conclude(Study.FromTrials("study", []));

        Assert.Empty(conclusions.Summaries);
        Assert.Empty(conclusions.Review.Findings);
    }

    [Fact]
    public void Of_AllFigures_AreFiniteAndNoIntervalIsZeroWide()
    {
        var conclusions = Bench.Conclude(TwoBoards(waiting: true));

        foreach (var comparison in conclusions.Comparisons)
        {
            Assert.All(
                [
                    comparison.RunTime.Ratio,
                    comparison.CyclesPerItem.Ratio,
                    comparison.ChargePerTask!.Ratio,
                    comparison.SpeedRatio,
                ],
                ratio => Assert.True(double.IsFinite(ratio.Value) && ratio.Lower < ratio.Upper)
            );
        }
    }

    [Fact]
    public void Options_MarginOfNothing_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new ConclusionOptions { Margin = Ratio.FromPercent(0) },
            "Margin",
            "Margin must be above 0 %; was 0 %."
        );

    [Theory]
    [InlineData(0.4)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Options_ConfidenceOutOfRange_Refuses(double confidence) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new ConclusionOptions { Confidence = confidence },
            "Confidence",
            "Confidence must be at least 0.5 and at most 0.9999; was "
        );

    /// <summary>Marl: 0.4 s and 20 million cycles, 30 mA; Tuff: 50 million cycles, 30 mA.</summary>
    private static Study TwoBoards(bool waiting = false)
    {
        var meter = Bench.Meter(ofReading: 0.01, digits: 1);
        (Setup Setup, double Seconds)[] runs =
        [
            (Bench.At(Bench.Marl, 100), 0.6),
            (Bench.At(Bench.Marl, 200), 0.5),
            (Bench.At(Bench.Tuff, 100), 0.5),
            (Bench.At(Bench.Tuff, 200), 0.25),
        ];
        var trials = runs.SelectMany(run =>
            Bench
                .Series(
                    run.Setup,
                    Bench.Fine,
                    run.Seconds - 1e-3,
                    run.Seconds + 1e-3,
                    run.Seconds,
                    run.Seconds - 1e-3,
                    run.Seconds + 1e-3
                )
                .Trials
        );
        var readings = runs.SelectMany(run => Bench.Running(run.Setup, meter, 5, 0.03, 0.0301, 0.0299));
        if (waiting)
        {
            readings = readings.Concat(
                runs.SelectMany(run => Bench.Read(run.Setup, meter, SupplyPhase.Waiting, 5, [0.01, 0.0101, 0.0099]))
            );
        }

        return Study.FromTrials("two boards", trials, readings);
    }

    /// <summary>Reports at once, unlike <see cref="Progress{T}"/>.</summary>
    private sealed class Now(List<ConclusionProgress> steps, Action? then = null) : IProgress<ConclusionProgress>
    {
        public void Report(ConclusionProgress value)
        {
            steps.Add(value);
            then?.Invoke();
        }
    }
}
