using BenchmarkDotNet.Attributes;
using McuBench.Stats;
using McuBench.Stats.Descriptive;

namespace McuBench.Benchmarks.Stats;

/// <summary>Robust location and scale; <c>robust.R</c> and <c>robust.py</c> beside this time the same work elsewhere.</summary>
[MemoryDiagnoser]
public class RobustBenchmarks
{
    private readonly double[] _million = Normal(1_000_000, 1);
    private readonly double[] _hundredThousand = Normal(100_000, 2);
    private readonly double[] _quantiles = new double[7];
    private readonly Sample _first = Sample.Of(Normal(3000, 3));
    private readonly Sample _second = Sample.Of(Normal(3000, 4));

    [Benchmark]
    public double Mean() => Location.Mean(_million);

    [Benchmark]
    public double Median() => Location.Median(_million);

    [Benchmark]
    public double MedianAbsoluteDeviation() => Scale.MedianAbsoluteDeviation(_million);

    [Benchmark]
    public double SevenQuantiles()
    {
        Quantiles.Of(_million, [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99], _quantiles);
        return _quantiles[3];
    }

    [Benchmark]
    public double Sn() => Scale.Sn(_hundredThousand);

    [Benchmark]
    public double Qn() => Scale.Qn(_hundredThousand);

    [Benchmark]
    public double HodgesLehmannShift() => HodgesLehmann.Shift(_first, _second);

    internal static double[] Normal(int count, int seed)
    {
        var random = new Random(seed);
        double[] values = new double[count];
        for (int i = 0; i < count; i++)
        {
            double radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
            values[i] = 100 + 4 * radius * Math.Cos(Math.Tau * random.NextDouble());
        }

        return values;
    }
}
