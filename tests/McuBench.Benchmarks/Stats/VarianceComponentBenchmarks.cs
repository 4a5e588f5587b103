using BenchmarkDotNet.Attributes;
using McuBench.Stats.Hypotheses;

namespace McuBench.Benchmarks.Stats;

/// <summary>Variance components of 1,000 trials in 100 sessions of 10 specimens; <c>components.R</c> and <c>components.py</c>
/// beside this time the same work elsewhere.</summary>
[MemoryDiagnoser]
public class VarianceComponentBenchmarks
{
    private readonly double[] _values = Nested();
    private readonly int[] _specimens = [.. Enumerable.Range(0, 1000).Select(i => i / 100)];
    private readonly int[] _sessions = [.. Enumerable.Range(0, 1000).Select(i => i / 10)];

    [Benchmark]
    public ComponentAnalysis Moments() => NestedAnova.Of(NestedData.Of(_values, _specimens, _sessions));

    [Benchmark]
    public RemlResult RestrictedLikelihood() => NestedReml.Of(NestedData.Of(_values, _specimens, _sessions));

    // 955 values, so that the groups are of two sizes.
    [Benchmark]
    public RemlResult RestrictedLikelihoodUnbalanced() =>
        NestedReml.Of(NestedData.Of(_values.AsSpan(0, 955), _specimens[..955], _sessions[..955]));

    private static double[] Nested()
    {
        double[] specimens = RobustBenchmarks.Normal(10, 21);
        double[] sessions = RobustBenchmarks.Normal(100, 22);
        double[] scatter = RobustBenchmarks.Normal(1000, 23);
        return [.. scatter.Select((v, i) => 2 * specimens[i / 100] + sessions[i / 10] + 0.5 * v)];
    }
}
