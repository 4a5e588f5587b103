using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>How far values spread. Results are in the unit of the values, or its square for variances.</summary>
/// <remarks>
/// Every method refuses an empty span with an <see cref="ArgumentException"/>, and a value that is NaN or infinite with
/// an <see cref="ArgumentOutOfRangeException"/> that names its index. Nothing here keeps state.
/// </remarks>
public static class Scale
{
    /// <summary>1/Φ⁻¹(3/4): the standard deviation of a normal population over its median absolute deviation.</summary>
    private const double MadConsistency = 1.482602218505602;

    /// <summary>1/(2 Φ⁻¹(3/4)): the standard deviation of a normal population over its interquartile range.</summary>
    private const double IqrConsistency = 0.741301109252801;

    /// <summary>The variance with divisor n − 1, by the corrected two-pass algorithm (chan-golub-leveque-1983), which
    /// holds its digits however large the mean is beside the spread; exactly 0 where all values are equal. O(n).</summary>
    /// <param name="values">At least two values, each finite.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the variance is above the greatest
    /// number, which takes a spread above 1e154: use <see cref="StandardDeviation"/> there.</exception>
    public static double Variance(ReadOnlySpan<double> values)
    {
        SquaredDeviations deviations = DeviationsOfTwoOrMore(values);
        double variance = Math.ScaleB(deviations.Sum / (values.Length - 1), 2 * deviations.Exponent);
        return Check.Representable(variance, "Variance", nameof(values));
    }

    /// <summary>The standard deviation with divisor n − 1: the square root of <see cref="Variance"/>, computed so that
    /// it neither overflows nor underflows on the way. O(n).</summary>
    /// <param name="values">At least two values, each finite.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the standard deviation is above the
    /// greatest number.</exception>
    public static double StandardDeviation(ReadOnlySpan<double> values)
    {
        double deviation = DeviationsOfTwoOrMore(values).RootOver(values.Length - 1);
        return Check.Representable(deviation, "Standard deviation", nameof(values));
    }

    /// <summary>The median absolute deviation from the median (hampel-1974); 0 where more than half of the values are
    /// equal. O(n) on average, with a pooled copy of the values and no other allocation.</summary>
    /// <param name="values">At least one value, each finite; two for the small-sample factor.</param>
    /// <param name="consistency">The factor: none; 1.4826, with which it estimates the standard deviation of a normal
    /// population; or this and the factor for small samples of croux-rousseeuw-1992, which rests on simulation and
    /// holds to about 1 %.</param>
    /// <exception cref="ArgumentException">There are too few values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the result is above the greatest
    /// number, or the consistency is not one of its named values.</exception>
    public static double MedianAbsoluteDeviation(
        ReadOnlySpan<double> values,
        Consistency consistency = Consistency.Normal
    )
    {
        Check.Finite(values);
        Check.Named(consistency);
        Check.AtLeast(values.Length, consistency == Consistency.NormalSmallSample ? 2 : 1, nameof(values));
        double median = Location.MedianOf(values);
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> distances = scratch.AsSpan(0, values.Length);
        for (int i = 0; i < distances.Length; i++)
        {
            distances[i] = Math.Abs(values[i] - median);
        }

        double deviation = Location.MedianOf(distances);
        ArrayPool<double>.Shared.Return(scratch);
        double factor = consistency switch
        {
            Consistency.None => 1,
            Consistency.Normal => MadConsistency,
            _ => MadConsistency * MadSmallSampleFactor(values.Length),
        };
        return Check.Representable(factor * deviation, "Median absolute deviation", nameof(values));
    }

    /// <summary>Sn: the low median of the high medians of the distances of each value to the others
    /// (rousseeuw-croux-1993). It needs no centre, so it suits skewed values; up to half of them may be wild. O(n log n),
    /// with pooled copies and no other allocation.</summary>
    /// <param name="values">At least two values, each finite.</param>
    /// <param name="consistency">The factor: by default 1.1926 and that for small samples.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the result is above the greatest number,
    /// or the consistency is not one of its named values.</exception>
    public static double Sn(ReadOnlySpan<double> values, Consistency consistency = Consistency.NormalSmallSample)
    {
        Check.Named(consistency);
        int n = CountOfTwoOrMore(values);
        double[] scratch = ArrayPool<double>.Shared.Rent(2 * n);
        Span<double> sorted = scratch.AsSpan(0, n);
        values.CopyTo(sorted);
        sorted.Sort();
        double raw = RousseeuwCroux.Sn(sorted, scratch.AsSpan(n, n));
        ArrayPool<double>.Shared.Return(scratch);
        return Check.Representable(raw * RousseeuwCroux.SnFactor(n, consistency), "Sn", nameof(values));
    }

