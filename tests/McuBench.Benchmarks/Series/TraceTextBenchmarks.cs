using BenchmarkDotNet.Attributes;
using McuBench.Core.Supply.Traces;

namespace McuBench.Benchmarks.Series;

/// <summary>Charge from a trace in text: the file that the environment variable MCUBENCH_TRACE names, as
/// <c>series.sh</c> sets it for all that it times.</summary>
[MemoryDiagnoser]
public class TraceTextBenchmarks
{
    private string _path = "";

    [GlobalSetup]
    public void Find() =>
        _path =
            Environment.GetEnvironmentVariable("MCUBENCH_TRACE")
            ?? throw new InvalidOperationException(
                "MCUBENCH_TRACE must name a trace in text; series.py text makes one."
            );

    [Benchmark]
    public double Charge()
    {
        using var stream = new FileStream(_path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1);
        var integrator = new TraceIntegrator();
        TraceText.Read(stream, "trace.csv", integrator);
        return integrator.Totals()!.ChargeHeld.Coulombs;
    }
}
