namespace McuBench.Stats.Regression;

/// <summary>
/// Points in the order of y − t·x. A pair of points changes its order where t passes the slope of the line through it, so
/// slopes are counted, drawn and listed as the inversions between two orders, in O(n log n) without forming all n² of
/// them (matousek-1991; dillencourt-mount-netanyahu-1992).
/// </summary>
/// <remarks>y − t·x is kept in two doubles, so that equal ones are found equal; a slope that lies within a unit in the last
/// place of t may be counted on the other side of it.</remarks>
internal sealed class SlopeOrder
{
    private readonly double[] _x;
    private readonly double[] _y;

    /// <summary>Sorts the points by x, and by y where x is equal, since such pairs have no slope and must never change.</summary>
    internal SlopeOrder(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        int n = x.Length;
        var points = new (double X, double Y)[n];
        for (int i = 0; i < n; i++)
        {
            points[i] = (x[i], y[i]);
        }

        Array.Sort(points);
        _x = new double[n];
        _y = new double[n];
        long equal = 0;
        int run = 0;
        double closest = double.PositiveInfinity;
        for (int i = 0; i < n; i++)
        {
            (_x[i], _y[i]) = points[i];
            run = i > 0 && _x[i] == _x[i - 1] ? run + 1 : 0;
            equal += run;
            closest = i > 0 && run == 0 ? Math.Min(closest, _x[i] - _x[i - 1]) : closest;
        }

        double range = Range(y);
        double farthest = Math.Max(Math.Abs(_x[0]), Math.Abs(_x[^1]));
        Check.Representable(range / closest * Math.Max(1, farthest), "Steepest slope between points", nameof(x));
        Slopes = (long)n * (n - 1) / 2 - equal;
    }

    /// <summary>The number of points.</summary>
    internal int Count => _x.Length;

    /// <summary>The number of pairs that have a slope.</summary>
    internal long Slopes { get; }

    /// <summary>The slope of the line through two points.</summary>
    internal double Slope(int first, int second) => (_y[second] - _y[first]) / (_x[second] - _x[first]);

    /// <summary>Whether two points have a slope.</summary>
    internal bool HasSlope(int first, int second) => _x[first] != _x[second];

    /// <summary>The points in the order before every slope, or after.</summary>
    internal int[] AtInfinity(bool positive)
    {
        int[] order = new int[_x.Length];
        if (!positive)
        {
            for (int i = 0; i < order.Length; i++)
            {
                order[i] = i;
            }

            return order;
        }

        // Falling x, but points of equal x stay as they are.
        int place = 0;
        int last = order.Length - 1;
        while (last >= 0)
        {
            int first = last;
            while (first > 0 && _x[first - 1] == _x[last])
            {
                first--;
            }

            for (int i = first; i <= last; i++)
            {
                order[place++] = i;
            }

            last = first - 1;
        }

        return order;
    }

    /// <summary>The points in the order just after t: pairs whose slope is t have changed.</summary>
    internal int[] After(double t)
    {
        int n = _x.Length;
        double[] keys = new double[n];
        double[] rests = new double[n];
        int[] order = new int[n];
        for (int i = 0; i < n; i++)
        {
            // y − t·x exactly, as a double and what rounding took from it.
            double product = t * _x[i];
            double lost = Math.FusedMultiplyAdd(t, _x[i], -product);
            double key = _y[i] - product;
            double back = key - _y[i];
            double rest = _y[i] - (key - back) - (product + back) - lost;
            keys[i] = key + rest;
            rests[i] = key - keys[i] + rest;
            order[i] = i;
        }

        keys.AsSpan().Sort(order.AsSpan());
        int first = 0;
        while (first < n)
        {
            int next = first + 1;
            while (next < n && keys[next] == keys[first])
            {
                next++;
            }

            if (next - first > 1)
            {
                order.AsSpan(first, next - first).Sort((a, b) => Compare(a, b, rests));
            }

            first = next;
        }

        return order;
    }

    private static double Range(ReadOnlySpan<double> values)
    {
        double least = values[0];
        double greatest = values[0];
        foreach (double value in values)
        {
            least = Math.Min(least, value);
            greatest = Math.Max(greatest, value);
        }

        return greatest - least;
    }

    /// <summary>The order of two points whose keys are equal: by what rounding took, then with x falling.</summary>
    private int Compare(int a, int b, double[] rests)
    {
        int order = rests[a].CompareTo(rests[b]);
        if (order == 0)
        {
            order = _x[b].CompareTo(_x[a]);
        }

        return order == 0 ? a.CompareTo(b) : order;
    }
}
