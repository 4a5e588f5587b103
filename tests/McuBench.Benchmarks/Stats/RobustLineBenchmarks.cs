using BenchmarkDotNet.Attributes;
using McuBench.Stats.Regression;

namespace McuBench.Benchmarks.Stats;

/// <summary>Lines by medians of slopes; <c>lines.py</c> beside this times SciPy on such data.</summary>
[MemoryDiagnoser]
public class RobustLineBenchmarks
{
    private double[] _x = [];
    private double[] _y = [];

    [Params(3000, 100_000)]
    public int Count { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        double[] noise = RobustBenchmarks.Normal(Count, 5);
        _x = [.. noise.Select((_, i) => i / 64.0)];
        _y = [.. _x.Select((x, i) => 3 + x / 2 + noise[i])];
    }

    [Benchmark]
    public double TheilSenWithInterval() => RobustLine.TheilSen(_x, _y).Slope.Value;

    [Benchmark]
    public double Siegel() => RobustLine.Siegel(_x, _y).Slope.Value;
}
