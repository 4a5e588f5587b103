using FsCheck.Xunit;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using McuBench.Stats;
using McuBench.Stats.Distributions;
using McuBench.Stats.Intervals;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class SetupComparisonTests
{
    private static readonly double[] Around2 = [2.00, 2.01, 1.99, 2.02, 1.98];

    private static readonly double[] Around2Point5 = [2.50, 2.51, 2.49, 2.52, 2.48, 2.50];

    private static readonly Setup Marl100 = Bench.At(Bench.Marl, 100);

    private static readonly Setup Tuff200 = Bench.At(Bench.Tuff, 200);

    [Fact]
    public void Of_TwentyPercentLessTime_IsTwentyFivePercentFaster()
    {
        var comparison = Compare(Around2, Around2Point5);

        Assert.Equal(0.8, comparison.RunTime.Ratio.Value, 1e-14);
        Assert.Equal(1.25, comparison.SpeedRatio.Value, 1e-14);
        Assert.Equal(0.2, Si.Fraction(comparison.TimeSaved.Value), 1e-14);
        Assert.Equal(1 - comparison.RunTime.Ratio.Upper!.Value, Si.Fraction(comparison.TimeSaved.Lower!.Value), 1e-14);
        Assert.Equal(1 / comparison.RunTime.Ratio.Upper.Value, comparison.SpeedRatio.Lower!.Value, 1e-14);
        Assert.Equal((Verdict.Different, Side.First), (comparison.RunTime.Verdict, comparison.RunTime.Less));
        Assert.Equal(11, comparison.RunTime.Ratio.Trials);
    }

    [Fact]
    public void Of_CyclesPerItem_CountTheClock()
    {
        // 2 s at 100 MHz against 2.5 s at 200 MHz.
        var comparison = Compare(Around2, Around2Point5);

        Assert.Equal(0.4, comparison.CyclesPerItem.Ratio.Value, 1e-14);
        Assert.Null(comparison.ChargePerTask);
    }

    [Fact]
    public void Of_FineTimer_IsWelchsIntervalOnLogarithmsToFirstOrder()
    {
        // The relative scatter is 0.8 %: the logarithms' curvature and the difference between arithmetic and geometric
        // mean are of its square.
        var ratio = Compare(Around2, Around2Point5).RunTime.Ratio;
        var welch = RatioInterval.WelchOnLogs(Sample.Of(Around2), Sample.Of(Around2Point5));

        Assert.Equal(welch.Interval!.Lower, ratio.Lower!.Value, 1e-4);
        Assert.Equal(welch.Interval.Upper, ratio.Upper!.Value, 1e-4);
        Assert.Equal(welch.DegreesOfFreedom!.Value, ratio.DegreesOfFreedom!.Value, 0.02);
    }

    [Fact]
    public void Of_EqualReadingsOfTenthsApart_HoldsTheTruthThatATextbookLoses()
    {
        // Truths 2.44 and 2.41 both read 2.4.
        var comparison = Compare(Enumerable.Repeat(2.4, 10), Enumerable.Repeat(2.4, 10), timer: Bench.Tenths);

        Assert.Equal(Verdict.NotResolved, comparison.RunTime.Verdict);
        Assert.InRange(2.44 / 2.41, comparison.RunTime.Ratio.Lower!.Value, comparison.RunTime.Ratio.Upper!.Value);

        // ±0.05/0.95 s uniform and as much again as a normal distribution: exceeded in 2.5 % and in 20 %, by SciPy's
        // quadrature.
        Assert.Equal(
            Math.Exp((0.08239840889377346 + 0.037638553615186754) / 2.4) - 1,
            Si.Fraction(comparison.RunTime.SmallestDetectableDifference!.Value),
            1e-12
        );
    }

    [Fact]
    public void Of_OutsideTimersTolerance_Cancels()
    {
        var timer = Bench.Fine with { Tolerance = Ratio.FromPercent(2) };
        var shared = Compare(Around2, Around2Point5, timer: timer);
        var exact = Compare(Around2, Around2Point5);

        Assert.Equal(
            exact.RunTime.Ratio.StandardUncertainty!.Value,
            shared.RunTime.Ratio.StandardUncertainty!.Value,
            1e-15
        );
        Assert.DoesNotContain(
            shared.RunTime.Ratio.Budget,
            b => b.Component.StartsWith("tolerance", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_OnBoardTimersTolerances_DoNotCancelBetweenBoards()
    {
        var timer = Bench.Fine with { Tolerance = Ratio.FromPercent(2), Place = TimerPlace.OnBoard };
        var comparison = Compare(Around2, Around2Point5, timer: timer);

        var lines = comparison
            .RunTime.Ratio.Budget.Where(b => b.Component.StartsWith("tolerance", StringComparison.Ordinal))
            .ToList();
        Assert.Equal(2, lines.Count);
        Assert.All(lines, line => Assert.Equal(0.02 / Math.Sqrt(3), line.RelativeStandardUncertainty, 1e-15));
    }

    [Fact]
    public void Of_OnBoardTimerOfOneBoardAtTwoClocks_Cancels()
    {
        var timer = Bench.Fine with { Tolerance = Ratio.FromPercent(2), Place = TimerPlace.OnBoard };
        var comparison = SetupComparison.Of(
            SetupSummary.Of(Bench.Series(Marl100, timer, Around2)),
            SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 200), timer, Around2Point5))
        );

        Assert.DoesNotContain(
            comparison.RunTime.Ratio.Budget,
            b => b.Component.StartsWith("tolerance", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_OneMeterInOneRange_GainCancelsAndOffsetDoesNot()
    {
        var meter = Bench.Meter(ofReading: 0.01, ofRange: 0.001);
        var ratio = Charges(meter, meter).Ratio;

        Assert.Equal(0.2 * 0.8, ratio.Value, 1e-12);
        Assert.DoesNotContain(ratio.Budget, b => b.Component.StartsWith("gain", StringComparison.Ordinal));
        Assert.Equal(2, ratio.Budget.Count(b => b.Component.StartsWith("offset", StringComparison.Ordinal)));
    }

    [Fact]
    public void Of_TwoRanges_GainDoesNotCancel()
    {
        var first = Bench.Meter(ofReading: 0.01, ofRange: 0.001);
        var second = Bench.Meter(ofReading: 0.01, ofRange: 0.001, fullScale: 0.2, name: "other range");

        Assert.Equal(
            2,
            Charges(first, second).Ratio.Budget.Count(b => b.Component.StartsWith("gain", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Of_Margin_TellsEqualFromNotResolved()
    {
        double[] first = [2.000, 2.001, 1.999, 2.0005, 1.9995];
        double[] second = [2.0002, 2.0012, 1.9992, 2.0007, 1.9997];

        Assert.Equal(Verdict.NotResolved, Compare(first, second).RunTime.Verdict);
        Assert.Equal(Verdict.EqualWithinMargin, Compare(first, second, margin: 0.01).RunTime.Verdict);
        Assert.Equal(Verdict.NotResolved, Compare(first, second, margin: 0.0003).RunTime.Verdict);
        Assert.Null(Compare(first, second, margin: 0.01).RunTime.Less);
    }

    [Fact]
    public void Of_DifferenceBelowTheMargin_IsBothDifferentAndWithin()
    {
        var comparison = Compare(Around2, [.. Around2.Select(t => t * 1.02)], margin: 0.10);

        Assert.Equal(Verdict.DifferentWithinMargin, comparison.RunTime.Verdict);
        Assert.Equal(Side.First, comparison.RunTime.Less);
    }

    [Fact]
    public void Of_EqualityAtTheMargin_IsTwoOneSidedTests()
    {
        // Equal exactly when |ln ratio| + t(0.95)·u < ln(1 + margin): a margin just below and just above.
        double[] first = [2.00, 2.01, 1.99, 2.02, 1.98];
        double[] second = [2.004, 2.014, 1.994, 2.024, 1.984];
        var ratio = Compare(first, second).RunTime.Ratio;
        var u = ratio.StandardUncertainty!.Value / ratio.Value;
        var edge =
            Math.Exp(
                Math.Abs(Math.Log(ratio.Value)) + StudentT.Of(ratio.DegreesOfFreedom!.Value).UpperQuantile(0.05) * u
            ) - 1;

        Assert.Equal(Verdict.EqualWithinMargin, Compare(first, second, margin: edge * 1.0001).RunTime.Verdict);
        Assert.Equal(Verdict.NotResolved, Compare(first, second, margin: edge * 0.9999).RunTime.Verdict);
    }

    [Fact]
    public void Of_OneTrial_HasNoVerdict()
    {
        var comparison = Compare([2.0], Around2Point5, margin: 0.1);

        Assert.Equal(
            (Verdict.NoVerdict, NoVerdictReason.NoInterval),
            (comparison.RunTime.Verdict, comparison.RunTime.Reason)
        );
        Assert.Null(comparison.RunTime.SmallestDetectableDifference);
        Assert.False(comparison.SpeedRatio.HasInterval);
        Assert.False(comparison.TimeSaved.HasInterval);
        Assert.Equal(0.8, comparison.RunTime.Ratio.Value, 1e-14);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0)]
    public void Of_OneAfterTheOther_HasNoVerdictWhetherOrNotADriftShows(double rise)
    {
        double[] seconds = [.. Enumerable.Range(0, 6).Select(i => 2 + i * rise + (i % 2) * 0.002)];
        var comparison = SetupComparison.Of(
            SetupSummary.Of(Ordered(Marl100, seconds, from: 1)),
            SetupSummary.Of(Ordered(Tuff200, [.. seconds.Select(t => t + 0.06)], from: 7))
        );

        Assert.Equal(
            (Verdict.NoVerdict, NoVerdictReason.OrderConfounded),
            (comparison.RunTime.Verdict, comparison.RunTime.Reason)
        );
        Assert.Equal(Verdict.NoVerdict, comparison.CyclesPerItem.Verdict);
        Assert.Contains(
            "All trials of one setup came before all of the other: a drift of the bench would look like a difference, so there is no verdict."
                + (rise > 0 ? " Run times did drift." : ""),
            comparison.Notes
        );
    }

    [Fact]
    public void Of_OneMostlyBeforeTheOther_HasNoVerdict()
    {
        // Ten and ten; only the last of the first and the first of the second changed places.
        int[] first = [1, 2, 3, 4, 5, 6, 7, 8, 9, 11];
        int[] second = [10, 12, 13, 14, 15, 16, 17, 18, 19, 20];
        var comparison = SetupComparison.Of(
            SetupSummary.Of(Placed(Marl100, first)),
            SetupSummary.Of(Placed(Tuff200, second))
        );

        Assert.Equal(NoVerdictReason.OrderConfounded, comparison.RunTime.Reason);
        Assert.Contains(
            comparison.Notes,
            n => n.StartsWith("Trials of one setup mostly came before", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_BlocksInTurns_HaveAVerdict()
    {
        // Five of one, five of the other, and again.
        var comparison = SetupComparison.Of(
            SetupSummary.Of(Placed(Marl100, 1, 2, 3, 4, 5, 11, 12, 13, 14, 15)),
            SetupSummary.Of(Placed(Tuff200, 6, 7, 8, 9, 10, 16, 17, 18, 19, 20))
        );

        Assert.Null(comparison.RunTime.Reason);
    }

    [Fact]
    public void Of_OrderTurnedRoundInTheSecondSession_HasAVerdict()
    {
        TrialSeries Series(Setup setup, int monday, int tuesday) =>
            new([
                .. Ordered(setup, Around2, from: monday).Trials.Select(t => t with { Session = "Monday" }),
                .. Ordered(setup, Around2, from: tuesday).Trials.Select(t => t with { Session = "Tuesday" }),
            ]);
        var turned = SetupComparison.Of(
            SetupSummary.Of(Series(Marl100, 1, 16)),
            SetupSummary.Of(Series(Tuff200, 6, 11))
        );
        var same = SetupComparison.Of(SetupSummary.Of(Series(Marl100, 1, 11)), SetupSummary.Of(Series(Tuff200, 6, 16)));

        Assert.Null(turned.RunTime.Reason);
        Assert.Equal(NoVerdictReason.OrderConfounded, same.RunTime.Reason);
    }

    [Fact]
    public void Of_SessionsOfTheirOwn_HaveNoVerdict()
    {
        TrialSeries In(string session, Setup setup) =>
            new(Ordered(setup, Around2, from: 1).Trials.Select(t => t with { Session = session, Order = null }));
        var comparison = SetupComparison.Of(
            SetupSummary.Of(In("Monday", Marl100)),
            SetupSummary.Of(In("Tuesday", Tuff200))
        );

        Assert.Equal(
            (Verdict.NoVerdict, NoVerdictReason.SessionsConfounded),
            (comparison.RunTime.Verdict, comparison.RunTime.Reason)
        );
    }

    [Fact]
    public void Of_TrialsCountedForEachSetupApart_IsNotTakenForAnOrder()
    {
        // Bare run times are numbered from 1 on both sides, however many there are.
        var comparison = Compare(Around2, Enumerable.Range(0, 40).Select(i => 2.5 + i % 3 * 0.01));

        Assert.Equal(Verdict.Different, comparison.RunTime.Verdict);
    }

    [Fact]
    public void Of_DriftWithTrialsInTurns_HasAVerdict()
    {
        double[] rising = [2.00, 2.01, 2.02, 2.03, 2.04, 2.05];
        var comparison = SetupComparison.Of(
            SetupSummary.Of(Ordered(Marl100, rising, from: 1, by: 2)),
            SetupSummary.Of(Ordered(Tuff200, [.. rising.Select(t => t + 1)], from: 2, by: 2))
        );

        Assert.Equal(Verdict.Different, comparison.RunTime.Verdict);
    }

    [Fact]
    public void Of_TimerOfTheChangedClock_HasNoVerdict()
    {
        var timer = Bench.Fine with { DerivedFromChangedClock = true };

        Assert.Equal(NoVerdictReason.TimerFollowsClock, Compare(Around2, Around2Point5, timer: timer).RunTime.Reason);
    }

    [Fact]
    public void Of_DifferentWorkloads_Refuses()
    {
        var other = new Workload("median filter", 10);
        Refusal.Is<ArgumentException>(
            () =>
                SetupComparison.Of(
                    SetupSummary.Of(Bench.Series(Marl100, Bench.Fine, Around2)),
                    SetupSummary.Of(
                        TrialSeries.Of(Tuff200, other, Bench.Fine, Around2.Select(s => Duration.FromSeconds(s)))
                    )
                ),
            "second",
            "Two setups must be compared on one workload; were \"frame checksum\" and \"median filter\"."
        );
    }

    [Property]
    public void Of_ExchangedSides_GivesReciprocalsAndTheSameVerdict(byte[] first, byte[] second, byte margin)
    {
        double[] a = [2.1, .. first.Select(b => 2 + b / 100.0)];
        double[] b = [2.3, .. second.Select(v => 2 + v / 100.0)];
        var options = new ConclusionOptions { Margin = Ratio.FromDecimalFractions((margin + 1) / 300.0) };
        var one = SetupSummary.Of(Bench.Series(Marl100, Bench.Tenths, a));
        var two = SetupSummary.Of(Bench.Series(Tuff200, Bench.Tenths, b));
        var forth = SetupComparison.Of(one, two, options);
        var back = SetupComparison.Of(two, one, options);

        foreach (var (x, y) in new[] { (forth.RunTime, back.RunTime), (forth.CyclesPerItem, back.CyclesPerItem) })
        {
            Assert.Equal(1, x.Ratio.Value * y.Ratio.Value, 1e-12);
            Assert.Equal(x.Verdict, y.Verdict);
            Assert.Equal(
                x.Less,
                y.Less is null ? null
                    : y.Less == Side.First ? Side.Second
                    : Side.First
            );
            Assert.Equal(x.Ratio.HasInterval, y.Ratio.HasInterval);
            if (x.Ratio.HasInterval)
            {
                Assert.Equal(1, x.Ratio.Lower!.Value * y.Ratio.Upper!.Value, 1e-9);
                Assert.Equal(1, x.Ratio.Upper!.Value * y.Ratio.Lower!.Value, 1e-9);
            }
        }
    }

    [Property]
    public void Of_TimesInAnotherScale_GiveTheSameRatio(byte[] first, byte exponent)
    {
        var scale = Math.Pow(10, -(exponent % 6));
        double[] a = [2.1, 2.2, .. first.Select(b => 2 + b / 100.0)];
        var timer = Bench.Tenths with { Resolution = Duration.FromSeconds(0.1 * scale) };
        var plain = Compare(a, Around2Point5, timer: Bench.Tenths).RunTime.Ratio;
        var scaled = Compare(
            a.Select(s => s * scale),
            Around2Point5.Select(s => s * scale),
            timer: timer
        ).RunTime.Ratio;

        Assert.Equal(plain.Value, scaled.Value, 1e-12);
        Assert.Equal(plain.Lower!.Value, scaled.Lower!.Value, 1e-9);
    }

    private static SetupComparison Compare(
        IEnumerable<double> first,
        IEnumerable<double> second,
        double? margin = null,
        TrialTimer? timer = null
    ) =>
        SetupComparison.Of(
            SetupSummary.Of(Bench.Series(Marl100, timer ?? Bench.Fine, first)),
            SetupSummary.Of(Bench.Series(Tuff200, timer ?? Bench.Fine, second)),
            new ConclusionOptions { Margin = margin is { } m ? Ratio.FromDecimalFractions(m) : null }
        );

    private static TrialSeries Placed(Setup setup, params int[] places) =>
        new(
            places.Select(
                (place, i) =>
                    new Trial(setup, Bench.Frames, Bench.Fine, Duration.FromSeconds(2 + i % 3 * 0.001))
                    {
                        Order = place,
                    }
            )
        );

    private static TrialSeries Ordered(Setup setup, double[] seconds, int from, int by = 1) =>
        new(
            seconds.Select(
                (s, i) => new Trial(setup, Bench.Frames, Bench.Fine, Duration.FromSeconds(s)) { Order = from + i * by }
            )
        );

    private static QuantityComparison Charges(Meter first, Meter second) =>
        SetupComparison
            .Of(
                SetupSummary.Of(
                    Bench.Series(Marl100, Bench.Fine, Around2),
                    Bench.Running(Marl100, first, null, 0.0100, 0.0101, 0.0099)
                ),
                SetupSummary.Of(
                    Bench.Series(Tuff200, Bench.Fine, Around2Point5),
                    Bench.Running(Tuff200, second, null, 0.0500, 0.0501, 0.0499)
                )
            )
            .ChargePerTask!;
}
