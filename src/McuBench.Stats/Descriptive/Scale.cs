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
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> copy = scratch.AsSpan(0, values.Length);
        values.CopyTo(copy);
        double median = Location.MedianInPlace(copy);
        for (int i = 0; i < copy.Length; i++)
        {
            copy[i] = Math.Abs(copy[i] - median);
        }

        double deviation = Location.MedianInPlace(copy);
        ArrayPool<double>.Shared.Return(scratch);
        double factor = consistency switch
        {
            Consistency.None => 1,
            Consistency.Normal => MadConsistency,
            _ => MadConsistency * MadSmallSampleFactor(values.Length),
        };
        return Check.Representable(factor * deviation, "Median absolute deviation", nameof(values));
    }

    private static double MadSmallSampleFactor(int count)
    {
        ReadOnlySpan<double> upToNine = [1.196, 1.495, 1.363, 1.206, 1.200, 1.140, 1.129, 1.107];
        return count <= 9 ? upToNine[count - 2] : count / (count - 0.8);
    }

    private static SquaredDeviations DeviationsOfTwoOrMore(ReadOnlySpan<double> values)
    {
        Check.Finite(values);
        Check.AtLeast(values.Length, 2, nameof(values));
        return SquaredDeviations.Of(values);
    }
}
