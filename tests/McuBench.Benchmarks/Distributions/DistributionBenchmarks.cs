using BenchmarkDotNet.Attributes;
using McuBench.Stats.Distributions;

namespace McuBench.Benchmarks.Distributions;

/// <summary>
/// Quantiles and exact distributions; <c>distributions.R</c> and <c>distributions.py</c> beside this time the same work in R
/// and SciPy. Each call is with fresh parameters or from cold, so that nothing is kept between calls.
/// </summary>
[MemoryDiagnoser]
public class DistributionBenchmarks
{
    private readonly StudentT _studentT = StudentT.Of(9.7);
    private readonly FisherF _fisherF = FisherF.Of(4, 17.5);
    private readonly ChiSquared _chiSquared = ChiSquared.Of(11.3);
    private readonly StudentizedRange _range = StudentizedRange.Of(4, 20);

    [Benchmark]
    public double StudentTQuantile() => _studentT.UpperQuantile(0.025);

    [Benchmark]
    public double StudentTQuantileWithNewDegreesOfFreedom() => StudentT.Of(9.7).UpperQuantile(0.025);

    [Benchmark]
    public double StudentTTail() => _studentT.UpperTail(2.3);

    [Benchmark]
    public double FisherFQuantile() => _fisherF.UpperQuantile(0.05);

    [Benchmark]
    public double ChiSquaredQuantile() => _chiSquared.UpperQuantile(0.05);

    [Benchmark]
    public double NoncentralTQuantile() => NoncentralT.Of(9, 4).Quantile(0.95);

    [Benchmark]
    public double StudentizedRangeCdf() => _range.Cdf(3.9);

    [Benchmark]
    public double StudentizedRangeQuantile() => _range.Quantile(0.95);

    [Benchmark]
    public double MannWhitneyFromCold() => RankDistribution.MannWhitney(50, 50).Cdf(1000);

    [Benchmark]
    public double SignedRankFromCold() => RankDistribution.SignedRank(50).Cdf(450);

    [Benchmark]
    public double KendallFromCold() => RankDistribution.Kendall(50).Cdf(200);
}
