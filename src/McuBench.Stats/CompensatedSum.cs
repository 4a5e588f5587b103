using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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

    /// <summary>The sum of values, four at a time; the same on every machine, whatever its vectors. O(n).</summary>
    internal static double Of(ReadOnlySpan<double> values)
    {
        Vector256<double> sums = Vector256<double>.Zero;
        Vector256<double> lost = Vector256<double>.Zero;
        ReadOnlySpan<Vector256<double>> fours = MemoryMarshal.Cast<double, Vector256<double>>(values);
        foreach (Vector256<double> term in fours)
        {
            // Two-sum (knuth-1997, section 4.2.2): the error of an addition without asking which operand is larger.
            Vector256<double> sum = sums + term;
            Vector256<double> added = sum - sums;
            lost += sums - (sum - added) + (term - added);
            sums = sum;
        }

        var total = new CompensatedSum();
        for (int i = 0; i < Vector256<double>.Count; i++)
        {
            total.Add(sums[i]);
            total.Add(lost[i]);
        }

        foreach (double term in values[(fours.Length * Vector256<double>.Count)..])
        {
            total.Add(term);
        }

        return total.Value;
    }

    /// <summary>The sum so far; not finite when the plain sum overflowed on the way.</summary>
    internal readonly double Value => _sum + _lost;
}
