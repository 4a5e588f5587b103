using System.Runtime.CompilerServices;
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

    /// <summary>The sum of values, sixteen side by side; the same on every machine, whatever its vectors. O(n).</summary>
    internal static double Of(ReadOnlySpan<double> values)
    {
        // Four sums at a time, since each addition waits for the one before in its own sum.
        var first = new Lanes();
        var second = new Lanes();
        var third = new Lanes();
        var fourth = new Lanes();
        ReadOnlySpan<Vector256<double>> fours = MemoryMarshal.Cast<double, Vector256<double>>(values);
        int i = 0;
        while (i + 4 <= fours.Length)
        {
            first.Add(fours[i]);
            second.Add(fours[i + 1]);
            third.Add(fours[i + 2]);
            fourth.Add(fours[i + 3]);
            i += 4;
        }

        while (i < fours.Length)
        {
            first.Add(fours[i]);
            i++;
        }

        var total = new CompensatedSum();
        first.AddTo(ref total);
        second.AddTo(ref total);
        third.AddTo(ref total);
        fourth.AddTo(ref total);
        foreach (double term in values[(fours.Length * Vector256<double>.Count)..])
        {
            total.Add(term);
        }

        return total.Value;
    }

    /// <summary>Four sums side by side, each with what its additions lost.</summary>
    [StructLayout(LayoutKind.Auto)]
    private struct Lanes
    {
        private Vector256<double> _sums;
        private Vector256<double> _lost;

        /// <summary>Two-sum (knuth-1997, section 4.2.2): the error of an addition without asking which operand is
        /// larger.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal void Add(Vector256<double> terms)
        {
            Vector256<double> sums = _sums + terms;
            Vector256<double> added = sums - _sums;
            _lost += _sums - (sums - added) + (terms - added);
            _sums = sums;
        }

        internal readonly void AddTo(ref CompensatedSum total)
        {
            for (int i = 0; i < Vector256<double>.Count; i++)
            {
                total.Add(_sums[i]);
                total.Add(_lost[i]);
            }
        }
    }

    /// <summary>The sum so far; not finite when the plain sum overflowed on the way.</summary>
    internal readonly double Value => _sum + _lost;
}
