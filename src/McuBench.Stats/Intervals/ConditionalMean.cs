namespace McuBench.Stats.Intervals;

/// <summary>The likelihood of the mean at one spread, as a distribution: its weight and its distribution function.</summary>
/// <remarks>Given the spread the likelihood is log-concave in the mean, so it has one top and can be laid out from there.</remarks>
internal sealed class ConditionalMean
{
    private const int Points = 41;
    private const int Halvings = 24;

    /// <summary>Where the likelihood has fallen by this in logarithm, the rest is 1e-8.</summary>
    private const double Drop = 18;

    private readonly double _start;
    private readonly double _spacing;
    private readonly double[] _density = new double[Points];
    private readonly double[] _slope = new double[Points];
    private readonly double[] _below = new double[Points];

    private ConditionalMean(double start, double spacing, double top)
    {
        _start = start;
        _spacing = spacing;
        Top = top;
    }

    /// <summary>The logarithm of the likelihood at its top.</summary>
    internal double Top { get; }

    /// <summary>The integral of the likelihood over the mean, relative to the top.</summary>
    internal double Area => _below[^1];

    internal double Start => _start;

    internal double End => _start + (Points - 1) * _spacing;

    /// <summary>Lays the likelihood out, or returns null where the readings are impossible at this spread.</summary>
    internal static ConditionalMean? Of(StepCells cells, double spread)
    {
        (double from, double to) = (cells.Lowest - 0.5, cells.Highest + 0.5);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (from + to);
            double slope = cells.At(middle, spread).Slope;
            (from, to) = slope > 0 ? (middle, to) : (from, middle);
        }

        double mode = 0.5 * (from + to);
        double top = cells.At(mode, spread).Log;
        if (double.IsNegativeInfinity(top))
        {
            return null;
        }

        double lower = Edge(cells, spread, mode, top, -1);
        double upper = Edge(cells, spread, mode, top, 1);
        var laid = new ConditionalMean(lower, (upper - lower) / (Points - 1), top);
        laid.Fill(cells, spread);
        return laid;
    }

    /// <summary>The integral of the likelihood below a mean, relative to the top.</summary>
    internal double AreaBelow(double mean)
    {
        double place = (mean - _start) / _spacing;
        if (place <= 0)
        {
            return 0;
        }

        int i = (int)place;
        if (i >= Points - 1)
        {
            return Area;
        }

        // The integral of the cubic that has both ends' values and slopes.
        double t = place - i;
        double t2 = t * t;
        double t3 = t2 * t;
        double t4 = t3 * t;
        return _below[i]
            + _spacing
                * (
                    _density[i] * (t - t3 + 0.5 * t4)
                    + _density[i + 1] * (t3 - 0.5 * t4)
                    + _spacing
                        * (_slope[i] * (0.5 * t2 - 2 * t3 / 3 + 0.25 * t4) + _slope[i + 1] * (0.25 * t4 - t3 / 3))
                );
    }

    private static double Edge(StepCells cells, double spread, double mode, double top, int side)
    {
        double reach = 3 * spread / Math.Sqrt(cells.Count) + 1e-3;
        double inside = 0;
        while (cells.At(mode + side * reach, spread).Log > top - Drop)
        {
            inside = reach;
            reach *= 2;
        }

        const int halvings = 5;
        for (int i = 0; i < halvings; i++)
        {
            double middle = 0.5 * (inside + reach);
            if (cells.At(mode + side * middle, spread).Log > top - Drop)
            {
                inside = middle;
            }
            else
            {
                reach = middle;
            }
        }

        return mode + side * reach;
    }

    private void Fill(StepCells cells, double spread)
    {
        for (int i = 0; i < Points; i++)
        {
            (double log, double slope) = cells.At(_start + i * _spacing, spread);
            _density[i] = Math.Exp(log - Top);
            _slope[i] = _density[i] == 0 ? 0 : _density[i] * slope;
            if (i > 0)
            {
                _below[i] =
                    _below[i - 1]
                    + _spacing * 0.5 * (_density[i - 1] + _density[i])
                    + _spacing * _spacing * (_slope[i - 1] - _slope[i]) / 12;
            }
        }
    }
}
