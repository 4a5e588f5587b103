using McuBench.Core.Boards;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace DemoStudy;

/// <summary>Runs the demo's bench in the demo's world: the trials and supply readings that it would have written down.</summary>
public static class DemoData
{
    /// <summary>The seed of the committed files: one in which chance adds no oddity to those that were put in.</summary>
    public const ulong CommittedSeed = 6;

    /// <summary>How many trials each series has.</summary>
    public const int TrialsPerSeries = TrialsPerSession * 2;

    private const int TrialsPerSession = 6;
    private const int RunningReadings = 3;
    private const int IdleReadings = 3;
    private const int DisplayReadings = 2;

    // Streams apart from one another: those of a series are counted up from the last three.
    private const int OrderStream = 1;
    private const int TemperatureStream = 1_000;
    private const int RunTimeStream = 2_000;
    private const int TickStream = 3_000;
    private const int ReadingStream = 4_000;

    private static readonly string[] Sessions = ["first day", "second day"];
    private static readonly double[] Celsius = [17.5, 15.0];

    /// <summary>Makes the study. The same seed gives the same study to the last bit, on any platform.</summary>
    public static Study Make(ulong seed = CommittedSeed)
    {
        var random = new CounterRandom(seed);
        return new Study(
            "Choosing a controller for a mountain-lake gauging network (invented data)",
            DemoModel.Boards.Select(truth => truth.Board),
            DemoBench.Setups,
            DemoModel.Workloads,
            DemoModel.Boards.Select(truth => truth.Timer),
            [DemoBench.Meter],
            Trials(random),
            Readings(random)
        )
        {
            Description =
                "All of this is invented: network, boards and figures. A small program makes it from a stated model and a seed, to show what an analysis finds and what it can't.",
            IsInvented = true,
        };
    }

    /// <summary>Each session runs through every series six times, each time in a new random order.</summary>
    private static IEnumerable<Trial> Trials(CounterRandom random)
    {
        var series = (
            from workload in DemoModel.Workloads
            from setup in DemoBench.Setups
            select (Setup: setup, Workload: workload)
        ).ToArray();
        var order = 0;
        for (var round = 0; round < TrialsPerSeries; round++)
        {
            foreach (var which in random.Shuffled(Enumerable.Range(0, series.Length), OrderStream + round))
            {
                var (setup, workload) = series[which];
                order++;
                yield return Trial(random, setup, workload, which, round) with
                {
                    Order = order,
                    Session = Sessions[round / TrialsPerSession],
                    Specimen = $"{setup.Board.Name} no. 1",
                    Temperature = TemperatureAt(random, round, order),
                };
            }
        }
    }

    private static Trial Trial(CounterRandom random, Setup setup, Workload workload, int which, int round)
    {
        var task = DemoModel.TaskOf(setup, workload);
        var board = task.Core.Board;
        var noise = task.Core.Noise * random.Normal(RunTimeStream + which, round);
        var seconds = task.FixedTime + task.Cycles / DemoModel.TrueClock(setup) * (1 + noise);
        var checksum = workload.OutputChecksum!;
        if ((setup, workload) == DemoBench.Drifting)
        {
            seconds *= 1 + DemoModel.DriftPerTrial * round;
        }
        else if ((setup, workload) == DemoBench.WithOutliers)
        {
            seconds *= round switch
            {
                3 => 1.08,
                8 => 1.12,
                _ => 1,
            };
        }
        else if ((setup, workload) == DemoBench.WithWrongOutput && round == 5)
        {
            seconds *= 0.89;
            checksum = "00000000";
        }

        var phase = random.Uniform(TickStream + which, round);
        return new Trial(setup, workload, board.Timer, Read(board.Timer, seconds * (1 + board.TimerError), phase))
        {
            OutputChecksum = checksum,
        };
    }

    /// <summary>What a timer shows for a time that starts at a phase (0 up to 1) between two ticks.</summary>
    private static Duration Read(TrialTimer timer, double seconds, double phase)
    {
        // Ticks are counted per second, a whole number, so that the figure read is the double nearest to its decimals.
        var ticksPerSecond = Math.Round(1 / timer.Resolution.Seconds);
        var ticks = timer.Reading switch
        {
            TimerReading.Rounded => Math.Floor(seconds * ticksPerSecond + 0.5),
            TimerReading.TickDifferenceRandomStart => Math.Floor(seconds * ticksPerSecond + phase),
            _ => Math.Floor(seconds * ticksPerSecond),
        };
        return Duration.FromSeconds(ticks / ticksPerSecond);
    }

    /// <summary>To 0.1 °C, as read off a thermometer beside the boards.</summary>
    private static Temperature TemperatureAt(CounterRandom random, int round, int order)
    {
        var tenths = Math.Floor(
            10 * (Celsius[round / TrialsPerSession] + 0.4 * random.Normal(TemperatureStream, order)) + 0.5
        );
        return Temperature.FromDegreesCelsius(tenths / 10);
    }

    private static IEnumerable<SupplyReading> Readings(CounterRandom random)
    {
        var number = 0;
        foreach (var setup in DemoBench.Setups)
        {
            foreach (var workload in DemoModel.Workloads)
            {
                for (var i = 0; i < RunningReadings; i++)
                {
                    yield return Reading(
                        SupplyPhase.Running,
                        DemoModel.RunningCurrent(setup),
                        setup,
                        workload,
                        random.Normal(ReadingStream, number++)
                    );
                }
            }

            for (var i = 0; i < IdleReadings; i++)
            {
                yield return Reading(
                    SupplyPhase.Idle,
                    DemoModel.IdleCurrent(setup),
                    setup,
                    null,
                    random.Normal(ReadingStream, number++)
                );
            }

            for (var i = 0; i < DisplayReadings; i++)
            {
                yield return Reading(
                    SupplyPhase.AttachmentAlone,
                    DemoModel.DisplayCurrent,
                    setup,
                    null,
                    random.Normal(ReadingStream, number++)
                ) with
                {
                    Attachment = DemoBench.Display.Name,
                };
            }
        }
    }

    private static SupplyReading Reading(
        SupplyPhase phase,
        double amperes,
        Setup setup,
        Workload? workload,
        double noise
    )
    {
        var board = DemoModel.CoreOf(setup).Board;
        var shown =
            amperes * (1 + DemoModel.ReadingNoise * noise) * (1 + DemoModel.MeterGainError) + DemoModel.MeterOffset;
        var range = DemoBench.Meter.RangeFor(ElectricCurrent.FromAmperes(shown))!;
        var stepsPerAmpere = Math.Round(1 / range.Resolution.Amperes);
        var read = Math.Floor(shown * stepsPerAmpere + 0.5) / stepsPerAmpere;
        return new SupplyReading(setup, DemoBench.Meter, phase, ElectricCurrent.FromAmperes(read), workload)
        {
            Point = MeasuringPoint.BeforeRegulator,
            BoardVoltage = ElectricPotential.FromVolts(board.Voltage),
            Range = range.FullScale,
            Session = Sessions[1],
            Specimen = $"{setup.Board.Name} no. 1",
        };
    }
}
