using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>0.1 s waiting at 8 mA + 20 µA/MHz and 40 million cycles at 6 mA + 120 µA/MHz: the first case of clock.json, where
/// SciPy's bounded minimum and the closed form in mpmath agree.</summary>
public class BestClockTests
{
    private const double BestHertz = 346410161.51377547;
    private const double LeastCoulombs = 0.006985640646055102;

    /// <summary>What a line through whole-run means makes of it, from the same file.</summary>
    private const double BestHertzOfWholeRuns = 256057917.46108183;

    private static readonly double[] Clocks = [100, 200, 400];
    private static readonly double[] EqualScatter = [-1e-4, 0, 1e-4];
    private static readonly double[] Alone = [0];

    [Fact]
    public void Of_CurrentsByPhase_FindsTheClosedMinimum()
    {
        var best = BestClock.Of(Split(Phases));

        Assert.Equal(BestClockCase.Between, best.Case);
        Assert.Equal(BestHertz, Si.Hertz(best.Clock), 1);
        Assert.Equal(BestHertz, Si.Hertz(best.Balance!.Value), 1);
        Assert.Equal(LeastCoulombs, Si.Coulombs(best.Charge.Value), 1e-12);
        Assert.False(best.RestsOnEqualDraw);
        Assert.Equal(SupplyPhase.Waiting, best.Waiting.Phase);
        Assert.Equal(SupplyPhase.Computing, best.Computing.Phase);
        Assert.InRange(BestHertz, Si.Hertz(best.Interval!.Lower), Si.Hertz(best.Interval.Upper!.Value));
    }

