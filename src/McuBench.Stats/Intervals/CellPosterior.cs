namespace McuBench.Stats.Intervals;

/// <summary>The distribution of a normal mean given only the cells of its readings: the likelihood integrated over the
/// spread, every mean taken for as likely as another.</summary>
/// <remarks>
/// The spread's weight is dσ/√(σ² + (step/10)²): that of Student's t where the spread is wide against the step, and
/// one that has an integral where readings leave it free to go to nothing.
/// </remarks>
internal sealed class CellPosterior
{
    private const double KneeOfSpread = 0.1;
    private const double LeastSpread = 0.01;
    private const double Negligible = 1e-7;
    private const int Halvings = 60;

    private readonly List<(ConditionalMean Mean, double Weight)> _nodes = [];
    private readonly double _total;
    private readonly double _from;
    private readonly double _to;

    /// <summary>Integrates over the spread by the trapezoidal rule on its logarithm, outwards from the readings' own.</summary>
    internal CellPosterior(StepCells cells)
    {
        // For a normal integrand a spacing of one standard deviation is exact to 1e-8; that of ln σ is 1/√(2n).
        double spacing = Math.Min(0.3, 0.8 / Math.Sqrt(2.0 * cells.Count));
        double least = Math.Log(LeastSpread);
        double middle = Math.Log(Math.Max(Math.Sqrt(Math.Max(0, cells.Variance - cells.OfReading)), KneeOfSpread));
        middle = least + Math.Ceiling((middle - least) / spacing) * spacing;
        double scale = double.NegativeInfinity;
        var found = new List<(ConditionalMean Mean, double LogWeight)>();
        Walk(middle, spacing);
        Walk(middle - spacing, -spacing);

        _from = double.PositiveInfinity;
        _to = double.NegativeInfinity;
        foreach ((ConditionalMean mean, double logWeight) in found)
        {
            double weight = Math.Exp(logWeight - scale);
            if (weight * mean.Area > 0)
            {
                _nodes.Add((mean, weight));
                _total += weight * mean.Area;
                _from = Math.Min(_from, mean.Start);
                _to = Math.Max(_to, mean.End);
            }
        }

        void Walk(double start, double by)
        {
            double most = double.NegativeInfinity;
            double log = start;
            while (log > least - 0.5 * spacing)
            {
                double spread = Math.Exp(log);
                if (ConditionalMean.Of(cells, spread) is not { } mean)
                {
                    return;
                }

                // Below the least spread the likelihood has come to rest, and the weight's integral is the spread itself.
                double width = log < least + 0.5 * spacing ? 0.5 * spacing + 1 : spacing;
                double weight =
                    mean.Top + Math.Log(width * spread / Math.Sqrt(spread * spread + KneeOfSpread * KneeOfSpread));
                double mass = weight + Math.Log(mean.Area);
                found.Add((mean, weight));
                scale = Math.Max(scale, weight);
                most = Math.Max(most, mass);
                if (mass < most + Math.Log(Negligible))
                {
                    return;
                }

                log += by;
            }
        }
    }

    /// <summary>The mean below which a share of the distribution lies, in steps.</summary>
    internal double Quantile(double probability)
    {
        (double from, double to) = (_from, _to);
        for (int i = 0; i < Halvings && to - from > 1e-9; i++)
        {
            double middle = 0.5 * (from + to);
            double below = 0;
            foreach ((ConditionalMean mean, double weight) in _nodes)
            {
                below += weight * mean.AreaBelow(middle);
            }

            (from, to) = below < probability * _total ? (middle, to) : (from, middle);
        }

        return 0.5 * (from + to);
    }
}
