using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Distributions;
using McuBench.Stats.Regression;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>t = 0.1 s + 40 million cycles / f: 0.5 s at 100 MHz, 0.3 s at 200 MHz, 0.2 s at 400 MHz.</summary>
public class ClockSplitTests
{
    private const double FixedSeconds = 0.1;
    private const double Cycles = 40e6;

    [Fact]
    public void Of_TwoClocks_GivesTheApparentFixedPart()
    {
        var split = Split([Around(100, 0.5), Around(200, 0.3)]);

        Assert.Equal(FixedSeconds, Si.Seconds(split.FixedTime.Value), 1e-12);
        Assert.Equal(Cycles, split.Cycles.Value, 1e-3);
        Assert.Equal(Cycles / 1000, split.CyclesPerItem.Value, 1e-6);
        Assert.True(split.IsApparent);
        Assert.Null(split.LackOfFit);
        Assert.Equal(FixedPart.Present, split.FixedPart);
        Assert.Contains(split.Notes, n => n.StartsWith("Two clocks", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_TwoClocks_CarriesEachOnesScatterByHand()
    {
        // Means of three at ±1 ms: u = 1 ms/√3 each, two degrees of freedom. Fixed part = 2·t₂ − t₁.
        var split = Split([Around(100, 0.5), Around(200, 0.3)]);
        var u = 1e-3 / Math.Sqrt(3);

        Assert.Equal(u * Math.Sqrt(5), Si.Seconds(split.FixedTime.StandardUncertainty!.Value), 1e-12);
        Assert.Equal(u * Math.Sqrt(2) * 2e8, split.Cycles.StandardUncertainty!.Value, 1e-3);
        var freedom = 25.0 / (1.0 / 2 + 16.0 / 2);
        Assert.Equal(freedom, split.FixedTime.DegreesOfFreedom!.Value, 1e-9);
        Assert.Equal(
            FixedSeconds - StudentT.Of(freedom).UpperQuantile(0.025) * u * Math.Sqrt(5),
            Si.Seconds(split.FixedTime.Lower!.Value),
            1e-12
        );
    }

    [Fact]
    public void Of_Points_HaveFittedResidualAndShare()
    {
        var split = Split([Around(100, 0.5), Around(200, 0.3), Around(400, 0.2)]);

        Assert.Equal(
            [0.8, Math.Round(2.0 / 3, 12), 0.5],
            split.Points.Select(p => Math.Round(Si.Fraction(p.ScalingShare.Value), 12))
        );
        Assert.Equal([0.4, 0.2, 0.1], split.Points.Select(p => Math.Round(Si.Seconds(p.ScalingTime.Value), 12)));
        Assert.All(split.Points, p => Assert.Equal(0, Si.Seconds(p.Residual), 1e-12));
        Assert.False(split.IsApparent);
        Assert.Equal(1, split.LackOfFit!.PointsToSpare);
        Assert.Equal(1, split.LackOfFit.PValue, 1e-6);
    }

    [Fact]
    public void Of_ScatteredPoints_IsTheWeightedLineOfStats()
    {
        // Relative scatter alike at every clock and as many trials: weights go with 1/t².
        (double Megahertz, double Seconds)[] points = [(100, 0.51), (200, 0.295), (400, 0.201)];
        var split = Split([.. points.Select(p => Relative(p.Megahertz, p.Seconds))]);
        double[] x = [.. points.Select(p => 1 / (p.Megahertz * 1e6))];
        double[] y = [.. points.Select(p => p.Seconds)];
        var line = StraightLine.FitWeighted(x, y, y);

        Assert.Equal(line.Intercept, Si.Seconds(split.FixedTime.Value), 1e-12);
        Assert.Equal(line.Slope, split.Cycles.Value, 1e-3);
    }

    [Fact]
    public void Of_TimerTolerance_ScalesBothPartsAndLeavesTheShare()
    {
        var timer = Bench.Fine with { Tolerance = Ratio.FromPercent(1) };
        var exact = Split([Around(100, 0.5), Around(200, 0.3)]);
        var split = Split([Around(100, 0.5, timer), Around(200, 0.3, timer)]);

        Assert.Equal(0.01 / Math.Sqrt(3), OfTolerance(split.FixedTime.Budget), 1e-12);
        Assert.Equal(0.01 / Math.Sqrt(3), OfTolerance(split.Cycles.Budget), 1e-12);
        Assert.Equal(
            Si.Fraction(exact.Points[0].ScalingShare.StandardUncertainty!.Value),
            Si.Fraction(split.Points[0].ScalingShare.StandardUncertainty!.Value),
            1e-14
        );

        static double OfTolerance(IEnumerable<BudgetLine> budget) =>
            budget
                .Single(b => b.Component.StartsWith("tolerance", StringComparison.Ordinal))
                .RelativeStandardUncertainty;
    }

    [Fact]
    public void Of_ClockTolerance_MovesPointsAlongTheLine()
    {
        // Each clock ±1 %: its point is off by 1 %/√3 of its scaling part, 0.4 s and 0.2 s. Fixed part = 2·t₂ − t₁.
        var split = Split([Around(100, 0.5, tolerance: 0.01), Around(200, 0.3, tolerance: 0.01)]);
        var lines = split
            .FixedTime.Budget.Where(b => b.Component.StartsWith("tolerance", StringComparison.Ordinal))
            .ToList();

        Assert.Equal(2, lines.Count);
        Assert.All(
            lines,
            line => Assert.Equal(0.4 * 0.01 / Math.Sqrt(3) / FixedSeconds, line.RelativeStandardUncertainty, 1e-9)
        );
    }

    [Fact]
    public void Of_TimeThatFallsFasterThanTheClock_IsNegativeAndSaysSo()
    {
        var split = Split([Around(100, 0.5), Around(200, 0.2)]);

        Assert.Equal(FixedPart.Negative, split.FixedPart);
        Assert.Contains(
            split.Notes,
            n => n.StartsWith("The fixed part comes out below zero", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_NoFixedTime_IsNotResolved() =>
        Assert.Equal(FixedPart.NotResolved, Split([Around(100, 0.4), Around(200, 0.2001)]).FixedPart);

    [Fact]
    public void Of_SingleTrials_HasValuesAndNoInterval()
    {
        var split = Split([One(100, 0.5), One(200, 0.3)]);

        Assert.Equal(FixedSeconds, Si.Seconds(split.FixedTime.Value), 1e-12);
        Assert.False(split.FixedTime.HasInterval);
        Assert.Equal(FixedPart.NotResolved, split.FixedPart);

        static SetupSummary One(double megahertz, double seconds) =>
            SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, megahertz), Bench.Tenths, seconds));
    }

    [Fact]
    public void Of_EqualReadingsOfTenths_KeepsTheStepOfEachClock()
    {
        // Half a step to either side at 95 % at each clock, however often it was read; fixed part = 2·t₂ − t₁.
        var split = Split([Equal(100), Equal(200)]);

        Assert.Equal(
            0.1 / Math.Sqrt(12) / 0.95 * Math.Sqrt(5),
            Si.Seconds(split.FixedTime.StandardUncertainty!.Value),
            1e-12
        );

        static SetupSummary Equal(double megahertz) =>
            SetupSummary.Of(
                Bench.Series(
                    Bench.At(Bench.Marl, megahertz),
                    Bench.Tenths,
                    Enumerable.Repeat(4 * 100 / megahertz + 1, 8)
                )
            );
    }

    [Fact]
    public void RunTimeAt_WithinTheRange_HasAnInterval()
    {
        var time = Split([Around(100, 0.5), Around(200, 0.3)]).RunTimeAt(Frequency.FromMegahertz(160));

        Assert.Equal(0.35, Si.Seconds(time.Value), 1e-12);
        Assert.InRange(0.35, Si.Seconds(time.Lower!.Value), Si.Seconds(time.Upper!.Value));

        // At 160 MHz t = 0.25·t₁ + 0.75·t₂.
        Assert.Equal(
            1e-3 / Math.Sqrt(3) * Math.Sqrt(0.0625 + 0.5625),
            Si.Seconds(time.StandardUncertainty!.Value),
            1e-12
        );
    }

    [Fact]
    public void RunTimeAt_BeyondTheRange_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => Split([Around(100, 0.5), Around(200, 0.3)]).RunTimeAt(Frequency.FromMegahertz(240)),
            "clock",
            "Clock must lie within the range that was run, 100 MHz to 200 MHz; was 240 MHz."
        );

    [Fact]
    public void RunTimeAt_BeyondTheRangeWhenAsked_SaysThatItExtrapolates()
    {
        var split = Split([Around(100, 0.5), Around(200, 0.3)]);
        var wide = new ClockRange(Frequency.FromMegahertz(50), Frequency.FromMegahertz(400));
        var time = split.RunTimeAt(Frequency.FromMegahertz(400), wide);

        // At 400 MHz t = 1.5·t₂ − 0.5·t₁.
        Assert.Equal(0.2, Si.Seconds(time.Value), 1e-12);
        Assert.Equal(1e-3 / Math.Sqrt(3) * Math.Sqrt(2.25 + 0.25), Si.Seconds(time.StandardUncertainty!.Value), 1e-12);
        Assert.Equal(
            "400 MHz lies beyond the clocks that were run, 100 MHz to 200 MHz: the interval takes for granted that the line holds there.",
            Assert.Single(time.Notes)
        );
        Assert.Empty(split.RunTimeAt(Frequency.FromMegahertz(150), wide).Notes);
        Refusal.Is<ArgumentOutOfRangeException>(
            () => split.RunTimeAt(Frequency.FromMegahertz(401), wide),
            "clock",
            "Clock must lie within the range that was stated, 50 MHz to 400 MHz; was 401 MHz."
        );
    }

    [Fact]
    public void ClockRange_EndsInTheWrongOrder_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new ClockRange(Frequency.FromMegahertz(2), Frequency.FromMegahertz(1)),
            "highest",
            "Highest clock must not lie below the lowest, 2 MHz; was 1 MHz."
        );

    [Fact]
    public void Joint_TwoClocks_HasTheCovarianceByHand()
    {
        // fixed = 2·t₂ − t₁ and N = (t₁ − t₂)·200 MHz: cov = −(1 + 2)·u²·200 MHz, u = 1 ms/√3.
        var split = Split([Around(100, 0.5), Around(200, 0.3)]);
        var joint = split.Joint!;

        Assert.Equal(-3 * 1e-6 / 3 * 2e8, joint.Covariance, 1e-9);
        Assert.Equal(-3 / Math.Sqrt(10), joint.Correlation, 1e-9);

        // Two sources of two degrees of freedom, each with q = 1: 3/(1/2 + 1/2).
        Assert.Equal(3, joint.DegreesOfFreedom, 1e-9);
        Assert.Equal(0.95, joint.Confidence);
        Assert.True(joint.Contains(Duration.FromSeconds(FixedSeconds), Cycles));

        // Both at the corner of the rectangle of intervals, moved the same way: the data refute it.
        Assert.False(joint.Contains(split.FixedTime.Upper!.Value, split.Cycles.Upper!.Value));
        Assert.Equal(12, joint.Edge(12).Count);
    }

    [Fact]
    public void Joint_SingleTrials_IsAbsentAndBoundsAreThere()
    {
        var split = Split([
            SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Tenths, 0.5)),
            SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 200), Bench.Tenths, 0.3)),
        ]);

        Assert.Null(split.Joint);
        Assert.Equal(-0.05, Si.Seconds(split.Bounds!.FixedTime!.Value.Lower), 1e-12);
        Assert.Equal(0.25, Si.Seconds(split.Bounds!.FixedTime!.Value.Upper), 1e-12);
        Assert.Null(Split([Around(100, 0.5), Around(200, 0.3)]).Bounds);
    }

    [Fact]
    public void ExtraCyclesAlike_TenPercentWaitStatesAnOctaveUp_LookLikeEighteenPercentOfTheRun()
    {
        // No fixed time at all: 0.4 s at 100 MHz, 10 % more cycles at 200 MHz.
        var split = Split([Around(100, 0.4), Around(200, 0.22)]);

        Assert.Equal(0.1, Si.Fraction(split.ExtraCyclesAlike.Value), 1e-12);
        Assert.Equal(0.04 / 0.22, Si.Seconds(split.FixedTime.Value) / 0.22, 1e-9);
        Assert.Equal(0.18, Math.Round(Si.Seconds(split.FixedTime.Value) / 0.22, 2));
        Assert.Contains(
            "Without any fixed part, 10 % more cycles at 200 MHz than at 100 MHz would give the same run times.",
            split.Notes
        );
    }

    [Fact]
    public void Of_RunTimeThatRisesWithTheClock_PointsAtTheTimer() =>
        Assert.Contains(
            "Run time doesn't fall as the clock rises: the timer may take its time from the clock that was changed.",
            Split([Around(100, 0.3), Around(200, 0.4)]).Notes
        );

    [Fact]
    public void Of_OneClock_Refuses() =>
        Refusal.Is<ArgumentException>(
            () => Split([Around(100, 0.5)]),
            "summaries",
            "A split by clock must have two clocks or more; all 1 were 100 MHz."
        );

    [Fact]
    public void Of_TwoBoards_Refuses() =>
        Refusal.Is<ArgumentException>(
            () =>
                Split([
                    Around(100, 0.5),
                    SetupSummary.Of(Bench.Series(Bench.At(Bench.Tuff, 200), Bench.Fine, 0.3, 0.31)),
                ]),
            "summaries",
            "A split by clock must be of setups that differ in name and clock only"
        );

    [Fact]
    public void Of_TimerOfTheChangedClock_Refuses()
    {
        var timer = Bench.Fine with { DerivedFromChangedClock = true };
        Refusal.Is<ArgumentException>(
            () => Split([Around(100, 0.5, timer), Around(200, 0.3, timer)]),
            "summaries",
            "A split by clock must have a timer of its own pace; timer \"fine timer\" takes its time from the clock that is changed."
        );
    }

    private static ClockSplit Split(SetupSummary[] summaries) => ClockSplit.Of(summaries);

    private static SetupSummary Around(
        double megahertz,
        double seconds,
        TrialTimer? timer = null,
        double tolerance = 0
    ) =>
        SetupSummary.Of(
            Bench.Series(
                Bench.At(Bench.Marl, megahertz, tolerance),
                timer ?? Bench.Fine,
                seconds - 1e-3,
                seconds,
                seconds + 1e-3
            )
        );

    private static SetupSummary Relative(double megahertz, double seconds) =>
        SetupSummary.Of(
            Bench.Series(Bench.At(Bench.Marl, megahertz), Bench.Fine, seconds * 0.99, seconds, seconds * 1.01)
        );
}
