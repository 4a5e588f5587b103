namespace McuBench.Stats.Hypotheses;

/// <summary>The search for the variance ratios of the largest restricted likelihood: Newton's method on the slopes, damped
/// where they bend the wrong way, and held at 0 where a ratio would fall below it.</summary>
internal sealed class RemlSearch
{
    private const int MostSteps = 200;

    // What rounding makes of the criterion.
    private const double Noise = 1e-14;

    private readonly NestedTree _tree;
    private readonly int _factors;

    internal RemlSearch(NestedTree tree, double[] start)
    {
        _tree = tree;
        _factors = start.Length;
        Ratios = [.. start];
        Run();
    }

    /// <summary>The ratios found; the tree stands evaluated at them.</summary>
    internal double[] Ratios { get; private set; }

    /// <summary>The criterion at them.</summary>
    internal double Criterion { get; private set; }

    /// <summary>The number of steps taken.</summary>
    internal int Steps { get; private set; }

    /// <summary>The second derivatives of the criterion with the variance within at its best (or at the given one), from
    /// differences of its slopes; those of the logarithm of the variance within are the caller's.</summary>
    internal double[,] Bends(double? within)
    {
        double[,] bends = new double[_factors, _factors];
        for (int k = 0; k < _factors; k++)
        {
            // Half the digits of a double are left to the difference.
            double step = 1e-5 * Math.Max(Ratios[k], 1e-3);
            double[] near = [.. Ratios];
            near[k] += step;
            _tree.Evaluate(near);
            double[] above = Slopes(within);
            near[k] = Ratios[k] - Math.Min(step, Ratios[k]);
            double width = Ratios[k] + step - near[k];
            _tree.Evaluate(near);
            double[] below = Slopes(within);
            for (int i = 0; i < _factors; i++)
            {
                bends[i, k] += (above[i] - below[i]) / width / 2;
                bends[k, i] += (above[i] - below[i]) / width / 2;
            }
        }

        _tree.Evaluate(Ratios);
        return bends;
    }

    private double[] Slopes(double? within)
    {
        double[] slopes = new double[_factors];
        for (int i = 0; i < _factors; i++)
        {
            slopes[i] = _tree.Slope(i, within ?? _tree.BestWithin);
        }

        return slopes;
    }

    private void Run()
    {
        _tree.Evaluate(Ratios);
        Criterion = _tree.Criterion;
        while (Steps < MostSteps)
        {
            Steps++;
            double[] slopes = Slopes(null);
            int[] free = [.. Enumerable.Range(0, _factors).Where(k => Ratios[k] > 0 || slopes[k] < 0)];
            if (free.Length == 0 || !TryStep(slopes, Bends(null), free, out double gain))
            {
                return;
            }

            // Twice the logarithm of a likelihood: this is far below what data can tell.
            if (gain < 1e-13)
            {
                return;
            }
        }

        throw new InvalidOperationException("Search for the largest restricted likelihood did not settle.");
    }

    // One step that does not raise the criterion beyond rounding, with as little damping as that takes.
    private bool TryStep(double[] slopes, double[,] bends, int[] free, out double gain)
    {
        for (double damping = 0; damping < 1e12; damping = damping == 0 ? 1e-3 : damping * 10)
        {
            if (SmallSystem.Solve(bends, slopes, free, damping) is not { } step)
            {
                continue;
            }

            double[] next = [.. Ratios];
            for (int i = 0; i < free.Length; i++)
            {
                next[free[i]] = Math.Max(0, next[free[i]] - step[i]);
            }

            _tree.Evaluate(next);
            double criterion = _tree.Criterion;
            if (criterion <= Criterion + Noise * (1 + Math.Abs(Criterion)))
            {
                gain = Criterion - criterion;
                (Ratios, Criterion) = (next, criterion);
                return true;
            }
        }

        _tree.Evaluate(Ratios);
        gain = 0;
        return false;
    }
}
