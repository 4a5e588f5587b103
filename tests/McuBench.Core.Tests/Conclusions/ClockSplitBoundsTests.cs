using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class ClockSplitBoundsTests
{
    private static readonly TrialTimer Hundredths = Bench.Tenths with { Resolution = Duration.FromMilliseconds(10) };

    [Fact]
    public void Of_TwoClocks_HasTheClosedHalfWidth()
    {
        // (r/2)(x₁ + x₂)/|x₁ − x₂| = 5 ms · 3 about 2·0.3 s − 0.5 s; clock.json has the same from linear programs.
        var bounds = Of(Hundredths, (100, 0.5), (200, 0.3));

        Assert.Equal(0.085, Si.Seconds(bounds.FixedTime!.Value.Lower), 1e-12);
        Assert.Equal(0.115, Si.Seconds(bounds.FixedTime!.Value.Upper), 1e-12);
        Assert.Equal(38e6, bounds.Cycles!.Value.Lower, 1e-3);
        Assert.Equal(42e6, bounds.Cycles!.Value.Upper, 1e-3);
        Assert.Equal(4, bounds.Corners.Count);
        Assert.Equal(
            "fixed time between 85 ms and 115 ms, cycles between 38 million and 42 million (bounds from 2 readings, not a confidence interval)",
            bounds.ToString()
        );
    }

    [Fact]
    public void Of_ThreeClocks_IsThePolygonOfTheLinearPrograms()
    {
        var bounds = Of(Hundredths, (80, 1.15), (120, 0.82), (160, 0.65), (240, 0.48));

        Assert.Equal(0.135, Si.Seconds(bounds.FixedTime!.Value.Lower), 1e-12);
        Assert.Equal(0.155, Si.Seconds(bounds.FixedTime!.Value.Upper), 1e-12);
        Assert.Equal((79.2e6, 81.6e6), (Math.Round(bounds.Cycles!.Value.Lower), Math.Round(bounds.Cycles.Value.Upper)));
    }

    [Fact]
    public void Of_ReadingsOffEveryLine_IsEmptyAndSaysSo()
    {
        var bounds = Of(Hundredths, (80, 1.15), (120, 0.90), (160, 0.65));

        Assert.True(bounds.IsEmpty);
        Assert.Null(bounds.FixedTime);
        Assert.Null(bounds.Cycles);
        Assert.StartsWith(
            "no fixed time and cycles agree with all 3 readings",
            bounds.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_TruncatingTimer_ReachesUpwards()
    {
        var truncating = Hundredths with { Reading = TimerReading.Truncated };
        var bounds = Of(truncating, (100, 0.5), (200, 0.3));

        Assert.Equal(0.6 - 0.51, Si.Seconds(bounds.FixedTime!.Value.Lower), 1e-12);
        Assert.Equal(0.62 - 0.5, Si.Seconds(bounds.FixedTime!.Value.Upper), 1e-12);
    }

    [Fact]
    public void Of_RunsWithoutScatter_AlwaysHoldsTheTruth()
    {
        var random = RandomStream.Of(11);
        for (var i = 0; i < 500; i++)
        {
            var (fixedTime, cycles) = (random.Rectangular(0, 0.2), random.Rectangular(2e7, 8e7));
            var bounds = Of(
                Hundredths,
                [
                    .. new[] { 80.0, 120, 160, 240 }.Select(m =>
                        (m, Math.Round((fixedTime + cycles / (m * 1e6)) * 100) / 100)
                    ),
                ]
            );

            Assert.InRange(
                fixedTime,
                Si.Seconds(bounds.FixedTime!.Value.Lower) - 1e-12,
                Si.Seconds(bounds.FixedTime!.Value.Upper) + 1e-12
            );
            Assert.InRange(cycles, bounds.Cycles!.Value.Lower - 1e-3, bounds.Cycles!.Value.Upper + 1e-3);
        }
    }

    [Fact]
    public void Of_OneClock_Refuses() =>
        Refusal.Is<ArgumentException>(
            () => Of(Hundredths, (100, 0.5)),
            "series",
            "Bounds must have two clocks or more; all were 100 MHz."
        );

    [Fact]
    public void Of_TwoTimers_Refuses() =>
        Refusal.Is<ArgumentException>(
            () =>
                ClockSplitBounds.Of(
                    [
                        Bench.Series(Bench.At(Bench.Marl, 100), Hundredths, 0.5),
                        Bench.Series(Bench.At(Bench.Marl, 200), Bench.Fine, 0.3),
                    ],
                    "Marl"
                ),
            "series",
            "Bounds must be of one workload and one timer (frame checksum, stop clock); one series was of frame checksum, fine timer."
        );

    private static ClockSplitBounds Of(TrialTimer timer, params (double Megahertz, double Seconds)[] readings) =>
        ClockSplitBounds.Of(
            readings.Select(r => Bench.Series(Bench.At(Bench.Marl, r.Megahertz), timer, r.Seconds)),
            "Marl"
        );
}
