using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Trials;

public sealed class TrialTimerTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    public void New_ResolutionNotAboveZero_IsRefused(double seconds) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new TrialTimer("display", Duration.FromSeconds(seconds), TimerReading.Rounded),
            "Resolution",
            "Timer's resolution must be above zero; was "
        );

    [Fact]
    public void New_BadParts_AreRefused()
    {
        var step = Duration.FromSeconds(0.1);
        var timer = new TrialTimer("display", step, TimerReading.Rounded);

        Refusal.Is<ArgumentException>(
            () => new TrialTimer("", step, TimerReading.Rounded),
            "Name",
            "Timer's name must hold"
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new TrialTimer("display", step, (TimerReading)8),
            "Reading",
            "Timer's reading must be one of Rounded, Truncated, TickDifferenceRandomStart, TickDifferenceSynchronousStart; was 8."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = timer with { Place = (TimerPlace)3 },
            "Place",
            "Timer's place must be one of OnBoard, Outside; was 3."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = timer with { Tolerance = Ratio.FromPercent(100) },
            "Tolerance",
            "Timer's tolerance must be at least 0 % and below 100 %; was "
        );
    }

    [Theory]
    [InlineData(TimerReading.Rounded, 0.05, 0.05)]
    [InlineData(TimerReading.Truncated, 0, 0.1)]
    [InlineData(TimerReading.TickDifferenceSynchronousStart, 0, 0.1)]
    [InlineData(TimerReading.TickDifferenceRandomStart, 0.1, 0.1)]
    public void Reach_OfEachReading_IsWhereTheTruthMayLie(TimerReading reading, double below, double above)
    {
        var reach = new TrialTimer("display", Duration.FromMilliseconds(100), reading).Reach;

        Assert.Equal(below, reach.Below.Seconds);
        Assert.Equal(above, reach.Above.Seconds);
    }
}
