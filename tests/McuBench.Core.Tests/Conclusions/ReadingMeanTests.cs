using McuBench.Core.Conclusions;
using McuBench.Core.Trials;
using McuBench.Stats.Intervals;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Readings in steps of 1, worked by hand.</summary>
public class ReadingMeanTests
{
    private static readonly ReadingWords Words = new("trial", "Marl", "step");

    [Fact]
    public void Of_EqualReadings_TakesTheStepUndivided()
    {
        // Uniform, half a step to either side at 95 %.
        var mean = Mean(TimerReading.Rounded, 24, 24, 24, 24, 24, 24, 24, 24, 24, 24);

        Assert.Equal(24, mean.Value);
        Assert.Equal(Math.Sqrt(1.0 / 12) / 0.95, mean.StandardUncertainty, 1e-15);
        Assert.Equal(double.PositiveInfinity, mean.DegreesOfFreedom);
        Assert.Equal(0.5, CoverageReach.Of(mean, 0.025), 1e-12);
        var only = Assert.Single(mean.Contributions).Source;
        Assert.False(only.AveragesDown);
        Assert.True(only.IsLimit);
    }

    [Theory]
    [InlineData(TimerReading.Rounded, SteppedReading.Rounded, 24)]
    [InlineData(TimerReading.Rounded, SteppedReading.Rounded, 23)]
    [InlineData(TimerReading.TickDifferenceRandomStart, SteppedReading.RandomStart, 24)]
    public void Of_FewSteps_HasMeanErrorAndDegreesOfFreedomOfTheLikelihood(
        TimerReading reading,
        SteppedReading stepped,
        double last
    )
    {
        double[] readings = [24, 24, 25, 24, last];
        var mean = Mean(reading, readings);
        var expected = SteppedMeanInterval.Of(readings, 1, stepped);

        Assert.Equal(expected.Value, mean.Value);
        Assert.Equal(expected.StandardError!.Value, mean.StandardUncertainty, 1e-14);
        Assert.Equal(expected.DegreesOfFreedom!.Value, mean.DegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void Of_ScatterOverAFewSteps_SharesTheVarianceOutBetweenScatterAndStep()
    {
        // s² = 80/9 of ten: scatter without rounding's own part is (80/9 − 1/12)/10, the step 1/120.
        double[] readings = [20, 22, 24, 26, 28, 20, 22, 24, 26, 28];
        var mean = Mean(TimerReading.Rounded, readings);

        Assert.Equal(9, mean.DegreesOfFreedom, 1e-9);
        Assert.Equal(Math.Sqrt(8.0 / 9), mean.StandardUncertainty, 1e-12);
        Assert.Equal(2, mean.Contributions.Count);
        Assert.Equal(Math.Sqrt((80.0 / 9 - 1.0 / 12) / 10), mean.Contributions[0].Amount, 1e-12);
        Assert.Equal(Math.Sqrt(1.0 / 120), mean.Contributions[1].Amount, 1e-12);
        Assert.All(mean.Contributions, c => Assert.True(c.Source.AveragesDown));
    }

    [Theory]
    [InlineData(TimerReading.Truncated)]
    [InlineData(TimerReading.TickDifferenceSynchronousStart)]
    public void Of_ReadingsCutOff_AreLiftedByHalfAStep(TimerReading reading) =>
        Assert.Equal(24.5, Mean(reading, 24, 24, 24).Value);

    [Fact]
    public void Of_RandomStart_AveragesTheStepDown()
    {
        var three = Mean(TimerReading.TickDifferenceRandomStart, 24, 24, 24);
        var ten = Mean(TimerReading.TickDifferenceRandomStart, 24, 24, 24, 24, 24, 24, 24, 24, 24, 24);

        Assert.Equal(24, ten.Value);
        Assert.True(ten.StandardUncertainty < 0.5 * three.StandardUncertainty);
        Assert.True(Assert.Single(ten.Contributions).Source.AveragesDown);
    }

    [Fact]
    public void Of_OneReading_HasNoInterval() =>
        Assert.Equal(
            "One trial alone: its scatter is unknown, so there is no interval and no comparison.",
            Mean(TimerReading.Rounded, 24).Missing
        );

    private static UncertainValue Mean(TimerReading reading, params double[] readings) =>
        ReadingMean.Of(readings, 1, reading, "series", Words);
}
