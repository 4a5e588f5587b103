using System.Runtime.InteropServices;

namespace McuBench.Stats;

/// <summary>
/// A running sum that keeps the low digits which plain addition drops: its error does not grow with the number of
/// terms (neumaier-1974).
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal struct CompensatedSum
{
    private double _sum;
    private double _lost;

    /// <summary>Adds a term.</summary>
    internal void Add(double term)
    {
        double sum = _sum + term;
        // The smaller operand is the one whose low digits fell off.
        _lost += Math.Abs(_sum) >= Math.Abs(term) ? _sum - sum + term : term - sum + _sum;
        _sum = sum;
    }

    /// <summary>The sum so far; not finite when the plain sum overflowed on the way.</summary>
    internal readonly double Value => _sum + _lost;
}
