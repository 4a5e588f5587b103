using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class DesignReviewTests
{
    private static readonly double[] Calm = [2.003, 1.998, 2.001, 1.997, 2.002, 1.999, 2.000, 2.001];

    private static readonly double[] Short = [0.001, 0.0011, 0.0009];

    private static readonly Setup Marl100 = Bench.At(Bench.Marl, 100);

    private static readonly Setup Tuff100 = Bench.At(Bench.Tuff, 100);

    [Fact]
    public void Unbalanced_EightAgainstFour_IsFound()
    {
        var finding = Only(FindingKind.Unbalanced, [.. Trials(Marl100, Calm), .. Trials(Tuff100, Calm[..4])]);

        Assert.Equal(4, Figure(finding, "fewest trials"));
        Assert.Equal(8, Figure(finding, "most trials"));
        Assert.StartsWith(
            "Setups were run unequally often: Tuff 100 4 times, Marl 100 8 times.",
            finding.Evidence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Unbalanced_EightAgainstSeven_IsNot() =>
        None(FindingKind.Unbalanced, [.. Trials(Marl100, Calm), .. Trials(Tuff100, Calm[..7])]);

    [Fact]
    public void BuildNeverRepeated_OneOrNoBuild_IsFound()
    {
        Assert.Contains(
            "isn't noted",
            Only(FindingKind.BuildNeverRepeated, Trials(Marl100, Calm)).Evidence,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "built or flashed once",
            Only(
                FindingKind.BuildNeverRepeated,
                [.. Trials(Marl100, Calm).Select(t => t with { Build = "b1" })]
            ).Evidence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void BuildNeverRepeated_TwoBuilds_IsNot() =>
        None(
            FindingKind.BuildNeverRepeated,
            [.. Trials(Marl100, Calm).Select((t, i) => t with { Build = i % 2 == 0 ? "b1" : "b2" })]
        );

    [Fact]
    public void EmptyWorkload_NeverTimed_IsFound() =>
        Assert.StartsWith(
            "No setup was timed with an empty workload",
            Only(FindingKind.EmptyWorkloadNeverTimed, Trials(Marl100, Calm)).Evidence,
            StringComparison.Ordinal
        );

    [Fact]
    public void EmptyWorkload_TimedOnOneOfTwo_NamesTheOther()
    {
        Trial[] trials = [.. Trials(Marl100, Calm), .. Trials(Tuff100, Calm), .. Empty(Marl100)];

        Assert.Equal("Tuff 100", Only(FindingKind.EmptyWorkloadNeverTimed, trials).Subject);
        None(FindingKind.EmptyWorkloadNeverTimed, [.. trials, .. Empty(Tuff100)]);
    }

    [Fact]
    public void ClockMismatch_HalfTheClock_IsAFault()
    {
        // 100 million cycles in 2 s are 50 MHz.
        var finding = Only(
            FindingKind.ClockMismatch,
            [.. Trials(Marl100, 2.0, 2.0, 2.0).Select(t => t with { CycleCount = 100_000_000 })]
        );

        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal(50e6, Figure(finding, "clock counted"), 1);
        Assert.Contains("at 50 MHz, 50 % below the clock of 100 MHz", finding.Evidence, StringComparison.Ordinal);
        Assert.Equal(3, finding.Trials.Count);
    }

    [Fact]
    public void ClockMismatch_WithinAStepOfTheTimer_IsNot() =>
        None(
            FindingKind.ClockMismatch,
            [
                .. Bench
                    .Series(Marl100, Bench.Tenths, 2.0, 2.0, 2.0)
                    .Trials.Select(t => t with { CycleCount = 204_000_000 }),
            ]
        );

    [Fact]
    public void ClockMismatch_NothingCounted_IsNot() => None(FindingKind.ClockMismatch, Trials(Marl100, Calm));

    [Fact]
    public void SlippedPrefix_RunTimeInMicroseconds_IsAFault()
    {
        var finding = Only(FindingKind.SlippedPrefix, Trials(Marl100, [.. Calm, 0.002]));

        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal(0.002, Assert.Single(finding.Trials).RunTime.Seconds, 1e-12);
    }

    [Fact]
    public void SlippedPrefix_TenTimesOff_IsNot() => None(FindingKind.SlippedPrefix, Trials(Marl100, [.. Calm, 20]));

    [Theory]
    [InlineData(3.1e-5, true)]
    [InlineData(0.0031, false)]
    [InlineData(0.031, false)]
    public void SlippedPrefix_Current_IsAFaultAtAThousand(double amperes, bool isFound)
    {
        var meter = Bench.Meter(resolution: 1e-7);
        SupplyReading[] readings =
        [
            .. Bench.Running(Marl100, meter, null, 0.030, 0.031, 0.0305),
            .. Bench.Running(Tuff100, meter, null, amperes),
        ];
        var findings = Bench
            .Conclude(Study.FromTrials("study", [.. Trials(Marl100, Calm), .. Trials(Tuff100, Calm)], readings))
            .Review.Findings.Where(f => f.Kind == FindingKind.SlippedPrefix)
            .ToArray();

        Assert.Equal(isFound ? ["Tuff 100"] : [], findings.Select(f => f.Subject));
    }

    private static IEnumerable<Trial> Empty(Setup setup) =>
        TrialSeries
            .Of(
                setup,
                new Workload("nothing", 1) { IsEmpty = true },
                Bench.Fine,
                Short.Select(s => Duration.FromSeconds(s))
            )
            .Trials;

    private static Trial[] Trials(Setup setup, params double[] seconds) =>
        [.. Bench.Series(setup, Bench.Fine, seconds).Trials.Select(t => t with { Order = null })];

    private static Finding Only(FindingKind kind, Trial[] trials) =>
        Assert.Single(Bench.Conclude(Study.FromTrials("study", trials)).Review.Findings, f => f.Kind == kind);

    private static void None(FindingKind kind, Trial[] trials) =>
        Assert.DoesNotContain(Bench.Conclude(Study.FromTrials("study", trials)).Review.Findings, f => f.Kind == kind);

    private static double Figure(Finding finding, string name) => finding.Figures.Single(f => f.Name == name).Value;
}
