using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Simulation;

/// <summary>One simulated study of an invented board whose run time and current were taken at several clocks.</summary>
public sealed record MeteredBoard
{
    private const double RunTimeSpread = 0.002;
    private const double FullScale = 0.1;

    private static readonly Board Marl = new("Marl");
    private static readonly Workload Frames = new("frame checksum", 1000) { ItemName = "frame" };

    private static readonly TrialTimer Fine = new("bench timer", Duration.FromNanoseconds(1), TimerReading.Rounded)
    {
        Place = TimerPlace.Outside,
        Tolerance = Ratio.FromPercent(0),
    };

    private readonly Func<double, double> charge;

    private MeteredBoard(double bestHertz, Func<double, double> charge, ClockSplit split)
    {
        BestHertz = bestHertz;
        Split = split;
        this.charge = charge;
    }

    /// <summary>The true charge per task at a clock, in coulombs, as a meter without error would give it.</summary>
    public double TrueCoulombs(double hertz) => charge(hertz);

    /// <summary>The clock at which a task truly takes the least charge, in hertz.</summary>
    public double BestHertz { get; }

    /// <summary>The split that the library makes of the study.</summary>
    public ClockSplit Split { get; }

    /// <summary>Draws a study.</summary>
    /// <param name="scenario">What kind.</param>
    /// <param name="random">Where the draws come from; every study of a scenario needs a stream of its own.</param>
    public static MeteredBoard Draw(BestClockScenario scenario, RandomStream random)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(random);
        var fixedSeconds = random.Rectangular(0.08, 0.15);
        var cycles = random.Rectangular(30e6, 50e6);
        var computing = (Base: random.Rectangular(5e-3, 9e-3), Slope: random.Rectangular(9e-11, 13e-11));
        var waiting = scenario.HasPhases
            ? (Base: random.Rectangular(4e-3, 9e-3), Slope: random.Rectangular(2e-11, 6e-11))
            : computing;
        var gain = 1 + scenario.Accuracy * random.Rectangular(-1, 1);
        var meter = new Meter(
            "bench meter",
            new MeterRange(ElectricCurrent.FromAmperes(FullScale), ElectricCurrent.FromAmperes(1e-7))
            {
                OfReading = Ratio.FromDecimalFractions(scenario.Accuracy),
                OfRange = Ratio.FromDecimalFractions(scenario.Accuracy / 100),
            }
        );
        var summaries = scenario.Megahertz.Select(megahertz =>
        {
            var hertz = megahertz * 1e6;
            var setup = new Setup(
                FormattableString.Invariant($"Marl {megahertz}"),
                Marl,
                Marl.Cores[0],
                new Clock(Frequency.FromHertz(hertz)) { Tolerance = Ratio.FromPercent(0) }
            );
            var seconds = fixedSeconds + cycles / hertz;
            var trials = TrialSeries.Of(
                setup,
                Frames,
                Fine,
                Several(scenario.Trials)
                    .Select(_ => Duration.FromSeconds(seconds * (1 + RunTimeSpread * random.Normal())))
            );
            SupplyReading[] readings = scenario.HasPhases
                ?
                [
                    .. Readings(setup, SupplyPhase.Waiting, waiting.Base + waiting.Slope * hertz),
                    .. Readings(setup, SupplyPhase.Computing, computing.Base + computing.Slope * hertz),
                ]
                : [.. Readings(setup, SupplyPhase.Running, computing.Base + computing.Slope * hertz)];
            return SetupSummary.Of(trials, readings);
        });
        return new MeteredBoard(
            Math.Sqrt(computing.Base * cycles / (waiting.Slope * fixedSeconds)),
            hertz =>
                fixedSeconds * (waiting.Base + waiting.Slope * hertz)
                + cycles / hertz * (computing.Base + computing.Slope * hertz),
            ClockSplit.Of([.. summaries])
        );

        IEnumerable<SupplyReading> Readings(Setup setup, SupplyPhase phase, double amperes)
        {
            var offset = scenario.Accuracy / 100 * FullScale * random.Rectangular(-1, 1);
            return Several(scenario.Trials)
                .Select(_ => new SupplyReading(
                    setup,
                    meter,
                    phase,
                    ElectricCurrent.FromAmperes(
                        gain * amperes * (1 + scenario.CurrentSpread * random.Normal()) + offset
                    ),
                    Frames
                ))
                .ToList();
        }
    }

    private static IEnumerable<int> Several(int count) => Enumerable.Range(0, count);
}
