using McuBench.Core.Boards;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Simulation;

/// <summary>One simulated study of two invented boards: what was read, and what is true.</summary>
public sealed record TimedPair
{
    private const double ShortestSeconds = 1;
    private const double RangeOfSeconds = 0.5;

    /// <summary>A fine timer's step, relative to the spread.</summary>
    private const double FineStep = 1e-6;

    private const int DelayEvery = 20;
    private const double MeanDelay = 5;
    private const int SkewedParts = 4;

    private static readonly Workload Frames = new("frame checksum", 1000) { ItemName = "frame" };
    private static readonly Setup Marl = At("Marl");
    private static readonly Setup Tuff = At("Tuff");

    private TimedPair(Side first, Side second, double step)
    {
        First = first;
        Second = second;
        Step = step;
    }

    /// <summary>The first board's trials and true mean.</summary>
    public Side First { get; }

    /// <summary>The second board's trials and true mean.</summary>
    public Side Second { get; }

    /// <summary>The timer's step, in seconds.</summary>
    public double Step { get; }

    /// <summary>The true ratio, of the first to the second.</summary>
    public double TrueRatio => First.TrueSeconds / Second.TrueSeconds;

    /// <summary>Draws a study.</summary>
    /// <param name="scenario">What kind.</param>
    /// <param name="random">Where the draws come from; every study of a scenario needs a stream of its own.</param>
    public static TimedPair Draw(Scenario scenario, RandomStream random)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(random);
        var isStill = double.IsPositiveInfinity(scenario.StepOverSpread);
        var step =
            ShortestSeconds
            * scenario.Spread
            * (
                isStill ? 1
                : scenario.StepOverSpread == 0 ? FineStep
                : scenario.StepOverSpread
            );

        // The truth may lie anywhere between two steps: run times range over many of them. Run times that differ by 2 %
        // and more then lie at places of their own; equal ones lie at the same.
        var second = ShortestSeconds + RangeOfSeconds * random.Uniform();
        var first = second * scenario.Ratio;
        var spread = isStill ? 0 : scenario.Spread * ShortestSeconds / second;
        var order = Order(scenario, random);
        var sharedScale = Scale();
        return new TimedPair(
            Time(Marl, first, order.AsSpan(0, scenario.Trials)),
            Time(Tuff, second, order.AsSpan(scenario.Trials)),
            step
        );

        Side Time(Setup setup, double seconds, ReadOnlySpan<int> places)
        {
            var timer = new TrialTimer("counter", Duration.FromSeconds(step), scenario.Reading)
            {
                Place = scenario.Place,
                Tolerance = UnitsNet.Ratio.FromDecimalFractions(scenario.Tolerance),
            };
            var scale = scenario.Place == TimerPlace.Outside ? sharedScale : Scale();
            var trials = new Trial[places.Length];
            var readings = new double[places.Length];
            double drifted = 0;
            var before = Deviate(scenario.Shape, random);
            for (var i = 0; i < trials.Length; i++)
            {
                before =
                    scenario.Lag == 0
                        ? Deviate(scenario.Shape, random)
                        : scenario.Lag * before
                            + Math.Sqrt(1 - scenario.Lag * scenario.Lag) * Deviate(scenario.Shape, random);
                var drift = scenario.Drift * (places[i] - 1) / (2.0 * scenario.Trials - 1);
                drifted += drift / trials.Length;
                var shown = Shown(seconds * (1 + spread * (before + drift)) * scale, step, scenario.Reading, random);
                readings[i] = shown;
                trials[i] = new Trial(setup, Frames, timer, Duration.FromSeconds(shown)) { Order = places[i] };
            }

            // Under drift the true run time is the mean over the trials that were taken.
            return new Side(new TrialSeries(trials), readings, seconds * (1 + spread * drifted));
        }

        double Scale() => scenario.Tolerance == 0 ? 1 : 1 + random.Rectangular(-scenario.Tolerance, scenario.Tolerance);
    }

    private static double Shown(double seconds, double step, TimerReading reading, RandomStream random) =>
        step
        * reading switch
        {
            TimerReading.Rounded => Math.Round(seconds / step),
            TimerReading.TickDifferenceRandomStart => Math.Floor(seconds / step + random.Uniform()),
            _ => Math.Floor(seconds / step),
        };

    private static double Deviate(NoiseShape shape, RandomStream random)
    {
        switch (shape)
        {
            case NoiseShape.Skewed:
                double sum = 0;
                for (var i = 0; i < SkewedParts; i++)
                {
                    sum -= Math.Log(random.Uniform());
                }

                return (sum - SkewedParts) / Math.Sqrt(SkewedParts);
            case NoiseShape.Contaminated:
                const double share = 1.0 / DelayEvery;
                var delay = random.Index(DelayEvery) == 0 ? -MeanDelay * Math.Log(random.Uniform()) : 0;
                const double mean = share * MeanDelay;
                const double variance = 1 + share * 2 * MeanDelay * MeanDelay - mean * mean;
                return (random.Normal() + delay - mean) / Math.Sqrt(variance);
            default:
                return random.Normal();
        }
    }

    private static int[] Order(Scenario scenario, RandomStream random)
    {
        int[] places = [.. Enumerable.Range(1, 2 * scenario.Trials)];
        if (scenario.Order == TrialOrder.Random)
        {
            random.Shuffle<int>(places);

            // A board's trials in the order in which they were run, for correlation from one to the next.
            places.AsSpan(0, scenario.Trials).Sort();
            places.AsSpan(scenario.Trials).Sort();
        }

        return places;
    }

    private static Setup At(string name)
    {
        var board = new Board(name);
        return new Setup(
            $"{name} 100",
            board,
            board.Cores[0],
            new Clock(Frequency.FromMegahertz(100)) { Tolerance = UnitsNet.Ratio.FromPercent(0) }
        );
    }

    /// <summary>One board's part.</summary>
    /// <param name="Series">What was read, as the library takes it.</param>
    /// <param name="Readings">The same in seconds.</param>
    /// <param name="TrueSeconds">The true mean run time.</param>
    public sealed record Side(TrialSeries Series, IReadOnlyList<double> Readings, double TrueSeconds);
}
