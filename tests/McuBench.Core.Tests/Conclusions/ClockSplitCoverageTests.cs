using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Simulated studies of t = 0.1 s + 40 million cycles / f with relative scatter: how often the 95 % intervals
/// hold the model's own values, and how often a line that holds is refuted.</summary>
public class ClockSplitCoverageTests
{
    private const int Studies = 2000;
    private const double FixedSeconds = 0.1;
    private const double Cycles = 40e6;

    private static readonly double[] TwoClocks = [100, 200];
    private static readonly double[] ThreeClocks = [80, 160, 240];
    private static readonly double[] FourClocks = [40, 80, 120, 160];

    [Theory]
    [InlineData(3, false)]
    [InlineData(10, false)]
    [InlineData(3, true)]
    [InlineData(10, true)]
    public void Of_ModelOfAFixedAndAScalingPart_HoldsTheModelsValues(int trials, bool three)
    {
        var (ofFixed, ofCycles, _) = Simulate(three ? ThreeClocks : TwoClocks, trials, Bench.Fine, waitStates: 0);

        // Three simulation errors below 94.5 %.
        Assert.InRange(ofFixed, 0.93, 1);
        Assert.InRange(ofCycles, 0.93, 1);
    }

    [Fact]
    public void Of_CoarseTimer_HoldsTheModelsValues()
    {
        var timer = new TrialTimer("coarse", UnitsNet.Duration.FromMilliseconds(5), TimerReading.Rounded)
        {
            Tolerance = UnitsNet.Ratio.FromPercent(0),
        };
        var (ofFixed, ofCycles, _) = Simulate(ThreeClocks, 5, timer, waitStates: 0);

        Assert.InRange(ofFixed, 0.93, 1);
        Assert.InRange(ofCycles, 0.93, 1);
    }

    [Theory]
    [InlineData(3, false)]
    [InlineData(5, false)]
    [InlineData(5, true)]
    public void LackOfFit_LineThatHolds_IsRefutedInFivePercent(int trials, bool four) =>
        Assert.InRange(
            Simulate(four ? FourClocks : ThreeClocks, trials, Bench.Fine, waitStates: 0).Refuted,
            0.035,
            0.065
        );

    [Fact]
    public void LackOfFit_WaitStatesAtTheHighestClock_IsRefuted() =>
        Assert.InRange(Simulate(ThreeClocks, 10, Bench.Fine, waitStates: 0.10).Refuted, 0.9, 1);

    private static (double OfFixed, double OfCycles, double Refuted) Simulate(
        double[] clocks,
        int trials,
        TrialTimer timer,
        double waitStates
    )
    {
        var random = new Random(7);
        var step = Si.Seconds(timer.Resolution);
        var (ofFixed, ofCycles, refuted) = (0, 0, 0);
        for (var i = 0; i < Studies; i++)
        {
            var shift = random.NextDouble() * step;
            var split = ClockSplit.Of(
                clocks.Select(megahertz =>
                {
                    var cycles = Cycles * (megahertz == clocks[^1] ? 1 + waitStates : 1);
                    var truth = FixedSeconds + shift + cycles / (megahertz * 1e6);
                    return SetupSummary.Of(
                        Bench.Series(
                            Bench.At(Bench.Marl, megahertz),
                            timer,
                            Enumerable
                                .Range(0, trials)
                                .Select(_ => Math.Round(truth * (1 + 0.01 * Gaussian(random)) / step) * step)
                        )
                    );
                })
            );
            ofFixed += Holds(split.FixedTime.Lower, split.FixedTime.Upper, FixedSeconds + shift);
            ofCycles += split.Cycles.Lower <= Cycles && Cycles <= split.Cycles.Upper ? 1 : 0;
            refuted += split.LackOfFit is { IsRefuted: true } ? 1 : 0;
        }

        return ((double)ofFixed / Studies, (double)ofCycles / Studies, (double)refuted / Studies);
    }

    private static int Holds(UnitsNet.Duration? lower, UnitsNet.Duration? upper, double truth) =>
        Si.Seconds(lower!.Value) <= truth && truth <= Si.Seconds(upper!.Value) ? 1 : 0;

    private static double Gaussian(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
