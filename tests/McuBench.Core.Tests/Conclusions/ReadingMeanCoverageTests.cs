using McuBench.Core.Conclusions;
using McuBench.Core.Trials;
using McuBench.Stats.Distributions;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>
/// The rule for readings in steps keeps its promise: in simulated studies, with the truth anywhere on the timer's grid,
/// 95 % intervals hold the truth in at least 94 %, for the mean and for the difference of two (to first order the
/// logarithm of the ratio).
/// Whole studies, more of them: docs/coverage.md.
/// </summary>
public class ReadingMeanCoverageTests
{
    private const int Studies = 2000;
    private const double Goal = 0.94;

    /// <summary>Three simulation errors at the goal.</summary>
    private static readonly double Allowance = 3 * Math.Sqrt(Goal * (1 - Goal) / Studies);

    private static readonly int[] Trials = [3, 5, 10, 30];

    private static readonly double[] StepsOverScatter = [0, 0.5, 1, 3, 10, double.PositiveInfinity];

    private static readonly ReadingWords Words = new("trial", "simulated", "step");

    public static TheoryData<int, double> Cells =>
        new(from n in Trials from stepOverScatter in StepsOverScatter select (n, stepOverScatter));

    [Theory]
    [MemberData(nameof(Cells))]
    public void Of_Rounded_HoldsTheTruth(int n, double stepOverScatter) =>
        Holds(n, stepOverScatter, TimerReading.Rounded);

    [Theory]
    [InlineData(3, 1)]
    [InlineData(3, double.PositiveInfinity)]
    [InlineData(10, 3)]
    [InlineData(30, double.PositiveInfinity)]
    public void Of_Truncated_HoldsTheTruth(int n, double stepOverScatter) =>
        Holds(n, stepOverScatter, TimerReading.Truncated);

    [Theory]
    [InlineData(3, 1)]
    [InlineData(3, 10)]
    [InlineData(5, 3)]
    [InlineData(10, double.PositiveInfinity)]
    [InlineData(30, 10)]
    public void Of_RandomStart_HoldsTheTruth(int n, double stepOverScatter) =>
        Holds(n, stepOverScatter, TimerReading.TickDifferenceRandomStart);

    [Fact]
    public void Of_StepAsLargeAsTheScatterAndThirtyTrials_IsHardlyWiderThanWithoutAStep()
    {
        // The rules that add or keep r²/12 are 1.5 to 1.8 times as wide here.
        var coarse = Simulate(30, 1, TimerReading.Rounded).Width;
        var student = 2 * StudentT.Of(29).UpperQuantile(0.025) * Math.Sqrt((1 + 1.0 / 12) / 30);

        Assert.InRange(coarse / student, 0.95, 1.03);
    }

    [Fact]
    public void Of_NoScatter_IsAsWideAsTheStepAndNoWiderWithFewerTrials()
    {
        Assert.Equal(1, Simulate(30, double.PositiveInfinity, TimerReading.Rounded).Width, 1e-9);
        Assert.Equal(1, Simulate(3, double.PositiveInfinity, TimerReading.Rounded).Width, 1e-9);
    }

    [Fact]
    public void Of_StepThreeTimesTheScatterAndTenTrials_IsHalfAsWideAsWithTheStepUndivided()
    {
        // The larger of s²/n and r²/12 at n − 1 degrees of freedom: 2 · 2.262 · 0.2887 · 3 in units of the scatter.
        var coarse = Simulate(10, 3, TimerReading.Rounded).Width;

        Assert.InRange(coarse / (2 * StudentT.Of(9).UpperQuantile(0.025) / Math.Sqrt(12)), 0.45, 0.6);
    }

    private static void Holds(int n, double stepOverScatter, TimerReading reading)
    {
        var (ofMean, ofRatio, _) = Simulate(n, stepOverScatter, reading);

        Assert.True(ofMean >= Goal - Allowance, FormattableString.Invariant($"mean: {ofMean:P1}"));
        Assert.True(ofRatio >= Goal - Allowance, FormattableString.Invariant($"ratio: {ofRatio:P1}"));
    }

    private static (double OfMean, double OfRatio, double Width) Simulate(
        int n,
        double stepOverScatter,
        TimerReading reading
    )
    {
        var random = new Random(20_26 + n);
        var step = stepOverScatter == 0 ? 1e-9 : 1;
        var scatter =
            stepOverScatter == 0 ? 1
            : double.IsInfinity(stepOverScatter) ? 0
            : 1 / stepOverScatter;
        var (ofMean, ofRatio) = (0, 0);
        double width = 0;
        for (var i = 0; i < Studies; i++)
        {
            var (a, errorOfA) = Draw(random, n, step, scatter, reading, "a");
            var (b, errorOfB) = Draw(random, n, step, scatter, reading, "b");
            var reach = Reach(a);
            width += 2 * reach / Studies;
            ofMean += Math.Abs(errorOfA) <= reach ? 1 : 0;
            ofRatio += Math.Abs(errorOfA - errorOfB) <= Reach(a.Minus(b)) ? 1 : 0;
        }

        return ((double)ofMean / Studies, (double)ofRatio / Studies, width);
    }

    private static (UncertainValue Mean, double Error) Draw(
        Random random,
        int n,
        double step,
        double scatter,
        TimerReading reading,
        string series
    )
    {
        var truth = 20 + random.NextDouble();
        var readings = new double[n];
        for (var i = 0; i < n; i++)
        {
            var time = truth + scatter * Gaussian(random);
            readings[i] =
                reading switch
                {
                    TimerReading.Rounded => Math.Round(time / step),
                    TimerReading.TickDifferenceRandomStart => Math.Floor(time / step + random.NextDouble()),
                    _ => Math.Floor(time / step),
                } * step;
        }

        var mean = ReadingMean.Of(readings, step, reading, series, Words);
        return (mean, mean.Value - truth);
    }

    private static double Reach(UncertainValue value) => CoverageReach.Of(value, 0.025);

    private static double Gaussian(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
