using System.Text;
using McuBench.Core.Boards;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Studies;

public sealed class StudyJsonTests
{
    [Fact]
    public void Read_Sample_GivesEveryValue()
    {
        var study = StudySample.Study;

        var board = new Board(
            "Schist",
            [new ExecutionCore("wide") { Description = "with a floating-point unit" }, new ExecutionCore("narrow")]
        )
        {
            Description = "two kinds of core",
        };
        var setup = new Setup(
            "Schist wide 160",
            board,
            board.Cores[0],
            new Clock(Frequency.FromMegahertz(160)) { Tolerance = Ratio.FromPartsPerMillion(50) }
        )
        {
            Supply = new BoardSupply(ElectricPotential.FromVolts(5))
            {
                Tolerance = Ratio.FromPercent(2),
                Input = "header pin",
                FedElsewhereToo = false,
            },
            Toolchain = new Toolchain("house compiler") { Version = "4.1", Settings = ["O2", "code in RAM"] },
            Attachments = [new Attachment(AttachmentKind.Display, "panel", AttachmentState.Active)],
        };
        var workload = new Workload("echo spectrum", 1000)
        {
            ItemName = "spectrum",
            Description = "1024 points",
            OutputChecksum = "9AF3",
        };
        var timer = new TrialTimer("ticks", Duration.FromMicroseconds(1), TimerReading.TickDifferenceRandomStart)
        {
            Tolerance = Ratio.FromPartsPerMillion(20),
            DerivedFromChangedClock = false,
        };
        var meter = new Meter(
            "bench meter",
            new MeterRange(ElectricCurrent.FromMilliamperes(50), ElectricCurrent.FromMicroamperes(10))
            {
                OfReading = Ratio.FromPercent(1.5),
                OfRange = Ratio.FromPercent(1),
                Digits = 2,
                BurdenAtFullScale = ElectricPotential.FromMillivolts(100),
            }
        )
        {
            AveragingTime = Duration.FromMilliseconds(400),
            ZeroCheck = new MeterCheck(
                new DateOnly(2026, 3, 1),
                ElectricCurrent.Zero,
                ElectricCurrent.FromMicroamperes(-10)
            ),
            KnownLoadCheck = new MeterCheck(
                new DateOnly(2026, 3, 2),
                ElectricCurrent.FromMilliamperes(10),
                ElectricCurrent.FromMilliamperes(10.01)
            ),
        };
        var expected = new Study(
            "Lake gauges",
            [board],
            [setup],
            [workload],
            [timer],
            [meter],
            [
                new Trial(setup, workload, timer, Duration.FromMilliseconds(412.1))
                {
                    Order = 1,
                    Session = "morning",
                    Specimen = "no. 3",
                    Build = "b17",
                    Connection = "short cable, port 2",
                    Temperature = Temperature.FromKelvins(296.15),
                    OutputChecksum = "9AF3",
                },
            ],
            [
                new SupplyReading(setup, meter, SupplyPhase.Running, ElectricCurrent.FromMilliamperes(31.02), workload)
                {
                    Point = MeasuringPoint.AfterRegulator,
                    BoardVoltage = ElectricPotential.FromVolts(3.31),
                    Range = ElectricCurrent.FromMilliamperes(50),
                    Session = "morning",
                    Specimen = "no. 3",
                },
                new SupplyReading(setup, meter, SupplyPhase.AttachmentAlone, ElectricCurrent.FromMilliamperes(4))
                {
                    Attachment = "panel",
                },
            ]
        )
        {
            Description = "Which controller reads the echo sounders?",
            IsInvented = true,
        };
        Assert.Equal(expected, study);
    }

    [Fact]
    public void Write_Sample_GivesItsBytes() => Assert.Equal(StudySample.Json, StudySample.Write(StudySample.Study));

    [Fact]
    public void Write_CyclesAndEmptyWorkload_ReadBackAsTheyWere()
    {
        var board = new Board("Marl");
        var setup = new Setup("one", board, Frequency.FromMegahertz(8));
        var nothing = new Workload("nothing", 1) { IsEmpty = true, LoadPeriod = Duration.FromMilliseconds(20) };
        var timer = new TrialTimer("watch", Duration.FromSeconds(0.1), TimerReading.Rounded);
        var study = Study.FromTrials(
            "small",
            [new Trial(setup, nothing, timer, Duration.FromSeconds(900)) { CycleCount = 7_200_000_000 }]
        );

        var json = StudySample.Write(study);

        Assert.Contains("\"empty\": true", json, StringComparison.Ordinal);
        Assert.Contains("\"loadPeriod\": \"20 ms\"", json, StringComparison.Ordinal);
        Assert.Contains("\"cycleCount\": 7200000000", json, StringComparison.Ordinal);
        Assert.Equal(study, StudySample.Read(json));
    }

