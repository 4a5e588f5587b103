using FsCheck.Xunit;
using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Trials;

/// <summary>A 16 bit counter at 1 MHz turns in 65.536 ms.</summary>
public class TickCounterTests
{
    private static readonly ulong[] OverTheTurn = [65_000, 65_500, 464, 20_464, 54_928];
    private static readonly ulong[] FiveThousand = [0, 5_000];
    private static readonly ulong[] Backwards = [100, 99];
    private static readonly ulong[] TooLarge = [1, 65_536];

    [Fact]
    public void Unwrap_SeriesOverTheTurn_CountsOn() =>
        Assert.Equal(
            [0, 500, 1_000, 21_000, 55_464],
            At(16).Unwrap(OverTheTurn, Duration.FromMilliseconds(60)).Select(t => (int)t)
        );

    [Fact]
    public void Unwrap_SixtyFourBits_CountsOverTheTurnToo() =>
        Assert.Equal([0UL, 15UL], At(64).Unwrap([ulong.MaxValue - 4, 10], Duration.FromSeconds(1)));

    [Property]
    public bool Unwrap_AnySteps_GivesThemBack(ushort[] steps, byte extra, ulong start)
    {
        var counter = At(16 + extra % 49);
        var mask = ulong.MaxValue >> (64 - counter.Bits);
        ulong[] truth = [0, .. steps.Select((_, i) => steps.Take(i + 1).Aggregate(0UL, (sum, s) => sum + Step(s)))];
        ulong[] counts = [.. truth.Select(t => unchecked(start + t) & mask)];

        return counter.Unwrap(counts, Duration.FromMilliseconds(60)).SequenceEqual(truth);

        static ulong Step(ushort s) => s % 60_000UL;
    }

    [Fact]
    public void Unwrap_GapThatMayHoldATurn_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => At(16).Unwrap(OverTheTurn, Duration.FromMilliseconds(65.536)),
            "longestGap",
            "Longest time between counts must be shorter than a turn of the 16 bit counter, 65.54 ms; was 65.536 ms, and turns can't be counted: read it more often, or give times of a coarser timer."
        );

    [Fact]
    public void Unwrap_ToleranceThatMakesATurnFit_IsRefused()
    {
        // 65 ms at 1 MHz + 1 % are 65,650 ticks.
        Assert.Equal(2, At(16).Unwrap(FiveThousand, Duration.FromMilliseconds(65)).Length);
        Refusal.Is<ArgumentOutOfRangeException>(
            () => At(16, 0.01).Unwrap(FiveThousand, Duration.FromMilliseconds(65)),
            "longestGap",
            "Longest time between counts must be shorter than a turn"
        );
    }

    [Fact]
    public void Unwrap_CountsOutOfOrder_AreRefusedWithTheirPlace() =>
        Refusal.Is<ArgumentException>(
            () => At(16).Unwrap(Backwards, Duration.FromMilliseconds(10)),
            "counts",
            "Count at position 1 must lie within 10 ms of the one before; it comes 65535 ticks after it, which takes 65.54 ms: a reading was lost, or counts are out of order."
        );

    [Fact]
    public void Unwrap_CountBeyondItsBits_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => At(16).Unwrap(TooLarge, Duration.FromMilliseconds(10)),
            "counts",
            "Count at position 1 must fit the counter's 16 bits, at most 65535; was 65536."
        );

    [Fact]
    public void Unwrap_CoarseTimes_DecideTheTurns()
    {
        // 5,000 ticks and three turns are 201.608 ms.
        var ticks = At(16, 1e-4).Unwrap(FiveThousand, Times(0, 0.2), Duration.FromMilliseconds(10));

        Assert.Equal([0UL, 5_000UL + 3 * 65_536], ticks);
    }

    [Fact]
    public void Unwrap_CoarseTimesThatLeaveTwo_AreRefused() =>
        Refusal.Is<ArgumentException>(
            () => At(16).Unwrap(FiveThousand, Times(0, 0.2), Duration.FromMilliseconds(40)),
            "counts",
            "Count at position 1 must agree with one number of turns of the 16 bit counter; in 200.0 ms within 80 ms after the one before 2 to 4 do."
        );

    [Fact]
    public void Unwrap_CoarseTimesThatLeaveNone_AreRefused() =>
        Refusal.Is<ArgumentException>(
            () => At(16).Unwrap(FiveThousand, Times(0, 0.23), Duration.FromMilliseconds(1)),
            "counts",
            "Count at position 1 must agree with one number of turns of the 16 bit counter; in 230.0 ms within 2.0 ms after the one before none does."
        );

    [Fact]
    public void SpanOf_Ticks_ReachesATickAndTheToleranceEitherWay()
    {
        var span = At(16, 0.01).SpanOf(1000);

        Assert.Equal(1e-3, Si.Seconds(span.Nominal), 1e-18);
        Assert.Equal(999 / 1.01e6, Si.Seconds(span.Shortest), 1e-18);
        Assert.Equal(1001 / 0.99e6, Si.Seconds(span.Longest), 1e-18);
        Assert.Equal(0, Si.Seconds(At(16).SpanOf(0).Shortest));
    }

    [Fact]
    public void RunTimes_PairsOverTheTurn_GiveTrialsOfItsTimer()
    {
        var counter = At(16, 50e-6);
        var times = counter.RunTimes([(65_000, 464), (10, 1_012)], Duration.FromMilliseconds(5));
        var series = TrialSeries.Of(Sketch.MarlAt200, Sketch.Echo, counter.ToTimer("cycle counter"), times);

        Assert.Equal([1e-3, 1.002e-3], series.RunTimes.Select(t => Si.Seconds(t)));
        Assert.Equal(1e-6, Si.Seconds(series.Timer.Resolution), 1e-20);
        Assert.Equal(TimerReading.TickDifferenceRandomStart, series.Timer.Reading);
        Assert.Equal(50e-6, Si.Fraction(series.Timer.Tolerance!.Value), 1e-18);
    }

    [Fact]
    public void RunTimes_RunWithinOneTick_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => At(16).RunTimes([(1, 20), (7, 7)], Duration.FromMilliseconds(5)),
            "runs",
            "Run at position 1 must take a tick or more and at most 5 ms; its counts 7 and 7 are 0 ticks apart, 0 s."
        );

    [Theory]
    [InlineData(15)]
    [InlineData(65)]
    public void Bits_OutsideSixteenToSixtyFour_AreRefused(int bits) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => At(bits),
            "bits",
            FormattableString.Invariant($"Counter's bits must be 16 to 64; were {bits}.")
        );

    private static TickCounter At(int bits, double tolerance = 0) =>
        new(bits, new Clock(Frequency.FromMegahertz(1)) { Tolerance = Ratio.FromDecimalFractions(tolerance) });

    private static Duration[] Times(params double[] seconds) => [.. seconds.Select(s => Duration.FromSeconds(s))];
}
