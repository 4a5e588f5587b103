using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Each finding once where there is reason, and not where there is none.</summary>
public class ReviewTests
{
    private static readonly double[] Calm = [2.003, 1.998, 2.001, 1.997, 2.002, 1.999, 2.000];

    private static readonly Setup Marl100 = Bench.At(Bench.Marl, 100);

    private static readonly Setup Tuff200 = Bench.At(Bench.Tuff, 200);

    [Fact]
    public void Of_SoundTrialsOfTwoSpecimens_FindsOnlyWhatWasNotTaken()
    {
        var trials = Series(Marl100, Calm).Trials.Select((t, i) => t with { Specimen = i % 2 == 0 ? "1" : "2" });
        var findings = Bench.Conclude(Study.FromTrials("study", trials)).Review.Findings;

        Assert.Equal(
            [FindingKind.BuildNeverRepeated, FindingKind.EmptyWorkloadNeverTimed, FindingKind.NoSupplyReadings],
            findings.Select(f => f.Kind)
        );
    }

    [Theory]
    [InlineData(1, Severity.Fault)]
    [InlineData(2, Severity.Fault)]
    [InlineData(3, Severity.Caution)]
    [InlineData(4, Severity.Caution)]
    public void Of_FewTrials_SaysHowMany(int count, Severity severity)
    {
        var finding = Only(FindingKind.TooFewTrials, Series(Marl100, [.. Calm.Take(count)]));

        Assert.Equal(severity, finding.Severity);
        Assert.Equal(count, finding.Figures.Single().Value);
        Assert.Equal(count, finding.Trials.Count);
    }

    [Fact]
    public void Of_FiveTrials_AreNotTooFew() => None(FindingKind.TooFewTrials, Series(Marl100, [.. Calm.Take(5)]));

    [Fact]
    public void Of_ThreeTrials_CostsStudentAgainstNormal() =>
        Assert.Contains(
            "2.2 times as wide",
            Only(FindingKind.TooFewTrials, Series(Marl100, [.. Calm.Take(3)])).Evidence,
            StringComparison.Ordinal
        );