    /// <summary>Qn: about the lower quartile of the distances of all pairs of values (rousseeuw-croux-1993), 82 % as
    /// precise as the standard deviation on normal data; up to half of the values may be wild. 0 where more than half are
    /// equal. O(n log n), with pooled copies and no other allocation.</summary>
    /// <param name="values">At least two values, each finite.</param>
    /// <param name="consistency">The factor: by default 2.21914 and that for small samples.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the result is above the greatest number,
    /// or the consistency is not one of its named values.</exception>
    public static double Qn(ReadOnlySpan<double> values, Consistency consistency = Consistency.NormalSmallSample)
    {
        Check.Named(consistency);
        int n = CountOfTwoOrMore(values);
        double[] scratch = ArrayPool<double>.Shared.Rent(n);
        Span<double> sorted = scratch.AsSpan(0, n);
        values.CopyTo(sorted);
        sorted.Sort();
        double raw = RousseeuwCroux.Qn(sorted);
        ArrayPool<double>.Shared.Return(scratch);
        return Check.Representable(raw * RousseeuwCroux.QnFactor(n, consistency), "Qn", nameof(values));
    }

    /// <summary>The interquartile range: upper less lower quartile. O(n) on average.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="definition">Which of the nine quantiles the quartiles are.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the result is above the greatest number,
    /// or the definition is not one of the nine.</exception>
    public static double InterquartileRange(
        ReadOnlySpan<double> values,
        QuantileDefinition definition = QuantileDefinition.HyndmanFan7
    )
    {
        Span<double> quartiles = stackalloc double[2];
        Quantiles.Of(values, [0.25, 0.75], quartiles, definition);
        return Check.Representable(quartiles[1] - quartiles[0], "Interquartile range", nameof(values));
    }

    /// <summary>The interquartile range times 0.7413, with which it estimates the standard deviation of a normal
    /// population as the count grows. O(n) on average.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="definition">Which of the nine quantiles the quartiles are.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the range is above the greatest number,
    /// or the definition is not one of the nine.</exception>
    public static double NormalizedInterquartileRange(
        ReadOnlySpan<double> values,
        QuantileDefinition definition = QuantileDefinition.HyndmanFan7
    ) => IqrConsistency * InterquartileRange(values, definition);

    /// <summary>The variance, with divisor n − 1, of values whose ends are pulled in as in
    /// <see cref="Location.WinsorizedMean"/>. O(n) on average.</summary>
    /// <param name="values">At least two values, each finite.</param>
    /// <param name="fraction">The fraction replaced at each end, from 0 to below 0.5.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the fraction is out of range, or the
    /// variance is above the greatest number.</exception>
    public static double WinsorizedVariance(ReadOnlySpan<double> values, double fraction)
    {
        int n = CountOfTwoOrMore(values);
        int cut = Trimming.CutOf(n, fraction);
        double[] scratch = ArrayPool<double>.Shared.Rent(n);
        Span<double> copy = scratch.AsSpan(0, n);
        values.CopyTo(copy);
        Trimming.Winsorize(copy, cut);
        double variance = Variance(copy);
        ArrayPool<double>.Shared.Return(scratch);
        return variance;
    }

    private static double MadSmallSampleFactor(int count)
    {
        ReadOnlySpan<double> upToNine = [1.196, 1.495, 1.363, 1.206, 1.200, 1.140, 1.129, 1.107];
        return count <= 9 ? upToNine[count - 2] : count / (count - 0.8);
    }

    private static SquaredDeviations DeviationsOfTwoOrMore(ReadOnlySpan<double> values)
    {
        CountOfTwoOrMore(values);
        return SquaredDeviations.Of(values);
    }

    private static int CountOfTwoOrMore(ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        Check.AtLeast(values.Length, 2, nameof(values));
        return values.Length;
    }
}
