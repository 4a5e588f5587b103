using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Simulation;

/// <summary>One simulated study of an invented board at several clocks: its trials, and what is true.</summary>
public sealed record ClockedBoard
{
    private const double LeastFixed = 0.05;
    private const double MostFixed = 0.15;
    private const double FewestCycles = 30e6;
    private const double MostCycles = 50e6;

    /// <summary>A fine timer's step, relative to the spread.</summary>
    private const double FineStep = 1e-6;

    private static readonly Board Marl = new("Marl");
    private static readonly Workload Frames = new("frame checksum", 1000) { ItemName = "frame" };

    private ClockedBoard(double fixedSeconds, double cycles, IReadOnlyList<TrialSeries> series)
    {
        FixedSeconds = fixedSeconds;
        Cycles = cycles;
        Series = series;
    }

    /// <summary>The true time of a run that doesn't follow the clock, in seconds.</summary>
    public double FixedSeconds { get; }

    /// <summary>The true number of cycles of a run.</summary>
    public double Cycles { get; }

    /// <summary>The trials, lowest clock first.</summary>
    public IReadOnlyList<TrialSeries> Series { get; }

    /// <summary>The true run time at a clock, in seconds.</summary>
    public double TrueSeconds(double hertz) => FixedSeconds + Cycles / hertz;

    /// <summary>The split that the library makes of it.</summary>
    public ClockSplit Split() => ClockSplit.Of(Series.Select(series => SetupSummary.Of(series)));

    /// <summary>Draws a study.</summary>
    /// <param name="scenario">What kind.</param>
    /// <param name="random">Where the draws come from; every study of a scenario needs a stream of its own.</param>
    public static ClockedBoard Draw(ClockScenario scenario, RandomStream random)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(random);
        var fixedSeconds = random.Rectangular(LeastFixed, MostFixed);
        var cycles = random.Rectangular(FewestCycles, MostCycles);
        var least = fixedSeconds + cycles / (scenario.Megahertz[^1] * 1e6);
        var step = scenario.Spread * least * Math.Max(scenario.StepOverSpread, FineStep);
        var timer = new TrialTimer("bench timer", Duration.FromSeconds(step), TimerReading.Rounded)
        {
            Place = TimerPlace.Outside,
            Tolerance = Ratio.FromPercent(0),
        };
        return new ClockedBoard(
            fixedSeconds,
            cycles,
            [.. scenario.Megahertz.Select(megahertz => Trials(scenario, megahertz, timer, step, random))]
        );

        TrialSeries Trials(ClockScenario kind, double megahertz, TrialTimer by, double grid, RandomStream from)
        {
            var truth = fixedSeconds + cycles / (megahertz * 1e6);
            var spread = kind.Spread * (kind.IsAbsolute ? least : truth);
            return TrialSeries.Of(
                At(megahertz),
                Frames,
                by,
                Enumerable
                    .Range(0, kind.Trials)
                    .Select(_ => Duration.FromSeconds(Math.Round((truth + spread * from.Normal()) / grid) * grid))
            );
        }
    }

    private static Setup At(double megahertz) =>
        new(
            FormattableString.Invariant($"Marl {megahertz}"),
            Marl,
            Marl.Cores[0],
            new Clock(Frequency.FromMegahertz(megahertz)) { Tolerance = Ratio.FromPercent(0) }
        );
}