    [Fact]
    public void Of_RunOf2SecondsAgainstTenths_SaysHowLongItShouldBe()
    {
        var finding = Only(FindingKind.RunTooShortForTimer, Series(Marl100, [2.1, 2.1, 2.1, 2.1, 2.1], Bench.Tenths));

        Assert.Equal(10, Figure(finding, "run time that resolves 1 %"), 1e-12);
        Assert.Equal(0.1 / 2.1, Figure(finding, "step as a share of the run"), 1e-12);

        // 1000 frames in 2.1 s are 4762 in 10 s.
        Assert.Contains("4762 frames a run", finding.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_EqualReadingsOfACoarseTimer_SaysThatMoreWouldNotHelp()
    {
        var finding = Only(FindingKind.CoarseTimer, Series(Marl100, [2.4, 2.4, 2.4, 2.4, 2.4], Bench.Tenths));

        Assert.Equal(Severity.Caution, finding.Severity);
        Assert.Equal(0.05, Figure(finding, "half-width of the interval"), 1e-12);
        Assert.Equal(0, Figure(finding, "half-width from scatter alone"));
        Assert.StartsWith("More trials would not narrow it", finding.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_FineTimer_IsNotCoarse() => None(FindingKind.CoarseTimer, Series(Marl100, Calm));

    [Fact]
    public void Of_OneFarRunTime_IsShownWithAndWithoutAndKept()
    {
        var series = Series(Marl100, [.. Calm, 2.5]);
        var finding = Only(FindingKind.Outliers, series);

        Assert.Equal(2.5, Assert.Single(finding.Trials).RunTime.Seconds);
        Assert.Equal(series.Trials.Average(t => t.RunTime.Seconds), Figure(finding, "mean with all"), 1e-12);
        Assert.Equal(Calm.Average(), Figure(finding, "mean without"), 1e-12);
        Assert.Contains("trial 8", finding.Evidence, StringComparison.Ordinal);
        Assert.Equal(8, Bench.Conclude(Study.FromTrials("study", series.Trials)).Summaries[0].RunTime.Trials);
    }

    [Fact]
    public void Of_OneStepAside_IsNoOutlier() =>
        None(FindingKind.Outliers, Series(Marl100, [2.4, 2.4, 2.4, 2.4, 2.4, 2.4, 2.5], Bench.Tenths));

    [Fact]
    public void Of_CleanNormalSeries_HaveOutliersInFewerThanFourPercent()
    {
        var random = new Random(5);
        var found = 0;
        const int studies = 1500;
        for (var i = 0; i < studies; i++)
        {
            var series = Series(Marl100, [.. Enumerable.Range(0, 5 + i % 20).Select(_ => 2 + 0.01 * Gaussian(random))]);
            found += SeriesReview
                .Of(series, SetupSummary.Of(series), drift: null, 0.95)
                .Count(f => f.Kind == FindingKind.Outliers);
        }

        Assert.InRange((double)found / studies, 0, 0.04);
    }

    [Fact]
    public void Of_RisingRunTimes_IsDriftWithSlopeAndTest()
    {
        var finding = Only(FindingKind.Drift, Series(Marl100, [2.00, 2.01, 2.02, 2.03, 2.05, 2.04]));

        Assert.Equal(13, Figure(finding, "Mann–Kendall S"));
        Assert.Equal(2 * 6.0 / 720, Figure(finding, "p"), 1e-15);
        Assert.Equal(0.33 / 35, Figure(finding, "slope per trial"), 1e-12);
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.StartsWith("Run times rise", finding.Evidence, StringComparison.Ordinal);
        Assert.True(Figure(finding, "lower end of the slope") > 0);
    }

    [Fact]
    public void Of_UnknownOrder_FindsNoDrift()
    {
        double[] rising = [2.00, 2.01, 2.02, 2.03, 2.05, 2.04];
        var series = new TrialSeries(
            rising.Select(s => new Trial(Marl100, Bench.Frames, Bench.Fine, Duration.FromSeconds(s)))
        );

        None(FindingKind.Drift, series);
    }

    [Fact]
    public void Of_OneAfterTheOther_IsConfoundedWhetherOrNotADriftShows()
    {
        double[] rising = [2.00, 2.01, 2.02, 2.03, 2.04, 2.05];
        var drifting = Find(
            FindingKind.OrderConfounded,
            [.. Ordered(Marl100, rising, 1), .. Ordered(Tuff200, rising, 7)]
        );
        var calm = Find(FindingKind.OrderConfounded, [.. Ordered(Marl100, Calm, 1), .. Ordered(Tuff200, Calm, 8)]);

        Assert.Equal((Severity.Fault, 1.0), (drifting.Severity, Figure(drifting, "pairs with a drift")));
        Assert.Equal((Severity.Fault, 0.0), (calm.Severity, Figure(calm, "pairs with a drift")));
        Assert.EndsWith("Run times did drift in Marl 100 and Tuff 200.", drifting.Evidence, StringComparison.Ordinal);
        Assert.StartsWith(
            "In 1 of 1 pair of setups all trials of one came before those of the other",
            calm.Evidence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_SeparateSessions_AreConfoundedWithWhatChangesBetweenThem()
    {
        var finding = Find(
            FindingKind.SessionsConfounded,
            [
                .. Ordered(Marl100, Calm, 1).Select(t => t with { Session = "Monday" }),
                .. Ordered(Tuff200, Calm, 8).Select(t => t with { Session = "Tuesday" }),
            ]
        );

        Assert.Equal((Severity.Fault, 1.0), (finding.Severity, Figure(finding, "pairs in sessions of their own")));
    }

    [Fact]
    public void Of_WrongChecksum_NamesTheTrials()
    {
        var workload = Bench.Frames with { OutputChecksum = "ab" };
        var trials = Calm.Select(
                (s, i) =>
                    new Trial(Marl100, workload, Bench.Fine, Duration.FromSeconds(s))
                    {
                        Order = i + 1,
                        OutputChecksum = i == 3 ? "cd" : "AB",
                    }
            )
            .ToArray();
        var finding = Find(FindingKind.ChecksumMismatch, trials);

        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal([trials[3]], finding.Trials);
        Assert.Contains("trial 4", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneSpecimenOrNone_SaysWhatConclusionsHoldFor()
    {
        var unnamed = Find(FindingKind.OneSpecimen, Series(Marl100, Calm).Trials);
        var one = Find(
            FindingKind.OneSpecimen,
            [.. Series(Marl100, Calm).Trials.Select(t => t with { Specimen = "7" })]
        );

        Assert.StartsWith("Which specimens of Marl ran isn't noted", unnamed.Evidence, StringComparison.Ordinal);
        Assert.StartsWith("One specimen of Marl ran (\"7\")", one.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TimerOfTheChangedClock_IsAFaultAndNoSplitIsMade()
    {
        var timer = Bench.Fine with { DerivedFromChangedClock = true };
        Trial[] trials =
        [
            .. Series(Marl100, Calm, timer).Trials,
            .. Series(Bench.At(Bench.Marl, 200), [.. Calm.Select(s => s / 2)], timer).Trials,
        ];
        var conclusions = Bench.Conclude(Study.FromTrials("study", trials));

        Assert.Empty(conclusions.Splits);
        var finding = conclusions.Review.Findings.Single(f => f.Kind == FindingKind.TimerFollowsClock);
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Contains("100 MHz and 200 MHz", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_UnknownTolerances_AreFoundOncePerTimerAndBoard()
    {
        var timer = new TrialTimer("ticks", Duration.FromMicroseconds(1), TimerReading.Rounded);
        Trial[] trials =
        [
            .. Series(Bench.At(Bench.Marl, 100, null), Calm, timer).Trials,
            .. Series(Bench.At(Bench.Marl, 200, null), Calm, timer).Trials,
        ];
        var ofTimer = Find(FindingKind.TimerToleranceUnknown, trials);
        var ofClock = Find(FindingKind.ClockToleranceUnknown, trials);

        Assert.Equal(Severity.Caution, ofTimer.Severity);
        Assert.Contains("Marl 100 and Marl 200", ofClock.Evidence, StringComparison.Ordinal);
        Assert.Equal(
            Severity.Note,
            Find(
                FindingKind.TimerToleranceUnknown,
                Series(Marl100, Calm, timer with { Place = TimerPlace.Outside }).Trials
            ).Severity
        );
    }

    [Fact]
    public void Of_BoardFedElsewhereToo_IsAFaultOfItsReadings()
    {
        var setup = Marl100 with
        {
            Supply = new BoardSupply(ElectricPotential.FromVolts(5)) { FedElsewhereToo = true },
        };

        Assert.Equal(
            Severity.Fault,
            Find(
                FindingKind.FedElsewhere,
                Series(setup, Calm).Trials,
                Bench.Running(setup, Accurate, null, 0.02)
            ).Severity
        );
    }

    [Fact]
    public void Of_SmallCurrentInALargeRange_SaysWhatTheOffsetWeighs()
    {
        var meter = new Meter(
            "bench meter",
            new MeterRange(ElectricCurrent.FromMilliamperes(10), ElectricCurrent.FromMicroamperes(1)),
            new MeterRange(ElectricCurrent.FromMilliamperes(100), ElectricCurrent.FromMicroamperes(10))
            {
                OfRange = Ratio.FromPercent(0.1),
            }
        );
        var reading = Bench
            .Running(Marl100, meter, null, 0.005)
            .Select(r => r with { Range = ElectricCurrent.FromMilliamperes(100) });
        var finding = Find(FindingKind.MeterRangeLow, Series(Marl100, Calm).Trials, reading);

        Assert.Equal(1e-4, Figure(finding, "offset part of the accuracy"), 1e-15);
        Assert.Contains("2 % of the smallest", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SmallCurrentInTheSmallestRange_HasNoBetterRange() =>
        Assert.DoesNotContain(
            Findings(Series(Marl100, Calm).Trials, Bench.Running(Marl100, Accurate, null, 0.001)),
            f => f.Kind == FindingKind.MeterRangeLow
        );

    [Fact]
    public void Of_TwoMeters_SaysThatTheGainDoesNotCancel()
    {
        var finding = Find(
            FindingKind.MeterRangesDiffer,
            [.. Series(Marl100, Calm).Trials, .. Series(Tuff200, Calm).Trials],
            Bench
                .Running(Marl100, Accurate, null, 0.02)
                .Concat(Bench.Running(Tuff200, Bench.Meter(ofReading: 0.01, name: "other meter"), null, 0.03))
        );

        Assert.Equal(2, Figure(finding, "ranges"));
        Assert.Contains("\"other meter\", 100 mA range for Tuff 200", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AccuracyNotStated_IsFound() =>
        Assert.Equal(
            Severity.Caution,
            Find(
                FindingKind.MeterAccuracyUnknown,
                Series(Marl100, Calm).Trials,
                Bench.Running(Marl100, Bench.Meter(), null, 0.02, 0.021)
            ).Severity
        );

    [Fact]
    public void Of_TwoMeasuringPoints_IsAFault() =>
        Assert.Equal(
            "Tuff 200",
            Find(
                FindingKind.MeasuringPointsDiffer,
                [.. Series(Marl100, Calm).Trials, .. Series(Tuff200, Calm).Trials],
                Bench
                    .Running(Marl100, Accurate, null, 0.02)
                    .Concat(
                        Bench
                            .Running(Tuff200, Accurate, null, 0.03)
                            .Select(r => r with { Point = MeasuringPoint.AfterRegulator })
                    )
            ).Subject
        );

    [Fact]
    public void Of_CurrentReadForSome_NamesTheOthers() =>
        Assert.Contains(
            "Tuff 200 on frame checksum",
            Find(
                FindingKind.NoSupplyReadings,
                [.. Series(Marl100, Calm).Trials, .. Series(Tuff200, Calm).Trials],
                Bench.Running(Marl100, Accurate, null, 0.02)
            ).Evidence,
            StringComparison.Ordinal
        );

    [Fact]
    public void Of_RunTimesOffTheLine_AreFound()
    {
        Trial[] trials =
        [
            .. Series(Bench.At(Bench.Marl, 100), Calm).Trials,
            .. Series(Bench.At(Bench.Marl, 200), [.. Calm.Select(s => s * 0.5)]).Trials,
            .. Series(Bench.At(Bench.Marl, 400), [.. Calm.Select(s => s * 0.4)]).Trials,
        ];

        Assert.Equal(Severity.Caution, Find(FindingKind.ClockLineRefuted, trials).Severity);
    }

    [Fact]
    public void Of_NegativeFixedTime_IsFound()
    {
        Trial[] trials =
        [
            .. Series(Bench.At(Bench.Marl, 100), Calm).Trials,
            .. Series(Bench.At(Bench.Marl, 200), [.. Calm.Select(s => s * 0.4)]).Trials,
        ];

        Assert.Equal(2 * 0.8 - 2, Figure(Find(FindingKind.NegativeFixedTime, trials), "fixed time"), 1e-9);
    }

    [Fact]
    public void Of_Findings_ComeGravestFirst()
    {
        var severities = Findings(Series(Marl100, [2.0]).Trials).Select(f => f.Severity).ToList();

        Assert.Equal(severities.OrderDescending(), severities);
        Assert.Equal(Severity.Fault, severities[0]);
    }

    private static Meter Accurate => Bench.Meter(ofReading: 0.01);

    private static TrialSeries Series(Setup setup, double[] seconds, TrialTimer? timer = null) =>
        Bench.Series(setup, timer ?? Bench.Fine, seconds);

    private static IEnumerable<Trial> Ordered(Setup setup, double[] seconds, int from) =>
        Series(setup, seconds).Trials.Select((t, i) => t with { Order = from + i });

    private static IReadOnlyList<Finding> Findings(
        IEnumerable<Trial> trials,
        IEnumerable<SupplyReading>? readings = null
    ) => Bench.Conclude(Study.FromTrials("study", trials, readings)).Review.Findings;

    private static Finding Find(
        FindingKind kind,
        IEnumerable<Trial> trials,
        IEnumerable<SupplyReading>? readings = null
    ) => Findings(trials, readings).Single(f => f.Kind == kind);

    private static Finding Only(FindingKind kind, TrialSeries series) => Find(kind, series.Trials);

    private static void None(FindingKind kind, TrialSeries series) =>
        Assert.DoesNotContain(Findings(series.Trials), f => f.Kind == kind);

    private static double Figure(Finding finding, string name) => finding.Figures.Single(f => f.Name == name).Value;

    private static double Gaussian(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
