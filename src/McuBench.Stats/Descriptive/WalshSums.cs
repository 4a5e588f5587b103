using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>The means of all pairs of values of one sample, each value paired with itself as well, by rank and without
/// forming all of them. Holds pooled scratch: dispose of it.</summary>
internal readonly ref struct WalshSums : IDisposable
{
    private readonly double[] _scratch;
    private readonly double _unit;
    private readonly PairDifferences _sums;

    /// <summary>The pairs of ascending values.</summary>
    internal WalshSums(ReadOnlySpan<double> sorted)
    {
        int n = sorted.Length;
        _scratch = ArrayPool<double>.Shared.Rent(2 * n);
        Span<double> negated = _scratch.AsSpan(0, n);
        Span<double> scaled = _scratch.AsSpan(n, n);
        // Sums of two values near the greatest number need room; halving others could cost denormals a digit.
        _unit = Math.Max(-sorted[0], sorted[^1]) > 4e307 ? 0.25 : 1;
        for (int i = 0; i < n; i++)
        {
            scaled[i] = sorted[i] * _unit;
            negated[^(i + 1)] = -scaled[i];
        }

        _sums = new PairDifferences(negated, scaled, PairRegion.FromMirror);
    }

    /// <summary>The number of pairs.</summary>
    internal long Count => _sums.Count;

    /// <summary>The median of the means.</summary>
    internal double Median() => _sums.Median() / 2 / _unit;

    /// <summary>The mean of a rank, from 0 for the least.</summary>
    internal double Select(long rank) => _sums.Select(rank) / 2 / _unit;

    /// <summary>Gives the scratch back.</summary>
    public void Dispose() => ArrayPool<double>.Shared.Return(_scratch);
}
