using BenchmarkDotNet.Attributes;
using McuBench.Stats.Series;

namespace McuBench.Benchmarks.Series;

/// <summary>
/// Charge and energy of 1e8 samples in memory: exact sums, extremes included. <c>series.c</c>, <c>series.py</c> and
/// <c>series.R</c> time plain sums of the same samples; <c>series.sh</c> runs all four.
/// </summary>
/// <remarks>The traces are whole numbers of a converter's steps, as <c>series.py</c> makes them; those in decimals have
/// all 53 bits, as numbers from text have.</remarks>
public class IntegralBenchmarks
{
    private const double Step = 1e-5;

    private double[] _current = [];
    private double[] _voltage = [];
    private double[] _decimals = [];
    private float[] _currentSingle = [];
    private float[] _voltageSingle = [];
    private short[] _currentCodes = [];
    private short[] _voltageCodes = [];

    [Params(1_000_000, 100_000_000)]
    public int Samples { get; set; }

    [GlobalSetup]
    public void Make()
    {
        _currentCodes = new short[Samples];
        _voltageCodes = new short[Samples];
        for (int i = 0; i < Samples; i++)
        {
            _currentCodes[i] = (short)((i % 1000 < 50 ? 20000 : 40) + (int)(Random(31, i) >> 58) - 32);
            _voltageCodes[i] = (short)(13500 + (int)(Random(32, i) >> 59) - 16);
        }

        _current = Array.ConvertAll(_currentCodes, code => code * Math.ScaleB(1, -22));
        _voltage = Array.ConvertAll(_voltageCodes, code => code * Math.ScaleB(1, -12));
        _decimals = Array.ConvertAll(_currentCodes, code => code * 1e-7);
        _currentSingle = Array.ConvertAll(_current, value => (float)value);
        _voltageSingle = Array.ConvertAll(_voltage, value => (float)value);
    }

    [Benchmark]
    public double ChargeDouble() => Charge(integral => integral.Add(_current));

    [Benchmark]
    public double ChargeDoubleDecimals() => Charge(integral => integral.Add(_decimals));

    [Benchmark]
    public double ChargeSingle() => Charge(integral => integral.Add(_currentSingle));

    [Benchmark]
    public double ChargeInt16() => Charge(integral => integral.Add(_currentCodes));

    [Benchmark]
    public double EnergyDouble() => Charge(integral => integral.AddProducts(_voltage, _current));

    [Benchmark]
    public double EnergySingle() => Charge(integral => integral.AddProducts(_voltageSingle, _currentSingle));

    [Benchmark]
    public double EnergyInt16() => Charge(integral => integral.AddProducts(_voltageCodes, _currentCodes));

    /// <summary>Two halves, each on a thread of its own.</summary>
    [Benchmark]
    public double ChargeDoubleTwoThreads()
    {
        UniformIntegral[] halves = [new(Step), new(Step)];
        int half = Samples / 2;
        Parallel.For(0, 2, i => halves[i].Add(_current.AsSpan(i * half, half)));
        halves[0].Append(halves[1]);
        return halves[0].Figures()!.Trapezoid;
    }

    private static double Charge(Action<UniformIntegral> add)
    {
        var integral = new UniformIntegral(Step);
        add(integral);
        return integral.Figures()!.Trapezoid;
    }

    private static ulong Random(ulong stream, int index)
    {
        ulong x = unchecked((stream << 40) + ((ulong)index + 1) * 0x9E3779B97F4A7C15);
        x = unchecked((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9);
        x = unchecked((x ^ (x >> 27)) * 0x94D049BB133111EB);
        return x ^ (x >> 31);
    }
}
