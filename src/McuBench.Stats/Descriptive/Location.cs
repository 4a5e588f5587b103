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
        Check.AtLeast(values.Length, 1, nameof(values));
        return SquaredDeviations.MeanAlone(values);
    }

    /// <summary>The geometric mean, the n-th root of the product, by multiplying fractions and adding exponents apart, so
    /// that nothing overflows and the error stays within a few units in the last place. O(n).</summary>
    /// <param name="values">At least one value, each finite and above 0.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN, infinite or not above 0.</exception>
    public static double GeometricMean(ReadOnlySpan<double> values)
    {
        Check.Positive(values);
        double product = 1;
        long exponent = 0;
        foreach (double value in values)
        {
            int own = Math.ILogB(value);
            product *= Math.ScaleB(value, -own);
            exponent += own;
            if (product >= 2)
            {
                product /= 2;
                exponent++;
            }
        }

        long whole = Math.DivRem(exponent, values.Length, out long rest);
        double root = Math.Exp((Math.Log(product) + rest * Math.Log(2)) / values.Length);
        // The root of greatest numbers may round up beyond them, where their mean does not lie.
        return Math.Min(Math.ScaleB(root, (int)whole), double.MaxValue);
    }

    /// <summary>The harmonic mean, n over the sum of the reciprocals: the mean of rates over equal amounts of work. O(n).</summary>
    /// <param name="values">At least one value, each finite and above 0.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN, infinite or not above 0.</exception>
    public static double HarmonicMean(ReadOnlySpan<double> values)
    {
        Check.Positive(values);
        double least = values[0];
        foreach (double value in values)
        {
            least = Math.Min(least, value);
        }

        // In shares of the least value: reciprocals of denormals would overflow.
        var sum = new CompensatedSum();
        foreach (double value in values)
        {
            sum.Add(least / value);
        }

        return least * (values.Length / sum.Value);
    }

    /// <summary>The mean of what is left when a fraction of the values is cut off at each end; floor(fraction · n) values
    /// a side (tukey-mclaughlin-1963). O(n) on average, with a pooled copy of the values and no other allocation.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="fraction">The fraction cut off at each end, from 0 to below 0.5. A product with the count that lies
    /// within rounding of a whole number is that number.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the fraction is out of range.</exception>
    public static double TrimmedMean(ReadOnlySpan<double> values, double fraction)
    {
        Check.Finite(values);
        int cut = Trimming.CutOf(values.Length, fraction);
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> copy = scratch.AsSpan(0, values.Length);
        values.CopyTo(copy);
        double mean = SquaredDeviations.MeanAlone(Trimming.MiddleOf(copy, cut));
        ArrayPool<double>.Shared.Return(scratch);
        return mean;
    }

    /// <summary>The mean with a fraction of the values at each end replaced by the nearest one left;
    /// floor(fraction · n) values a side (tukey-mclaughlin-1963). O(n) on average, with a pooled copy of the values and no
    /// other allocation.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="fraction">The fraction replaced at each end, from 0 to below 0.5. A product with the count that lies
    /// within rounding of a whole number is that number.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the fraction is out of range.</exception>
    public static double WinsorizedMean(ReadOnlySpan<double> values, double fraction)
    {
        Check.Finite(values);
        int cut = Trimming.CutOf(values.Length, fraction);
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> copy = scratch.AsSpan(0, values.Length);
        values.CopyTo(copy);
        Trimming.Winsorize(copy, cut);
        double mean = SquaredDeviations.MeanAlone(copy);
        ArrayPool<double>.Shared.Return(scratch);
        return mean;
    }

    /// <summary>The median: the middle value, or the mean of the two middle ones where the count is even. O(n) on
    /// average, with pooled scratch and no other allocation.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public static double Median(ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        return MedianOf(values);
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

    /// <summary>The median of finite values, which are left as they are.</summary>
    internal static double MedianOf(ReadOnlySpan<double> values)
    {
        var order = new SampledOrder(values);
        (double at, double next) = order.Of((values.Length - 1) / 2);
        order.Return();
        return values.Length % 2 == 1 ? at : Middle(at, next);
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
