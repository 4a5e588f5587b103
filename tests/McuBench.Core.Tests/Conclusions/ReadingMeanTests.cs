using McuBench.Core.Conclusions;
using McuBench.Core.Trials;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Readings in steps of 1, worked by hand.</summary>
public class ReadingMeanTests
{
    private static readonly ReadingWords Words = new("trial", "Marl", "step");

    [Fact]
    public void Of_EqualReadings_TakesTheStepUndivided()
    {
        var mean = Mean(TimerReading.Rounded, 24, 24, 24, 24, 24, 24, 24, 24, 24, 24);

        Assert.Equal(24, mean.Value);
        Assert.Equal(Math.Sqrt(1.0 / 12), mean.StandardUncertainty, 1e-15);
        Assert.Equal(double.PositiveInfinity, mean.DegreesOfFreedom);
        Assert.False(Assert.Single(mean.Contributions).Source.AveragesDown);
    }

    [Fact]
    public void Of_ScatterBelowTheStep_TakesTheStepUndividedWithTheScattersDegreesOfFreedomInside()
    {
        // One of five differs: s² = 0.2, s²/n = 0.04 against 1/12; ν = 4·(0.08333/0.04)².
        var mean = Mean(TimerReading.Rounded, 24, 24, 25, 24, 24);

        Assert.Equal(24.2, mean.Value, 1e-14);
        Assert.Equal(Math.Sqrt(1.0 / 12), mean.StandardUncertainty, 1e-15);
        Assert.Equal(4 * Math.Pow(1 / 12.0 / 0.04, 2), mean.DegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void Of_ScatterOverThreeSteps_AveragesTheStepOut()
    {
        // Deviations of 4, 2 and 0: s² = 80/9; the bias that rounding leaves at such a scatter is nothing.
        double[] readings = [20, 22, 24, 26, 28, 20, 22, 24, 26, 28];
        var mean = Mean(TimerReading.Rounded, readings);

        Assert.Equal(Math.Sqrt(80.0 / 9 / 10), mean.StandardUncertainty, 1e-12);
        Assert.Equal(9, mean.DegreesOfFreedom, 1e-9);
        Assert.True(Assert.Single(mean.Contributions).Source.AveragesDown);
    }

    [Fact]
    public void Of_ScatterOverJustThreeSteps_KeepsTheBiasThatRoundingLeaves()
    {
        // Eight of ten alike: s² = 2/9, so σ² = 2/9 − 1/12 = 5/36. Bias² = Σ exp(−4π²k²·5/36)/(2π²k²).
        double[] readings = [24, 24, 24, 24, 24, 24, 24, 24, 23, 25];
        var mean = Mean(TimerReading.Rounded, readings);
        var bias = Math.Exp(-4 * Math.PI * Math.PI * 5 / 36) / (2 * Math.PI * Math.PI);

        Assert.Equal(2, mean.Contributions.Count);
        Assert.Equal(Math.Sqrt(2.0 / 9 / 10 + bias), mean.StandardUncertainty, 1e-9);
    }

    [Theory]
    [InlineData(TimerReading.Truncated)]
    [InlineData(TimerReading.TickDifferenceSynchronousStart)]
    public void Of_ReadingsCutOff_AreLiftedByHalfAStep(TimerReading reading) =>
        Assert.Equal(24.5, Mean(reading, 24, 24, 24).Value);

    [Fact]
    public void Of_RandomStart_AveragesTheStepDown()
    {
        // Variance r²/6 a reading at least: ten equal readings give 1/60.
        var mean = Mean(TimerReading.TickDifferenceRandomStart, 24, 24, 24, 24, 24, 24, 24, 24, 24, 24);

        Assert.Equal(24, mean.Value);
        Assert.Equal(Math.Sqrt(1.0 / 60), mean.StandardUncertainty, 1e-15);
        Assert.True(Assert.Single(mean.Contributions).Source.AveragesDown);
    }

    [Fact]
    public void Of_TwoReadings_HaveOneDegreeOfFreedomWhateverTheStep() =>
        Assert.Equal(1, Mean(TimerReading.Rounded, 24, 24).DegreesOfFreedom);

    [Fact]
    public void Of_OneReading_HasNoInterval() =>
        Assert.Equal(
            "One trial alone: its scatter is unknown, so there is no interval and no comparison.",
            Mean(TimerReading.Rounded, 24).Missing
        );

    private static UncertainValue Mean(TimerReading reading, params double[] readings) =>
        ReadingMean.Of(readings, 1, reading, "series", Words);
}
