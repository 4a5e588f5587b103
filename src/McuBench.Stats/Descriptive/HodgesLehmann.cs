using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>
/// The estimates of location and shift that belong to the rank tests (hodges-lehmann-1963): nearly as precise as means on
/// normal data, and unmoved by up to 29 % of wild values.
/// </summary>
/// <remarks>O(n log n) time and O(n) pooled scratch, though the pairs behind them number n²; exactly the value that listing
/// all pairs would give.</remarks>
public static class HodgesLehmann
{
    /// <summary>The median of the means of all pairs of values, each value paired with itself as well.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public static double Location(ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> sorted = scratch.AsSpan(0, values.Length);
        values.CopyTo(sorted);
        sorted.Sort();
        double location = LocationOfSorted(sorted);
        ArrayPool<double>.Shared.Return(scratch);
        return location;
    }

    /// <summary>The median of the means of all pairs of values of a sample, each value paired with itself as well.</summary>
    /// <param name="sample">The sample.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    public static double Location(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return LocationOfSorted(sample.Sorted);
    }

    /// <summary>The median of all differences of a value of the first sample less one of the second: by how much the
    /// first population lies above the second, where both have one shape.</summary>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample, in the same unit.</param>
    /// <exception cref="ArgumentNullException">A sample is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The shift is above the greatest number.</exception>
    public static double Shift(Sample first, Sample second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        double shift = new PairDifferences(second.Sorted, first.Sorted, PairRegion.All).Median();
        return Check.Representable(shift, "Shift", nameof(first));
    }

    private static double LocationOfSorted(ReadOnlySpan<double> sorted)
    {
        using var means = new WalshSums(sorted);
        return means.Median();
    }
}
