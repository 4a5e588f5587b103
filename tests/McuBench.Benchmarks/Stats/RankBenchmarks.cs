using BenchmarkDotNet.Attributes;
using McuBench.Stats;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;

namespace McuBench.Benchmarks.Stats;

/// <summary>Rank tests and their intervals, from values in the order taken; <c>ranks.R</c> and <c>ranks.py</c> beside this
/// time the same work elsewhere.</summary>
[MemoryDiagnoser]
public class RankBenchmarks
{
    private readonly double[] _first = RobustBenchmarks.Normal(3000, 3);
    private readonly double[] _second = RobustBenchmarks.Normal(3000, 4);
    private readonly double[] _few = RobustBenchmarks.Normal(50, 5);
    private readonly double[] _others = RobustBenchmarks.Normal(50, 6);
    private readonly double[] _inSteps = [.. RobustBenchmarks.Normal(50, 7).Select(value => Math.Round(value))];
    private readonly double[] _otherSteps = [.. RobustBenchmarks.Normal(50, 8).Select(value => Math.Round(value))];
    private readonly RankTestOptions _centre = new() { NullValue = 100, Distribution = NullDistribution.Exact };

    [Benchmark]
    public Estimate ShiftInterval() => HodgesLehmannInterval.Shift(Sample.Of(_first), Sample.Of(_second));

    [Benchmark]
    public Estimate LocationInterval() => HodgesLehmannInterval.Location(Sample.Of(_first));

    [Benchmark]
    public double ExactMannWhitney() => TwoSample.MannWhitney(Sample.Of(_few), Sample.Of(_others)).PValue;

    [Benchmark]
    public double ExactMannWhitneyWithTies() =>
        TwoSample.MannWhitney(Sample.Of(_inSteps), Sample.Of(_otherSteps)).PValue;

    [Benchmark]
    public double ExactSignedRank() => OneSample.SignedRank(Sample.Of(_few), options: _centre).PValue;

    [Benchmark]
    public double NormalMannWhitney() => TwoSample.MannWhitney(Sample.Of(_first), Sample.Of(_second)).PValue;
}
