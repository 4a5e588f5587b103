using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>Where values lie: means and the median. Results are in the unit of the values.</summary>
/// <remarks>
/// Every method refuses an empty span with an <see cref="ArgumentException"/>, and a value that is NaN or infinite with
/// an <see cref="ArgumentOutOfRangeException"/> that names its index. Nothing here keeps state.
/// </remarks>
public static class Location
{
    /// <summary>The arithmetic mean, by compensated summation (neumaier-1974); right to the last digit or two whatever
    /// the count, also where the sum itself overflows. O(n).</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public static double Mean(ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        return SquaredDeviations.MeanAlone(values);
    }

    /// <summary>The median: the middle value, or the mean of the two middle ones where the count is even. O(n) on
    /// average, with a pooled copy of the values and no other allocation.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public static double Median(ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> copy = scratch.AsSpan(0, values.Length);
        values.CopyTo(copy);
        double median = MedianInPlace(copy);
        ArrayPool<double>.Shared.Return(scratch);
        return median;
    }

    /// <summary>The median of a sample. O(1) once the sample is sorted.</summary>
    /// <param name="sample">The sample.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    public static double Median(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        ReadOnlySpan<double> sorted = sample.Sorted;
        return Middle(sorted[(sorted.Length - 1) / 2], sorted[sorted.Length / 2]);
    }

    /// <summary>The median of finite values whose order may be lost.</summary>
    internal static double MedianInPlace(Span<double> values)
    {
        int upper = values.Length / 2;
        double above = Selection.Nth(values, upper);
        if (values.Length % 2 == 1)
        {
            return above;
        }

        double below = values[0];
        foreach (double value in values[1..upper])
        {
            below = Math.Max(below, value);
        }

        return Middle(below, above);
    }

    /// <summary>The middle of two values without overflow, and exactly the value where they are equal.</summary>
    internal static double Middle(double lower, double upper)
    {
        double sum = lower + upper;
        return double.IsFinite(sum) ? sum / 2 : lower / 2 + upper / 2;
    }
}
