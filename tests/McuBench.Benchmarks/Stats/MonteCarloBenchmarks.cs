using BenchmarkDotNet.Attributes;
using McuBench.Stats.Uncertainty;

namespace McuBench.Benchmarks.Stats;

/// <summary>A million draws of a quotient of a normal and a rectangular input, by number of threads.</summary>
[MemoryDiagnoser]
public class MonteCarloBenchmarks
{
    private static readonly InputQuantity[] Inputs =
    [
        InputQuantity.FromStandardUncertainty("a", 3, 0.1),
        InputQuantity.FromRectangular("b", 2, 0.1),
    ];

    /// <summary>The threads to use.</summary>
    [Params(1, 2)]
    public int Threads { get; set; }

    /// <summary>Draws, model, sorting and both intervals.</summary>
    [Benchmark]
    public double MillionDraws() =>
        MonteCarlo.Run(Inputs, x => x[0] / x[1], options: new MonteCarloOptions { Threads = Threads }).Value;
}
