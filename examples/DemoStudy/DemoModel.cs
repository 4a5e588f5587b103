using McuBench.Core.Boards;
using McuBench.Core.Trials;
using UnitsNet;

namespace DemoStudy;

/// <summary>
/// The demo's world: a mountain-lake gauging network that does not exist chooses among boards that do not exist. Every
/// figure is invented; what the analysis should find is known, since it stands here.
/// </summary>
/// <remarks>
/// Run time: fixed + cycles / f × (1 + noise), f being the nominal clock × (1 + clock error). Supply current while
/// running: base + k·f + display. The bench reads both through a timer and a meter that are themselves a little off.
/// </remarks>
public static class DemoModel
{
    /// <summary>What the display draws, on every board, in amperes.</summary>
    public const double DisplayCurrent = 0.0140;

    /// <summary>How much of a core's current per hertz remains while it idles.</summary>
    public const double IdleShare = 0.35;

    /// <summary>By how much the meter reads high, as a share of the current.</summary>
    public const double MeterGainError = 0.0018;

    /// <summary>What the meter shows at no current, in amperes.</summary>
    public const double MeterOffset = 25e-6;

    /// <summary>The standard deviation of a supply reading, as a share of it.</summary>
    public const double ReadingNoise = 0.0012;

    /// <summary>By which share of the first run time the drifting series grows from trial to trial.</summary>
    public const double DriftPerTrial = 0.0012;

    private const double Microsecond = 1e-6;

    /// <summary>One core; its link to the display is slow.</summary>
    public static BoardTruth Marl { get; } =
        new(
            new Board("Marl") { Description = "One core with a cache; the display hangs on a slow serial link." },
            Counter("Marl's counter", 50e-6),
            new Toolchain("Lichen C")
            {
                Version = "10.4",
                Settings = ["optimised for speed", "code in flash, cache on"],
            },
            ClockTolerance: 50e-6,
            ClockError: 18e-6,
            TimerError: -21e-6,
            BaseCurrent: 0.0110,
            Voltage: 5.02
        );

    /// <summary>Two kinds of core, of which one runs at a time.</summary>
    public static BoardTruth Schist { get; } =
        new(
            new Board(
                "Schist",
                [
                    new ExecutionCore("A") { Description = "32 bits, short pipeline" },
                    new ExecutionCore("B") { Description = "32 bits, two instructions at a time, floating-point unit" },
                ]
            )
            {
                Description = "Two kinds of core, one in use at a time; the display hangs on a fast parallel link.",
            },
            Counter("Schist's counter", 30e-6),
            new Toolchain("Lichen C")
            {
                Version = "11.2",
                Settings = ["optimised for speed", "code in flash, cache on"],
            },
            ClockTolerance: 30e-6,
            ClockError: -12e-6,
            TimerError: 9e-6,
            BaseCurrent: 0.0090,
            Voltage: 5.01
        );

    /// <summary>Small, slow and frugal; its runs are timed by the stopwatch that it shows on its display.</summary>
    public static BoardTruth Tuff { get; } =
        new(
            new Board("Tuff")
            {
                Description = "One small core without a cache; clocked by a trimmed on-chip oscillator.",
            },
            new TrialTimer("Tuff's stopwatch", Duration.FromSeconds(0.1), TimerReading.Rounded)
            {
                Tolerance = Ratio.FromPartsPerMillion(50),
                DerivedFromChangedClock = false,
            },
            new Toolchain("Lichen C") { Version = "11.2", Settings = ["optimised for speed", "code in flash"] },
            ClockTolerance: 0.01,
            ClockError: -0.004,
            TimerError: 30e-6,
            BaseCurrent: 0.0030,
            Voltage: 5.03
        );

    /// <summary>Marl's only core.</summary>
    public static CoreTruth MarlCore { get; } = new(Marl, Marl.Board.Cores[0], CurrentPerHertz: 0.26e-9, Noise: 0.0005);

    /// <summary>Schist's core A.</summary>
    public static CoreTruth SchistA { get; } =
        new(Schist, Schist.Board.Cores[0], CurrentPerHertz: 0.30e-9, Noise: 0.0008);

    /// <summary>Schist's core B.</summary>
    public static CoreTruth SchistB { get; } =
        new(Schist, Schist.Board.Cores[1], CurrentPerHertz: 0.36e-9, Noise: 0.0008);

    /// <summary>Tuff's only core.</summary>
    public static CoreTruth TuffCore { get; } = new(Tuff, Tuff.Board.Cores[0], CurrentPerHertz: 0.15e-9, Noise: 0.0002);

    /// <summary>The depth of the lake from the echo of a pulse.</summary>
    public static Workload EchoSpectrum { get; } =
        new("echo spectrum", 64)
        {
            ItemName = "block",
            Description =
                "Spectrum of 64 blocks of the echo of a pulse on the lake bed; the depth goes to the display.",
            OutputChecksum = "5D1C0A77",
        };

