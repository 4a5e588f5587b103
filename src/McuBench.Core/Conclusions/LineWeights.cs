namespace McuBench.Core.Conclusions;

/// <summary>The variances that the points of a line are weighted with: the relative scatter pooled over all points, since
/// each point's own from a few readings would make weights that follow chance, and what there is besides.</summary>
internal static class LineWeights
{
    /// <summary>The variance of each point's mean, and the degrees of freedom behind them.</summary>
    /// <param name="points">Each point's mean, number of readings, variance of one reading (0 for a single one), and the
    /// variance of its mean that doesn't come from scatter and isn't shared by all points.</param>
    /// <param name="degreesOfFreedom">Those of the pooled scatter, as far as it makes up the variances; positive infinity
    /// where there is none.</param>
    public static double[] Of(
        IReadOnlyList<(double Mean, int Count, double Variance, double Besides)> points,
        out double degreesOfFreedom
    )
    {
        double squares = 0;
        var toSpare = 0;
        foreach (var (mean, count, variance, _) in points)
        {
            squares += (count - 1) * variance / (mean * mean);
            toSpare += count - 1;
        }

        var pooled = toSpare > 0 ? squares / toSpare : 0;
        double[] ofScatter = [.. points.Select(p => pooled * p.Mean * p.Mean / p.Count)];
        double[] variances = [.. points.Zip(ofScatter, (p, scatter) => scatter + p.Besides)];

        // Where the rest makes up most of the variance, the little that was estimated from scatter hardly matters.
        var share = ofScatter.Sum() / variances.Sum();
        degreesOfFreedom = toSpare > 0 && share > 0 ? toSpare / (share * share) : double.PositiveInfinity;
        return variances;
    }
}
