namespace McuBench.Stats.Hypotheses;

/// <summary>The search for the variance ratios of the largest restricted likelihood: Newton's method on the slopes, damped
/// where they bend the wrong way, and held at 0 where a ratio would fall below it.</summary>
internal sealed class RemlSearch
{
    private const int MostSteps = 200;

    // Half the digits of a double are left to a difference so wide.
    private const double DifferenceStep = 1e-5;

    // In the logarithm of 1 + γS: from any start the whole range of doubles is a hundred steps wide.
    private const double LongestStep = 7;

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
        double[] stretches = [.. Enumerable.Range(0, _factors).Select(Stretch)];
        for (int k = 0; k < _factors; k++)
        {
            double step = DifferenceStep * stretches[k];
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
            if (free.Length == 0 || !TryStep(slopes, free, out double gain) || gain < Rounding)
            {
                return;
            }
        }

        throw new InvalidOperationException("Search for the largest restricted likelihood did not settle.");
    }

    // One step that does not raise the criterion beyond rounding, with as little damping as that takes. It is taken in the
    // logarithm of 1 + γS, in which the likelihood bends alike from ratios near 0 to the largest.
    private bool TryStep(double[] slopes, int[] free, out double gain)
    {
        double[] stretches = [.. Enumerable.Range(0, _factors).Select(Stretch)];
        double[,] bends = Bends(null);
        for (int i = 0; i < _factors; i++)
        {
            slopes[i] *= stretches[i];
            for (int k = 0; k < _factors; k++)
            {
                bends[i, k] *= stretches[i] * stretches[k];
            }

            bends[i, i] += slopes[i];
        }

        for (double damping = 0; damping < 1e12; damping = damping == 0 ? 1e-3 : damping * 10)
        {
            if (SmallSystem.Solve(bends, slopes, free, damping) is not { } step)
            {
                continue;
            }

            double[] next = [.. Ratios];
            for (int i = 0; i < free.Length; i++)
            {
                double change = Math.Exp(Math.Clamp(-step[i], -LongestStep, LongestStep)) - 1;
                next[free[i]] = Math.Max(0, next[free[i]] + stretches[free[i]] * change);
            }

            _tree.Evaluate(next);
            double criterion = _tree.Criterion;
            if (criterion <= Criterion + Rounding)
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

    // What rounding makes of the criterion.
    private double Rounding => 4e-15 * (1 + Math.Abs(Criterion));

    // How much a ratio changes with log(1 + γS), S being the mean weight of the groups' parts.
    private double Stretch(int factor) => Ratios[factor] + 1 / _tree.MeanPartSum(factor);
}