    /// <summary>The level without the waves.</summary>
    public static Workload MedianFilter { get; } =
        new("median filter", 20_000)
        {
            ItemName = "sample",
            Description = "Running median of 20,000 level samples against waves; the whole curve goes to the display.",
            OutputChecksum = "E20B96F4",
        };

    /// <summary>The check of what is sent down the valley.</summary>
    public static Workload FrameChecksum { get; } =
        new("frame checksum", 5_000)
        {
            ItemName = "frame",
            Description = "Checksum of 5,000 telemetry frames; only the count goes to the display.",
            OutputChecksum = "07C3B81A",
        };

    /// <summary>What every core needs for every workload.</summary>
    /// <remarks>
    /// The median filter is made so that Marl at 200 MHz takes longer than Schist B at 160 MHz only for its display:
    /// without the fixed part it is the faster one.
    /// </remarks>
    public static IReadOnlyList<TaskTruth> Tasks { get; } =
    [
        new(MarlCore, EchoSpectrum, FixedTime: 0.300, Cycles: 640e6),
        new(SchistA, EchoSpectrum, FixedTime: 0.120, Cycles: 512e6),
        new(SchistB, EchoSpectrum, FixedTime: 0.120, Cycles: 440e6),
        new(TuffCore, EchoSpectrum, FixedTime: 0.450, Cycles: 432e6),
        new(MarlCore, MedianFilter, FixedTime: 1.100, Cycles: 300e6),
        new(SchistA, MedianFilter, FixedTime: 0.200, Cycles: 380e6),
        new(SchistB, MedianFilter, FixedTime: 0.200, Cycles: 320e6),
        new(TuffCore, MedianFilter, FixedTime: 0.600, Cycles: 410e6),
        new(MarlCore, FrameChecksum, FixedTime: 0.050, Cycles: 110e6),
        new(SchistA, FrameChecksum, FixedTime: 0.040, Cycles: 96e6),
        new(SchistB, FrameChecksum, FixedTime: 0.040, Cycles: 68e6),
        new(TuffCore, FrameChecksum, FixedTime: 0.060, Cycles: 84e6),
    ];

    /// <summary>The workloads, in the order of the study.</summary>
    public static IReadOnlyList<Workload> Workloads { get; } = [EchoSpectrum, MedianFilter, FrameChecksum];

    /// <summary>The boards, in the order of the study.</summary>
    public static IReadOnlyList<BoardTruth> Boards { get; } = [Marl, Schist, Tuff];

    /// <summary>The cores, in the order of the study.</summary>
    public static IReadOnlyList<CoreTruth> Cores { get; } = [MarlCore, SchistA, SchistB, TuffCore];

    /// <summary>What is true of the core that a setup uses.</summary>
    public static CoreTruth CoreOf(Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return Cores.Single(truth => truth.Board.Board == setup.Board && truth.Core == setup.Core);
    }

    /// <summary>What one run of a workload costs the core that a setup uses.</summary>
    public static TaskTruth TaskOf(Setup setup, Workload workload)
    {
        var core = CoreOf(setup);
        return Tasks.Single(task => task.Core == core && task.Workload == workload);
    }

    /// <summary>The clock that a setup really runs at, in hertz.</summary>
    public static double TrueClock(Setup setup) =>
        setup is null
            ? throw new ArgumentNullException(nameof(setup))
            : setup.Clock.Nominal.Hertz * (1 + CoreOf(setup).Board.ClockError);

    /// <summary>The run time without noise, drift, outliers and instruments, in seconds.</summary>
    public static double RunTime(Setup setup, Workload workload)
    {
        var task = TaskOf(setup, workload);
        return task.FixedTime + task.Cycles / TrueClock(setup);
    }

    /// <summary>The supply current while running, display included, in amperes.</summary>
    public static double RunningCurrent(Setup setup)
    {
        var core = CoreOf(setup);
        return core.Board.BaseCurrent + core.CurrentPerHertz * TrueClock(setup) + DisplayCurrent;
    }

    /// <summary>The supply current between runs, display included, in amperes.</summary>
    public static double IdleCurrent(Setup setup)
    {
        var core = CoreOf(setup);
        return core.Board.BaseCurrent + IdleShare * core.CurrentPerHertz * TrueClock(setup) + DisplayCurrent;
    }

    /// <summary>The charge that one task takes from the supply, display included, in coulombs.</summary>
    public static double ChargePerTask(Setup setup, Workload workload) =>
        RunningCurrent(setup) * RunTime(setup, workload);

    /// <summary>The energy that one task takes from the supply, display included, in joules.</summary>
    public static double EnergyPerTask(Setup setup, Workload workload) =>
        ChargePerTask(setup, workload) * CoreOf(setup).Board.Voltage;

    private static TrialTimer Counter(string name, double tolerance) =>
        new(name, Duration.FromSeconds(Microsecond), TimerReading.TickDifferenceRandomStart)
        {
            Tolerance = Ratio.FromDecimalFractions(tolerance),
            DerivedFromChangedClock = false,
        };
}