    [Fact]
    public void Read_OptionalThingsLeftOut_TakesTheirDefaults()
    {
        var study = StudySample.Read(
            """
            {
              "title": "small", "version": 1, "format": "McuBench study",
              "boards": [{ "name": "Marl" }],
              "setups": [{ "name": "one", "board": "Marl", "clock": { "frequency": "8 MHz" } }],
              "workloads": [{ "name": "sum", "workItemsPerRun": 5 }],
              "timers": [{ "name": "watch", "resolution": "0.1 s", "reading": "rounded" }]
            }
            """
        );

        var board = new Board("Marl");
        var expected = new Study(
            "small",
            [board],
            [new Setup("one", board, Frequency.FromMegahertz(8))],
            [new Workload("sum", 5)],
            [new TrialTimer("watch", Duration.FromSeconds(0.1), TimerReading.Rounded)],
            [],
            [],
            []
        );
        Assert.Equal(expected, study);
    }

    [Fact]
    public void Read_ListsInAnyOrder_FindsWhatTheyReferTo()
    {
        var study = StudySample.Read(
            """
            {
              "trials": [{ "setup": "one", "workload": "sum", "timer": "watch", "runTime": "2.4 s" }],
              "timers": [{ "name": "watch", "resolution": "0.1 s", "reading": "rounded" }],
              "workloads": [{ "name": "sum", "workItemsPerRun": 5 }],
              "setups": [{ "name": "one", "board": "Marl", "clock": { "frequency": "8 MHz" } }],
              "boards": [{ "name": "Marl" }],
              "title": "small", "version": 1, "format": "McuBench study"
            }
            """
        );

        Assert.Equal(2.4, study.Trials.Single().RunTime.Seconds);
    }

    [Fact]
    public void Read_ByteOrderMark_IsAccepted()
    {
        byte[] marked = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(StudySample.Json)];

        Assert.Equal(StudySample.Study, StudySample.ReadWithFaults(marked).OrThrow());
    }

    [Fact]
    public void Read_Stream_StaysOpen()
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(StudySample.Json));

        StudyJson.Read(stream, "study.json");

        Assert.True(stream.CanRead);
    }

    [Fact]
    public void Write_Tables_LeavesTheirListsOut()
    {
        var json = StudySample.Write(
            StudySample.Study,
            new StudyTables { Trials = "runs/trials.csv", Readings = "readings.csv" }
        );

        Assert.DoesNotContain("\"trials\"", json, StringComparison.Ordinal);
        Assert.DoesNotContain("\"readings\"", json, StringComparison.Ordinal);
        Assert.EndsWith(
            """
              "trialFiles": [
                {
                  "path": "runs/trials.csv"
                }
              ],
              "readingFiles": [
                {
                  "path": "readings.csv"
                }
              ]
            }

            """,
            json,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Read_Tables_GivesTheirRowsAfterThoseInline()
    {
        var json = StudySample.With(
            "  \"readings\": [",
            """
              "trialFiles": [
                {
                  "path": "a.csv",
                  "columns": { "setup": "unit under test", "runTime": "t" },
                  "constants": { "workload": "echo spectrum", "timer": "ticks" },
                  "delimiter": ";",
                  "hashComments": true,
                  "ignoreOtherColumns": true
                }
              ],
              "readingFiles": [{ "path": "sub/b.csv" }],
              "readings": [
            """
        );
        var files = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["a.csv"] = "# from the rig\nunit under test;t [ms];note\nSchist wide 160;413.5;fine\n",
            ["sub/b.csv"] = "setup,meter,phase,current [mA]\nSchist wide 160,bench meter,idle,12.5\n",
        };

        var study = StudyJson.Read(json, "study.json", path => new MemoryStream(Encoding.UTF8.GetBytes(files[path])));

        Assert.Equal([0.4121, 0.4135], study.Trials.Select(trial => trial.RunTime.Seconds));
        Assert.Equal([0.03102, 0.004, 0.0125], study.Readings.Select(reading => reading.Current.Amperes));
    }
}
