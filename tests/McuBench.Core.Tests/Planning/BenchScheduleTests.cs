using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Planning;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Core.Tests.Planning;

public sealed class BenchScheduleTests
{
    private static readonly Setup MarlAt100 = new("Marl 100", Sketch.Marl, Frequency.FromMegahertz(100));

    private static readonly BenchSlot[] Slots =
    [
        new(Sketch.MarlAt200, Sketch.Echo, Sketch.Microseconds),
        new(MarlAt100, Sketch.Echo, Sketch.Microseconds),
        new(MarlAt100, Sketch.Echo, Sketch.Microseconds, "second"),
    ];

    private static readonly StopRule Rule = new(Ratio.FromPercent(1));

    [Fact]
    public void Look_RunToTheEnd_RunsEachSlotOnceInEveryBlock()
    {
        var schedule = new BenchSchedule(Slots, Rule, seed: 5);

        var trials = RunToTheEnd(schedule, (_, random) => 2.4 + (0.001 * random.Normal()));

        var places = trials.Select(trial => Array.FindIndex(Slots, slot => slot.Holds(trial))).ToArray();
        Assert.Equal(14 * 3, places.Length);
        Assert.All(places.Chunk(3), block => Assert.Equal([0, 1, 2], block.Order()));
        Assert.True(places.Chunk(3).Select(block => string.Join(' ', block)).Distinct().Count() > 2);
    }

    [Fact]
    public void Look_OneSlotScattersMore_AllGoOnUntilItHasEnough()
    {
        var schedule = new BenchSchedule(Slots, Rule, seed: 5);

        var trials = RunToTheEnd(
            schedule,
            (slot, random) => 2.4 + ((slot == Slots[1] ? 0.06 : 0.001) * random.Normal())
        );

        var counts = Slots.Select(slot => trials.Count(slot.Holds)).ToArray();
        Assert.True(counts[1] > 20);
        Assert.All(counts, count => Assert.Equal(counts[1], count));
        Assert.Null(schedule.Look(trials).Next);
        Assert.Equal(0, schedule.Look(trials).ExpectedTrials);
    }

    [Fact]
    public void Look_AfterAnInterruption_GoesOnAsIfNothingHadHappened()
    {
        var whole = RunToTheEnd(new BenchSchedule(Slots, Rule, seed: 5), (_, random) => 2.4 + (0.02 * random.Normal()));
        var again = new BenchSchedule(Slots, Rule, seed: 5);

        for (var n = 0; n < whole.Count; n++)
        {
            Assert.True(again.Look(whole.Take(n)).Next!.Holds(whole[n]));
        }
    }

    [Fact]
    public void Look_OtherSeed_GivesAnotherOrder()
    {
        static double Time(BenchSlot slot, RandomStream random) => 2.4 + (0.001 * random.Normal());

        var one = RunToTheEnd(new BenchSchedule(Slots, Rule, seed: 5), Time);
        var other = RunToTheEnd(new BenchSchedule(Slots, Rule, seed: 6), Time);

        Assert.NotEqual(one.Select(trial => trial.Setup), other.Select(trial => trial.Setup));
    }

    [Fact]
    public void Look_Outlier_PausesOnceWithTheTrialNamed()
    {
        var schedule = new BenchSchedule([Slots[0]], Rule, seed: 5);
        double[] times = [2.400, 2.401, 2.402, 2.400, 2.401, 2.403, 2.401, 2.402, 3.1, 2.401];
        Trial[] trials = [.. times.Select((t, i) => Sketch.TrialOf(t) with { Order = i + 1 })];

        Assert.Null(schedule.Look(trials[..8]).Pause);
        var pause = schedule.Look(trials[..9]).Pause;
        Assert.Null(schedule.Look(trials).Pause);

        Assert.Equal(FindingKind.Outliers, pause!.Kind);
        Assert.Equal([trials[8]], pause.Trials);
    }

    [Fact]
    public void Look_Drift_Pauses()
    {
        var schedule = new BenchSchedule([Slots[0]], Rule, seed: 5);
        Trial[] trials =
        [
            .. Enumerable.Range(0, 14).Select(i => Sketch.TrialOf(2.4 + (0.003 * i)) with { Order = i + 1 }),
        ];

        var pauses = Enumerable.Range(1, 14).Select(n => schedule.Look(trials[..n]).Pause).OfType<Finding>();

        Assert.Equal(FindingKind.Drift, Assert.Single(pauses).Kind);
    }

    [Fact]
    public void Look_TrialsWithTheWrongOutput_DontKeepTheBenchBusyForEver()
    {
        var workload = Sketch.Echo with { OutputChecksum = "aa" };
        var slot = new BenchSlot(Sketch.MarlAt200, workload, Sketch.Microseconds);
        var schedule = new BenchSchedule([slot], Rule with { Options = new SequentialOptions { Maximum = 12 } }, 5);
        var wrong = new Trial(slot.Setup, workload, slot.Timer, Duration.FromSeconds(1)) { OutputChecksum = "bb" };

        Assert.NotNull(schedule.Look(Enumerable.Repeat(wrong, 11)).Next);
        Assert.Null(schedule.Look(Enumerable.Repeat(wrong, 12)).Next);
    }

    [Fact]
    public void Constructor_SlotTwice_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new BenchSchedule([Slots[0], Slots[0]], Rule, 5),
            "slots",
            "Slots must differ; Marl 200, echo spectrum stands twice."
        );

    [Fact]
    public void Constructor_NoSlot_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new BenchSchedule([], Rule, 5),
            "slots",
            "A schedule must hold at least one slot; the list was empty."
        );

    private static List<Trial> RunToTheEnd(BenchSchedule schedule, Func<BenchSlot, RandomStream, double> time)
    {
        var random = RandomStream.Of(11);
        var trials = new List<Trial>();
        while (schedule.Look(trials).Next is { } slot)
        {
            trials.Add(
                new Trial(slot.Setup, slot.Workload, slot.Timer, Duration.FromSeconds(time(slot, random)))
                {
                    Order = trials.Count + 1,
                    Specimen = slot.Specimen,
                }
            );
        }

        return trials;
    }
}
