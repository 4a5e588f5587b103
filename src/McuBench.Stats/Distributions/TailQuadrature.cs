namespace McuBench.Stats.Distributions;

/// <summary>The tail of a log-concave density beyond a place, over the density there.</summary>
/// <remarks>What a large parameter makes slow for a series or a continued fraction makes the density smooth: some forty
/// nodes then give every digit, in the bulk and far out alike.</remarks>
internal static class TailQuadrature
{
    // exp(−40) is below the last place of the integral.
    private const double Depth = 40;

    /// <summary>The integral of the ratio from distance 0 on.</summary>
    internal static double Integrate<T>(in T ratio)
        where T : struct, IDensityRatio
    {
        // Where a parabola of this fall and curvature has gone down far enough; then, because the logarithm is concave
        // and 0 at 0, this many times as far it surely has.
        var length = 2 * Depth / (ratio.Fall + Math.Sqrt((ratio.Fall * ratio.Fall) + (2 * Depth * ratio.Curvature)));
        if (length < ratio.Limit)
        {
            length *= Math.Max(1, Depth / -ratio.Log(length));
        }

        length = Math.Min(length, ratio.Limit);
        var nodes = GaussLegendre.ForTails.Nodes;
        var weights = GaussLegendre.ForTails.Weights;
        var sum = 0.0;
        for (var i = 0; i < nodes.Length; i++)
        {
            sum += weights[i] * Math.Exp(ratio.Log(length * nodes[i]));
        }

        return sum * length;
    }
}