    [Fact]
    public void Of_WholeRunCurrentsOnly_IsLabelledAndMissesTheBest()
    {
        var best = BestClock.Of(Split(WholeRun));

        Assert.True(best.RestsOnEqualDraw);
        Assert.Equal(BestHertzOfWholeRuns, Si.Hertz(best.Clock), 1e3);
        Assert.StartsWith("Rests on waiting and computing drawing alike", best.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PhaseRunningBesideWaiting_StandsForComputing()
    {
        var best = BestClock.Of(Split((setup, f) => Currents(setup, f, SupplyPhase.Running)));

        Assert.False(best.RestsOnEqualDraw);
        Assert.Equal(BestHertz, Si.Hertz(best.Clock), 1);
    }

    [Fact]
    public void Offered_Clocks_CostWhatTheFormulaSays()
    {
        var best = BestClock.Of(Split(Phases));

        Assert.Equal([100e6, 200e6, 400e6], best.Offered.Select(p => Si.Hertz(p.Clock)));
        foreach (var point in best.Offered)
        {
            var f = Si.Hertz(point.Clock);
            var charge = 0.1 * (8e-3 + 2e-11 * f) + 40e6 / f * (6e-3 + 1.2e-10 * f);
            Assert.Equal(charge, Si.Coulombs(point.Charge.Value), 1e-12);
        }

        Assert.Equal(400e6, Si.Hertz(best.BestOffered.Clock), 1);
        Assert.False(best.BestOffered.ChargeToBest.HasInterval);
        Assert.Contains(best.NotToldFromBest, p => Si.Hertz(p.Clock) == 400e6);
        Assert.DoesNotContain(best.NotToldFromBest, p => Si.Hertz(p.Clock) == 100e6);
    }

    [Theory]
    [InlineData(1.25, 0.025)]
    [InlineData(1.5, 1.0 / 12)]
    [InlineData(2, 0.25)]
    public void ChargeAt_OffTheBest_CostsItsShareOfWhatVaries(double factor, double excess)
    {
        var wide = new BestClockOptions { Range = Range(100, 800) };
        var best = BestClock.Of(Split(Phases), wide);
        var varies = 2 * Math.Sqrt(6e-3 * 40e6 * 2e-11 * 0.1);
        var charge = best.ChargeAt(Frequency.FromHertz(BestHertz * factor));

        Assert.Equal(LeastCoulombs + excess * varies, Si.Coulombs(charge.Value), 1e-9);
        Assert.Contains(
            "The range reaches beyond the clocks that were run, 100 MHz to 400 MHz: that the lines hold there is taken for granted.",
            best.Notes
        );
    }

    [Theory]
    [InlineData(0.1, 2e-11, 6e-3, BestClockCase.Between)]
    [InlineData(0.1, -2e-12, 6e-3, BestClockCase.Fastest)]
    [InlineData(-0.02, 2e-11, 6e-3, BestClockCase.Fastest)]
    [InlineData(0.1, 2e-11, -2e-3, BestClockCase.Slowest)]
    [InlineData(0.1, -2e-12, -2e-3, BestClockCase.EitherEnd)]
    public void Case_SignsOfBothTerms_DecideIt(
        double fixedTime,
        double perHertz,
        double computing,
        BestClockCase expected
    )
    {
        var best = BestClock.Of(
            Split(
                (setup, f) =>
                    Read(setup, SupplyPhase.Waiting, 8e-3 + perHertz * f)
                        .Concat(Read(setup, SupplyPhase.Computing, computing + 1.2e-10 * f)),
                fixedTime
            )
        );

        Assert.Equal(expected, best.Case);
        var ends = new[] { best.Offered[0], best.Offered[^1] };
        var better = ends.MinBy(p => Si.Coulombs(p.Charge.Value))!;
        if (expected != BestClockCase.Between)
        {
            Assert.Null(best.Balance);
            Assert.Equal(Si.Hertz(better.Clock), Si.Hertz(best.Clock));
        }
    }

    [Fact]
    public void Clock_BalanceBeyondTheRange_IsTheNearestEnd()
    {
        var best = BestClock.Of(Split(Phases), new BestClockOptions { Range = Range(100, 200) });

        Assert.Equal(200e6, Si.Hertz(best.Clock));
        Assert.Equal(BestHertz, Si.Hertz(best.Balance!.Value), 1);
        Assert.Contains(
            "What rises and what falls balance at 346 MHz, beyond what can be chosen: the nearest end is the best.",
            best.Notes
        );
        Assert.Null(best.Interval!.Within(best.Range));
        Assert.Contains(
            "at 200 MHz, the end of 100 MHz to 200 MHz nearest to where what rises and what falls balance (346 MHz, 95 % interval ",
            ClockStatement.Of(best),
            StringComparison.Ordinal
        );
        Assert.Equal([100e6, 200e6], best.Offered.Select(p => Si.Hertz(p.Clock)));
    }

    [Fact]
    public void Interval_CurrentThatMayNotRise_HasNoUpperEnd()
    {
        // The waiting current rises by less than it scatters.
        var best = BestClock.Of(
            Split(
                (setup, f) =>
                    Read(setup, SupplyPhase.Waiting, 8e-3 + 1e-13 * f)
                        .Concat(Read(setup, SupplyPhase.Computing, 6e-3 + 1.2e-10 * f))
            )
        );

        Assert.Null(best.Interval!.Upper);
        Assert.Equal(400e6, Si.Hertz(best.Clock));
        Assert.EndsWith("and up", best.Interval.ToString(), StringComparison.Ordinal);
        Assert.Contains(
            best.Notes,
            n => n.StartsWith("What rises with the clock can't be told", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void Interval_ScatteredStudies_HoldsTheTruth(int trials)
    {
        const int studies = 600;
        var random = RandomStream.Of(21);
        var held = 0;
        for (var i = 0; i < studies; i++)
        {
            var split = ClockSplit.Of(
                Clocks.Select(m =>
                {
                    var setup = Bench.At(Bench.Marl, m);
                    var meter = Bench.Meter(resolution: 1e-7);
                    return SetupSummary.Of(
                        Bench.Series(setup, Bench.Fine, Around(0.1 + 40 / m)),
                        Bench
                            .Read(setup, meter, SupplyPhase.Waiting, null, Around(8e-3 + 2e-5 * m))
                            .Concat(Bench.Read(setup, meter, SupplyPhase.Computing, null, Around(6e-3 + 12e-5 * m)))
                    );
                })
            );
            var interval = BestClock.Of(split, new BestClockOptions { Draws = 1000 }).Interval!;
            var isAbove = interval.Upper is { } upper && BestHertz > Si.Hertz(upper);
            held += BestHertz >= Si.Hertz(interval.Lower) && !isAbove ? 1 : 0;
        }

        // Three simulation errors below 94.5 %; tests/McuBench.Simulation has the whole table.
        Assert.InRange((double)held / studies, 0.917, 1);

        double[] Around(double value) =>
            [.. Enumerable.Range(0, trials).Select(_ => value * (1 + 0.003 * random.Normal()))];
    }

    [Fact]
    public void Interval_SameSeed_IsTheSameBits()
    {
        var split = Split(Phases);

        Assert.Equal(BestClock.Of(split).Interval, BestClock.Of(split).Interval);
        Assert.NotEqual(BestClock.Of(split).Interval, BestClock.Of(split, new BestClockOptions { Seed = 1 }).Interval);
    }

    [Fact]
    public void Bounds_SingleReadings_AreTheCornersByHand()
    {
        // A 10 ms timer and a 0.1 mA meter, at 100 and 400 MHz. Corners of the time polygon: (0.5 ± 5 ms, 0.2 ± 5 ms), with
        // t₀ = (4 t₂ − t₁)/3 and N = (t₁ − t₂)·4e8/3. Least N/t₀ at t₁ = 0.495, t₂ = 0.205; greatest at 0.505, 0.195.
        var timer = Bench.Tenths with
        {
            Resolution = Duration.FromMilliseconds(10),
        };
        var meter = Bench.Meter(resolution: 1e-4);
        var split = ClockSplit.Of(
            new[] { 100.0, 400 }.Select(m =>
            {
                var setup = Bench.At(Bench.Marl, m);
                return SetupSummary.Of(
                    Bench.Series(setup, timer, 0.1 + 40 / m),
                    Bench
                        .Read(setup, meter, SupplyPhase.Waiting, null, [8e-3 + 2e-5 * m])
                        .Concat(Bench.Read(setup, meter, SupplyPhase.Computing, null, [6e-3 + 12e-5 * m]))
                );
            })
        );
        var bounds = BestClock.Of(split).Bounds!;
        var perHertz = (Least: (6e-3 - 1e-4) / 3e8, Most: (6e-3 + 1e-4) / 3e8);
        double Base(double at100, double at400) => (4 * at100 - at400) / 3;
        var current = (Least: Base(18e-3 - 5e-5, 54e-3 + 5e-5), Most: Base(18e-3 + 5e-5, 54e-3 - 5e-5));
        var lower = Math.Sqrt((0.495 - 0.205) * 4e8 / (4 * 0.205 - 0.495) * current.Least / perHertz.Most);
        var upper = Math.Sqrt((0.505 - 0.195) * 4e8 / (4 * 0.195 - 0.505) * current.Most / perHertz.Least);

        Assert.Equal(lower, Si.Hertz(bounds.Lower), lower * 1e-9);
        Assert.Equal(upper, Si.Hertz(bounds.Upper!.Value), upper * 1e-9);
        Assert.Null(bounds.Confidence);
        Assert.StartsWith("bounds ", bounds.ToString(), StringComparison.Ordinal);
        Assert.InRange(BestHertz, lower, upper);
        Assert.Null(BestClock.Of(split).Interval);
    }

    [Fact]
    public void LeastEnergy_VoltageThatDiffersByClock_MayLieElsewhere()
    {
        // 400 MHz takes the least charge, but a voltage of 3.6 V where the others have 3.0 V.
        var best = BestClock.Of(
            Split((setup, f) => Phases(setup, f).Concat(Read(setup, SupplyPhase.Running, 0.03, f > 3e8 ? 3.6 : 3.0)))
        );

        Assert.Equal(400e6, Si.Hertz(best.BestOffered.Clock));
        Assert.Equal(200e6, Si.Hertz(best.LeastEnergy!.Clock));
        Assert.Equal(3.0 * Si.Coulombs(best.Offered[1].Charge.Value), Si.Joules(best.LeastEnergy.Energy!.Value), 1e-9);
    }

    [Fact]
    public void Repeated_IdleAndPeriod_MoveTheBestClock()
    {
        // Falling is N·(I_c − I_i): at 2 mA idle it is 4 mA · N, so f* = √(4e-3·40e6/(2e-11·0.1)).
        var task = new RepeatedTask(Duration.FromSeconds(2)) { Idle = ElectricCurrent.FromMilliamperes(2) };
        var best = BestClock.Of(Split(Phases), new BestClockOptions { Repeated = task });
        var f = Math.Sqrt(4e-3 * 40e6 / (2e-11 * 0.1));

        Assert.Equal(f, Si.Hertz(best.Clock), 1);
        Assert.Equal(40e6 / 1.9, Si.Hertz(best.SlowestInTime!.Value), 1e-3);
        var task1 = 0.1 * (8e-3 + 2e-11 * f) + 40e6 / f * (6e-3 + 1.2e-10 * f);
        Assert.Equal(task1 + 2e-3 * (2 - 0.1 - 40e6 / f), Si.Coulombs(best.Charge.Value), 1e-12);
        Assert.Null(best.Bounds);
    }

    [Fact]
    public void Repeated_WakeCharge_IsAddedAndMovesNothing()
    {
        var plain = new RepeatedTask(Duration.FromSeconds(2)) { Idle = ElectricCurrent.FromMilliamperes(2) };
        var waking = plain with { WakeCharge = ElectricCharge.FromCoulombs(1e-3) };
        var split = Split(Phases);
        var without = BestClock.Of(split, new BestClockOptions { Repeated = plain });
        var with = BestClock.Of(split, new BestClockOptions { Repeated = waking });

        Assert.Equal(without.Clock, with.Clock);
        Assert.Equal(1e-3, Si.Coulombs(with.Charge.Value) - Si.Coulombs(without.Charge.Value), 1e-12);
    }

    [Fact]
    public void Repeated_IdleReadAtTwoClocks_IsALineOfItsOwn()
    {
        // Idle 1 mA + 5 µA/MHz: rising gains k_i·(T − t₀), falling N·(I_c − I_i).
        var best = BestClock.Of(
            Split((setup, f) => Phases(setup, f).Concat(Read(setup, SupplyPhase.Idle, 1e-3 + 5e-12 * f))),
            new BestClockOptions { Repeated = new RepeatedTask(Duration.FromSeconds(1)) }
        );

        Assert.Equal(Math.Sqrt(5e-3 * 40e6 / (2e-12 + 5e-12 * 0.9)), Si.Hertz(best.Clock), 1);
    }

    [Fact]
    public void Repeated_ShortPeriod_ForcesAFasterClock()
    {
        // Idling at 6 mA makes nothing fall: the slowest clock that is in time, N/(T − t₀).
        var task = new RepeatedTask(Duration.FromSeconds(0.35)) { Idle = ElectricCurrent.FromMilliamperes(6.5) };
        var best = BestClock.Of(Split(Phases), new BestClockOptions { Repeated = task });

        Assert.Equal(BestClockCase.Slowest, best.Case);
        Assert.Equal(160e6, Si.Hertz(best.Clock), 1e-3);
        Assert.Equal([200e6, 400e6], best.Offered.Select(p => Si.Hertz(p.Clock)));
        Refusal.Is<ArgumentOutOfRangeException>(
            () => best.ChargeAt(Frequency.FromMegahertz(120)),
            "clock",
            "Clock must be at least 160 MHz, for the task to be done in 350 ms; was 120 MHz."
        );
    }

    [Fact]
    public void Repeated_PeriodTooShortForAnyClock_Refuses() =>
        Refusal.Is<ArgumentException>(
            () =>
                BestClock.Of(
                    Split(Phases),
                    new BestClockOptions
                    {
                        Repeated = new RepeatedTask(Duration.FromSeconds(0.15))
                        {
                            Idle = ElectricCurrent.FromAmperes(0),
                        },
                    }
                ),
            "options",
            "Period must leave time for the task at the highest clock of the range, 400 MHz; a run of Marl takes longer than 150 ms there."
        );

    [Fact]
    public void Repeated_NoIdleCurrent_Refuses() =>
        Refusal.Is<ArgumentException>(
            () =>
                BestClock.Of(
                    Split(Phases),
                    new BestClockOptions { Repeated = new RepeatedTask(Duration.FromSeconds(2)) }
                ),
            "repeated",
            "A repeated task must have an idle current, given or read; none was read of Marl."
        );

    [Fact]
    public void Of_NoCurrents_Refuses() =>
        Refusal.Is<ArgumentException>(
            () => BestClock.Of(Split((_, _) => [])),
            "split",
            "A best clock must rest on currents read at two clocks or more; those of Marl were read at fewer."
        );

    [Fact]
    public void ToString_Best_SaysClockIntervalAndRange()
    {
        var best = BestClock.Of(Split(Phases));

        Assert.StartsWith("least charge at 346 MHz (95 % interval ", best.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(", within 100 MHz to 400 MHz", best.ToString(), StringComparison.Ordinal);
        Assert.StartsWith(
            "Marl takes the least charge per task of the frame checksum at 346 MHz (95 % interval ",
            ClockStatement.Of(best),
            StringComparison.Ordinal
        );
    }

    private static ClockRange Range(double lowest, double highest) =>
        new(Frequency.FromMegahertz(lowest), Frequency.FromMegahertz(highest));

    private static ClockSplit Split(Func<Setup, double, IEnumerable<SupplyReading>> currents, double fixedTime = 0.1) =>
        ClockSplit.Of(
            Clocks.Select(m =>
            {
                var setup = Bench.At(Bench.Marl, m);
                return SetupSummary.Of(
                    Bench.Series(setup, Bench.Fine, EqualScatter.Select(e => fixedTime + 40 / m + e)),
                    currents(setup, m * 1e6)
                );
            })
        );

    private static IEnumerable<SupplyReading> Phases(Setup setup, double hertz) =>
        Currents(setup, hertz, SupplyPhase.Computing);

    private static IEnumerable<SupplyReading> Currents(Setup setup, double hertz, SupplyPhase computing) =>
        Read(setup, SupplyPhase.Waiting, 8e-3 + 2e-11 * hertz).Concat(Read(setup, computing, 6e-3 + 1.2e-10 * hertz));

    private static IEnumerable<SupplyReading> WholeRun(Setup setup, double hertz)
    {
        var computing = 40e6 / hertz;
        var charge = 0.1 * (8e-3 + 2e-11 * hertz) + computing * (6e-3 + 1.2e-10 * hertz);
        return Read(setup, SupplyPhase.Running, charge / (0.1 + computing));
    }

    private static IEnumerable<SupplyReading> Read(
        Setup setup,
        SupplyPhase phase,
        double amperes,
        double? volts = null
    ) =>
        Bench.Read(
            setup,
            Bench.Meter(resolution: 1e-6),
            phase,
            volts,
            (volts is null ? EqualScatter : Alone).Select(e => amperes + e)
        );
}
