namespace McuBench.Stats;

/// <summary>
/// Finite values that were checked once and are sorted at most once: what procedures take that look at the same data
/// in more than one way.
/// </summary>
/// <remarks>
/// Immutable; the values are copied in. Safe to use from many threads. Two samples are equal only when they are the
/// same object.
/// </remarks>
public sealed class Sample
{
    private readonly double[] _values;
    private double[]? _sorted;

    private Sample(double[] values) => _values = values;

    /// <summary>Makes a sample of values, all in one unit that the caller knows. O(n).</summary>
    /// <param name="values">At least one value, each finite, in the order in which they were taken.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite; the message says which.</exception>
    public static Sample Of(params ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        return new Sample(values.ToArray());
    }

    /// <summary>The number of values, 1 or more.</summary>
    public int Count => _values.Length;

    /// <summary>The values in the order given.</summary>
    public ReadOnlySpan<double> Values => _values;

    /// <summary>The values in ascending order. O(n log n) the first time, O(1) after that.</summary>
    /// <remarks>Two threads that ask at the same moment may both sort; they get equal values.</remarks>
    public ReadOnlySpan<double> Sorted => _sorted ??= SortedCopy();

    private double[] SortedCopy()
    {
        double[] sorted = [.. _values];
        Array.Sort(sorted);
        return sorted;
    }
}
