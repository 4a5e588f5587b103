using McuBench.Core.Calculators;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Calculators;

/// <summary>Expected values worked by hand from round numbers, in SI doubles to 13 digits and more.</summary>
public class WorkRateTests
{
    private const double Relative = 1e-13;

    [Fact]
    public void Throughput_ThousandItemsIn2Point5Seconds_Is400PerSecond() =>
        Near(400, Si.Hertz(WorkRate.Throughput(1000, Duration.FromSeconds(2.5))));

    [Fact]
    public void Throughput_MicrosecondRun_KeepsAllDigits() =>
        Near(1e6 / 412.1, Si.Hertz(WorkRate.Throughput(1, Duration.FromMicroseconds(412.1))));

    [Fact]
    public void CyclesPerItem_HalfSecondAt160Megahertz_Is80Thousand() =>
        Near(
            80_000,
            WorkRate.CyclesPerItem(Duration.FromMilliseconds(500), Frequency.FromMegahertz(160), workItems: 1000)
        );

    [Fact]
    public void ItemsPerMegacycle_IsTheReciprocalOfCyclesPerItem() =>
        Near(12.5, WorkRate.ItemsPerMegacycle(1000, Duration.FromMilliseconds(500), Frequency.FromMegahertz(160)));

    [Fact]
    public void RunTimeAtClock_WithoutFixedTime_GoesWithTheReciprocalOfTheClock() =>
        Near(
            0.3,
            Si.Seconds(
                WorkRate.RunTimeAtClock(
                    Duration.FromSeconds(0.6),
                    Frequency.FromMegahertz(80),
                    Frequency.FromMegahertz(160)
                )
            )
        );

    [Fact]
    public void RunTimeAtClock_WithFixedTime_ScalesTheRestOnly() =>
        Near(
            0.1 + 0.25,
            Si.Seconds(
                WorkRate.RunTimeAtClock(
                    Duration.FromSeconds(0.6),
                    Frequency.FromMegahertz(80),
                    Frequency.FromMegahertz(160),
                    Duration.FromMilliseconds(100)
                )
            )
        );

    [Fact]
    public void RunTimeAtClock_FixedTimeBeyondTheRun_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () =>
                WorkRate.RunTimeAtClock(
                    Duration.FromSeconds(1),
                    Frequency.FromMegahertz(80),
                    Frequency.FromMegahertz(160),
                    Duration.FromSeconds(2)
                ),
            "fixedTime",
            "Fixed time must be at least 0 s and at most the run time of 1 s; was 2 s."
        );

    [Fact]
    public void Throughput_NoItems_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => WorkRate.Throughput(0, Duration.FromSeconds(1)),
            "workItems",
            "Work items must be at least 1; was 0."
        );

    [Fact]
    public void Throughput_ZeroTime_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => WorkRate.Throughput(1, Duration.Zero),
            "runTime",
            "Run time must be above zero; was 0 s."
        );

    [Fact]
    public void CyclesPerItem_NegativeClock_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => WorkRate.CyclesPerItem(Duration.FromSeconds(1), Frequency.FromMegahertz(-1), 1),
            "clock",
            "Clock must be above zero; was"
        );

    [Fact]
    public void CyclesPerItem_BeyondADouble_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => WorkRate.CyclesPerItem(Duration.FromSeconds(1e200), Frequency.FromHertz(1e200), 1),
            "runTime",
            "Cycles per item must be within the range of a double; was Infinity."
        );

    private static void Near(double expected, double actual) =>
        Assert.Equal(expected, actual, Math.Abs(expected) * Relative);
}
