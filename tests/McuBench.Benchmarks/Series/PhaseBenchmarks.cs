using BenchmarkDotNet.Attributes;
using McuBench.Stats.Series;

namespace McuBench.Benchmarks.Series;

/// <summary>Phases by thresholds over 1e8 samples with 2e5 changes, each phase summed; and the plain integral of the same
/// samples beside it.</summary>
public class PhaseBenchmarks
{
    private double[] _current = [];

    [Params(100_000_000)]
    public int Samples { get; set; }

    [GlobalSetup]
    public void Make()
    {
        _current = new double[Samples];
        for (int i = 0; i < Samples; i++)
        {
            _current[i] = (i % 1000 < 50 ? 20000 : 40 + i * 7919L % 64) * 1e-7;
        }
    }

    [Benchmark(Baseline = true)]
    public double Integral()
    {
        var integral = new UniformIntegral(1e-5);
        integral.Add(_current);
        return integral.Figures()!.Trapezoid;
    }

    [Benchmark]
    public int Phases()
    {
        const int piece = 1 << 15;
        var scanner = new PhaseScanner(5e-4, 1e-3, leastLength: 10);
        for (int from = 0; from < Samples; from += piece)
        {
            scanner.Add(_current.AsSpan(from, Math.Min(piece, Samples - from)));
        }

        return scanner.Phases().Count;
    }
}
