using BenchmarkDotNet.Attributes;
using McuBench.Stats;
using McuBench.Stats.Resampling;

namespace McuBench.Benchmarks.Stats;

/// <summary>Bootstrap and permutation; <c>resampling.R</c> and <c>resampling.py</c> beside this time the same work
/// elsewhere.</summary>
[MemoryDiagnoser]
public class ResamplingBenchmarks
{
    private readonly Sample _first = Sample.Of(RobustBenchmarks.Normal(30, 1));
    private readonly Sample _second = Sample.Of(RobustBenchmarks.Normal(30, 2));
    private readonly double[] _ten = RobustBenchmarks.Normal(10, 3);
    private readonly double[] _otherTen = RobustBenchmarks.Normal(10, 4);
    private readonly TwoSampleStatistic _medians = TwoSampleStatistic.RatioOf(Statistic.Median);
    private readonly TwoSampleStatistic _means = TwoSampleStatistic.RatioOf(Statistic.Mean);

    [Benchmark]
    public BootstrapResult RatioOfMedians() => Bootstrap.Of(_first, _second, _medians);

    [Benchmark]
    public BootstrapResult RatioOfMeans() => Bootstrap.Of(_first, _second, _means);

    [Benchmark]
    public PermutationResult ExactMeanDifference() => PermutationTest.MeanDifference(_ten, _otherTen);
}
