using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Simulation;

/// <summary>A rule that might have been the library's: what it says of the logarithm of a ratio of run times.</summary>
/// <param name="Name">Its name in the table.</param>
/// <param name="OfRatio">The interval of the logarithm of the ratio.</param>
public sealed record Candidate(string Name, Func<TimedPair, (double Lower, double Upper)> OfRatio)
{
    /// <summary>The rules that the library's is compared with.</summary>
    public static IReadOnlyList<Candidate> All { get; } =
    [
        new("Welch", pair => Welch(pair, (ofScatter, _) => ofScatter, isScatterAlone: true)),
        new("larger", pair => Welch(pair, Math.Max, isScatterAlone: true)),
        new("sum", pair => Welch(pair, (ofScatter, ofStep) => ofScatter + ofStep, isScatterAlone: false)),
    ];

    private const double Confidence = 0.95;

    /// <summary>Student's t on the logarithms (welch-1947), with a share of the timer's step in each side's variance.</summary>
    private static (double Lower, double Upper) Welch(
        TimedPair pair,
        Func<double, double, double> combine,
        bool isScatterAlone
    )
    {
        var a = Of(pair.First);
        var b = Of(pair.Second);
        var variance = a.Variance + b.Variance;
        var spread = a.OfEstimate * a.OfEstimate / (a.Count - 1) + b.OfEstimate * b.OfEstimate / (b.Count - 1);
        var reach =
            variance == 0
                ? 0
                : StudentT
                    .Of(spread == 0 ? double.PositiveInfinity : variance * variance / spread)
                    .UpperQuantile((1 - Confidence) / 2) * Math.Sqrt(variance);
        var centre = Math.Log(a.Mean / b.Mean);
        return (centre - reach, centre + reach);

        (double Mean, double Variance, double OfEstimate, int Count) Of(TimedPair.Side side)
        {
            double[] readings = [.. side.Readings];
            var isCut =
                side.Series.Timer.Reading is TimerReading.Truncated or TimerReading.TickDifferenceSynchronousStart;
            var mean = Location.Mean(readings) + (isCut ? pair.Step / 2 : 0);
            var ofScatter = Scale.Variance(readings) / readings.Length / (mean * mean);
            var ofStep = pair.Step * pair.Step / 12 / (mean * mean);
            var all = combine(ofScatter, ofStep);
            return (mean, all, isScatterAlone ? all : ofScatter, readings.Length);
        }
    }
}
