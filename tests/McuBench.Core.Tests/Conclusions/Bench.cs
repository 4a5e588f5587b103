using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>An invented bench for tests of conclusions: boards, timers and meters whose every figure is a round one.</summary>
internal static class Bench
{
    public static Board Marl { get; } = new("Marl");

    public static Board Tuff { get; } = new("Tuff");

    public static Workload Frames { get; } = new("frame checksum", 1000) { ItemName = "frame" };

    /// <summary>Too fine to matter, known exactly.</summary>
    public static TrialTimer Fine { get; } =
        new("fine timer", Duration.FromNanoseconds(1), TimerReading.Rounded)
        {
            Place = TimerPlace.Outside,
            Tolerance = Ratio.FromPercent(0),
        };

    public static TrialTimer Tenths { get; } =
        new("stop clock", Duration.FromMilliseconds(100), TimerReading.Rounded)
        {
            Place = TimerPlace.Outside,
            Tolerance = Ratio.FromPercent(0),
        };

    public static Setup At(Board board, double megahertz, double? tolerance = 0) =>
        new(
            FormattableString.Invariant($"{board.Name} {megahertz}"),
            board,
            board.Cores[0],
            new Clock(Frequency.FromMegahertz(megahertz))
            {
                Tolerance = tolerance is { } t ? Ratio.FromDecimalFractions(t) : null,
            }
        );

    public static TrialSeries Series(Setup setup, TrialTimer timer, params IEnumerable<double> seconds) =>
        TrialSeries.Of(setup, Frames, timer, seconds.Select(s => Duration.FromSeconds(s)));

    public static Meter Meter(
        double ofReading = 0,
        double ofRange = 0,
        int digits = 0,
        string name = "bench meter",
        double fullScale = 0.1,
        double resolution = 1e-5
    ) =>
        new(
            name,
            new MeterRange(ElectricCurrent.FromAmperes(fullScale), ElectricCurrent.FromAmperes(resolution))
            {
                OfReading = Ratio.FromDecimalFractions(ofReading),
                OfRange = Ratio.FromDecimalFractions(ofRange),
                Digits = digits,
            }
        );

    public static IEnumerable<SupplyReading> Running(
        Setup setup,
        Meter meter,
        double? volts = null,
        params IEnumerable<double> amperes
    ) => Read(setup, meter, SupplyPhase.Running, volts, amperes);

    public static IEnumerable<SupplyReading> Read(
        Setup setup,
        Meter meter,
        SupplyPhase phase,
        double? volts,
        IEnumerable<double> amperes
    ) =>
        amperes.Select(a => new SupplyReading(
            setup,
            meter,
            phase,
            ElectricCurrent.FromAmperes(a),
            phase is SupplyPhase.Running or SupplyPhase.Waiting or SupplyPhase.Computing ? Frames : null
        )
        {
            BoardVoltage = volts is { } v ? ElectricPotential.FromVolts(v) : null,
        });

    /// <summary>All conclusions with default options, stopped with the test.</summary>
    public static StudyConclusions Conclude(Study study, IProgress<ConclusionProgress>? progress = null) =>
        StudyConclusions.Of(study, progress: progress, cancellationToken: TestContext.Current.CancellationToken);
}
