using System.Runtime.InteropServices;

namespace McuBench.Stats.Resampling;

/// <summary>The standard deviation of values that come one by one (welford-1962).</summary>
[StructLayout(LayoutKind.Auto)]
internal struct RunningSpread
{
    private int _count;
    private double _mean;
    private double _squares;

    internal readonly double StandardDeviation => Math.Sqrt(_squares / (_count - 1));

    internal void Add(double value)
    {
        _count++;
        double deviation = value - _mean;
        _mean += deviation / _count;
        _squares += deviation * (value - _mean);
    }
}
