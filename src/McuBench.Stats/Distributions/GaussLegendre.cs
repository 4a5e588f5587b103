namespace McuBench.Stats.Distributions;

/// <summary>The nodes and weights of Gauss–Legendre quadrature.</summary>
internal sealed class GaussLegendre
{
    private readonly double[] _nodes;
    private readonly double[] _weights;

    private GaussLegendre(int count)
    {
        _nodes = new double[count];
        _weights = new double[count];
        for (var i = 0; i < count; i++)
        {
            (_nodes[i], _weights[i]) = NodeAndWeight(count, i);
        }
    }

    /// <summary>Enough nodes for a log-concave tail over all that counts of it.</summary>
    internal static GaussLegendre ForTails { get; } = new(40);

    /// <summary>The nodes on [0, 1], in rising order.</summary>
    internal ReadOnlySpan<double> Nodes => _nodes;

    /// <summary>The weights on [0, 1], one for each node.</summary>
    internal ReadOnlySpan<double> Weights => _weights;

    /// <summary>The rule of a count of nodes, at least 1; O(count²).</summary>
    internal static GaussLegendre Of(int count) => new(count);

    private static (double Node, double Weight) NodeAndWeight(int count, int index)
    {
        // Newton's method from the asymptotic place of the zero (DLMF 18.16.6), on the recurrence DLMF 18.9.1.
        var angle = Math.PI * (index + 0.75) / (count + 0.5);
        var x = -Math.Cos(angle);
        var derivative = 0.0;
        for (var i = 0; i < 6; i++)
        {
            var (value, before) = (x, 1.0);
            for (var n = 2; n <= count; n++)
            {
                (value, before) = ((((2 * n) - 1) * x * value - ((n - 1) * before)) / n, value);
            }

            derivative = count * ((x * value) - before) / ((x * x) - 1);
            x -= value / derivative;
        }

        return (0.5 * (1 + x), 1 / ((1 - (x * x)) * derivative * derivative));
    }
}
