using McuBench.Core.Trials;
using McuBench.Simulation;
using static System.FormattableString;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>A small part of what tests/McuBench.Simulation tables in docs/coverage.md: whole studies through the
/// library, the goals held within three simulation errors.</summary>
public class StudySimulationTests
{
    private const int Studies = 1000;
    private const ulong Seed = 41;
    private const double FalseVerdictGoal = 0.06;

    private static readonly int[] Trials = [3, 10];
    private static readonly double[] Steps = [0, 3, double.PositiveInfinity];
    private static readonly double[] Ratios = [1, 1.02];

    public static TheoryData<int, double, double> Cells =>
        new(from n in Trials from step in Steps from ratio in Ratios select (n, step, ratio));

    [Theory]
    [MemberData(nameof(Cells))]
    public void Compare_RoundedTimer_HoldsItsPromise(int n, double step, double ratio) =>
        KeepsItsPromise(
            new Scenario
            {
                Trials = n,
                StepOverSpread = step,
                Ratio = ratio,
            }
        );

    [Theory]
    [InlineData(TimerReading.Truncated)]
    [InlineData(TimerReading.TickDifferenceRandomStart)]
    [InlineData(TimerReading.TickDifferenceSynchronousStart)]
    public void Compare_OtherReadings_HoldsItsPromise(TimerReading reading) =>
        KeepsItsPromise(
            new Scenario
            {
                Trials = 5,
                StepOverSpread = 3,
                Reading = reading,
                Ratio = 1.02,
            }
        );

    [Theory]
    [InlineData(TimerPlace.Outside)]
    [InlineData(TimerPlace.OnBoard)]
    public void Compare_OscillatorWithATolerance_HoldsItsPromise(TimerPlace place) =>
        KeepsItsPromise(
            new Scenario
            {
                Trials = 5,
                Tolerance = 0.0005,
                Place = place,
            }
        );

    [Fact]
    public void Run_AnyNumberOfThreads_DrawsTheSameStudies()
    {
        var scenario = new Scenario { Trials = 3, StepOverSpread = 1 };

        var alone = Simulator.Run(scenario, 1, 100, Seed, threads: 1);
        var together = Simulator.Run(scenario, 1, 100, Seed, threads: 4);

        Assert.Equal(alone.Width, together.Width);
        Assert.Equal(alone.RatioHeld, together.RatioHeld);
    }

    private static void KeepsItsPromise(Scenario scenario)
    {
        var cell = Simulator.Run(scenario, 0, Studies, Seed, threads: 2);
        const double goal = CellResult.CoverageGoal;
        var isFalse = cell.FalselyDifferent ?? cell.FalselyWithin;

        Assert.True(cell.RunTimeHeld >= goal - cell.Allowance(goal), Invariant($"run time: {cell.RunTimeHeld:P1}"));
        Assert.True(cell.RatioHeld >= goal - cell.Allowance(goal), Invariant($"ratio: {cell.RatioHeld:P1}"));
        Assert.True(
            isFalse <= FalseVerdictGoal + cell.Allowance(FalseVerdictGoal),
            Invariant($"false verdicts: {isFalse:P1}")
        );
    }
}
