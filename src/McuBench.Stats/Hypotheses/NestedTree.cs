namespace McuBench.Stats.Hypotheses;

/// <summary>
/// The restricted likelihood of a nested layout and its slopes, by one pass up the tree of groups and one down: O(groups) in
/// place of the cube of the count of values that matrices would take.
/// </summary>
/// <remarks>
/// A group of variance ratio γ whose parts have the weights sᵢ and means mᵢ has S = Σsᵢ, the weight S/(1 + γS) and the weighted
/// mean of its parts; what the parts' means scatter about it adds to the residual. The ratios are each factor's variance over
/// the one within. An offset of the values costs no digits, since only differences of means enter.
/// </remarks>
internal sealed class NestedTree
{
    private readonly NestedData _data;
    private readonly double[] _groupMeans;
    private readonly double[][] _partSums;
    private readonly double[][] _means;

    /// <summary>The tree of data, with the means of the innermost groups and the sum of squares within them.</summary>
    internal NestedTree(NestedData data, double[] groupMeans, double sumWithin)
    {
        _data = data;
        _groupMeans = groupMeans;
        SumWithin = sumWithin;
        _partSums = NewLevels();
        _means = NewLevels();
        Traces = new double[data.Factors];
        Squares = new double[data.Factors];
        WeightSquares = new double[data.Factors];

        double[][] NewLevels() => [.. Enumerable.Range(0, data.Factors).Select(j => new double[data.GroupCount(j)])];
    }

    /// <summary>The sum of squares within the innermost groups.</summary>
    internal double SumWithin { get; }

    /// <summary>The residual sum of squares, weighted by the inverse covariance over the variance within.</summary>
    internal double Residual { get; private set; }

    /// <summary>The generalized least-squares mean.</summary>
    internal double Mean { get; private set; }

    /// <summary>The weight of that mean: the variance within over its variance.</summary>
    internal double Weight { get; private set; }

    /// <summary>The logarithm of the covariance's determinant over the variance within.</summary>
    internal double LogDeterminant { get; private set; }

    /// <summary>For each factor tr(P Z Z'), with P the projection of restricted likelihood.</summary>
    internal double[] Traces { get; }

    /// <summary>For each factor y' P Z Z' P y.</summary>
    internal double[] Squares { get; }

    /// <summary>For each factor what the weight of the mean falls by with its ratio.</summary>
    internal double[] WeightSquares { get; }

    /// <summary>Twice the negative logarithm of the restricted likelihood with the variance within at its best, but for
    /// constants.</summary>
    internal double Criterion => (_data.Count - 1) * Math.Log(Residual) + LogDeterminant + Math.Log(Weight);

    /// <summary>The variance within that is best for the ratios.</summary>
    internal double BestWithin => Residual / (_data.Count - 1);

    /// <summary>The slope of twice the negative logarithm of the likelihood in a ratio, at a variance within.</summary>
    internal double Slope(int factor, double within) => Traces[factor] - Squares[factor] / within;

    /// <summary>The mean over the groups of a factor of the weights of their parts.</summary>
    internal double MeanPartSum(int factor) => _partSums[factor].Average();

    /// <summary>Evaluates all that the other members give.</summary>
    /// <param name="ratios">The variance of each factor over the one within, 0 or more.</param>
    internal void Evaluate(ReadOnlySpan<double> ratios)
    {
        Up(ratios);
        Down(ratios);
    }

    private void Up(ReadOnlySpan<double> ratios)
    {
        int last = _data.Factors - 1;
        ReadOnlySpan<int> sizes = _data.Sizes(last);
        for (int u = 0; u < sizes.Length; u++)
        {
            (_partSums[last][u], _means[last][u]) = (sizes[u], _groupMeans[u]);
        }

        Residual = SumWithin;
        LogDeterminant = 0;
        double[] root = new double[1];
        double[] rootMean = new double[1];
        for (int j = last; j >= 0; j--)
        {
            double[] sums = j == 0 ? root : _partSums[j - 1];
            double[] means = j == 0 ? rootMean : _means[j - 1];
            Gather(j, ratios[j], sums, means);
        }

        (Weight, Mean) = (root[0], rootMean[0]);
    }

    // From the groups of a factor to those that hold them.
    private void Gather(int j, double ratio, double[] sums, double[] means)
    {
        Array.Clear(sums);
        Array.Clear(means);
        ReadOnlySpan<int> parents = _data.Parents(j);
        double determinant = 1;
        for (int u = 0; u < parents.Length; u++)
        {
            double weight = WeightOf(j, u, ratio);
            sums[parents[u]] += weight;
            means[parents[u]] += weight * _means[j][u];
            determinant *= 1 + ratio * _partSums[j][u];
            if (determinant > 1e200)
            {
                LogDeterminant += Math.Log(determinant);
                determinant = 1;
            }
        }

        LogDeterminant += Math.Log(determinant);
        for (int u = 0; u < sums.Length; u++)
        {
            means[u] /= sums[u];
        }

        for (int u = 0; u < parents.Length; u++)
        {
            double deviation = _means[j][u] - means[parents[u]];
            Residual += WeightOf(j, u, ratio) * deviation * deviation;
        }
    }

    private void Down(ReadOnlySpan<double> ratios)
    {
        // What the groups above take off the mean of a group, off its weight, and off its share of the whole.
        double[] shifts = [0];
        double[] losses = [0];
        double[] shares = [1];
        for (int j = 0; j < _data.Factors; j++)
        {
            ReadOnlySpan<int> parents = _data.Parents(j);
            int groups = parents.Length;
            (double[] nextShifts, double[] nextLosses, double[] nextShares) = (
                new double[groups],
                new double[groups],
                new double[groups]
            );
            (double trace, double squares, double weights) = (0, 0, 0);
            for (int u = 0; u < groups; u++)
            {
                double weight = WeightOf(j, u, ratios[j]);
                double scale = 1 / (1 + ratios[j] * _partSums[j][u]);
                double deviation = _means[j][u] - Mean - shifts[parents[u]];
                double loss = losses[parents[u]];
                double share = shares[parents[u]];
                trace += weight - weight * weight * loss;
                squares += weight * deviation * weight * deviation;
                weights += weight * share * weight * share;
                nextShifts[u] = shifts[parents[u]] + ratios[j] * weight * deviation;
                nextLosses[u] = ratios[j] * scale + loss * scale * scale;
                nextShares[u] = share * scale;
            }

            (Traces[j], Squares[j], WeightSquares[j]) = (trace - weights / Weight, squares, weights);
            (shifts, losses, shares) = (nextShifts, nextLosses, nextShares);
        }
    }

    private double WeightOf(int j, int u, double ratio) => _partSums[j][u] / (1 + ratio * _partSums[j][u]);
}
