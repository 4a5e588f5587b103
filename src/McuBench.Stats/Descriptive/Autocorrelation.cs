using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>How values in a series go with those some places later.</summary>
public static class Autocorrelation
{
    /// <summary>The autocorrelation at a lag: the sum of products of deviations from the mean, those a lag apart, over the sum of
    /// their squares (box-jenkins-1976, eq. 2.1.11). O(n).</summary>
    /// <remarks>From −1 to 1. A shift or scale of all values changes nothing. On independent values it is about −1/n on average,
    /// not 0: see <see cref="LagOne"/>.</remarks>
    /// <param name="values">The values in the order in which they were taken, more than the lag, not all equal.</param>
    /// <param name="lag">How many places apart, 1 or more.</param>
    /// <exception cref="ArgumentException">There are too few values for the lag, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the lag is below 1.</exception>
    public static double AtLag(ReadOnlySpan<double> values, int lag)
    {
        if (lag < 1)
        {
            throw Check.OutOfRange(nameof(lag), "Lag", "1 or more", lag);
        }

        Check.Finite(values);
        Check.AtLeast(values.Length, lag == int.MaxValue ? lag : lag + 1, nameof(values));
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> deviations = scratch.AsSpan(0, values.Length);
        double squares = FillDeviations(values, deviations, nameof(values));
        double correlation = Products(deviations, lag) / squares;
        ArrayPool<double>.Shared.Return(scratch);
        return correlation;
    }

    /// <summary>The autocorrelation at lag 1, as it is or with its bias taken off: r + (1 + 4r)/n, as the mean of r in a series
    /// whose neighbours correlate by ρ is ρ − (1 + 4ρ)/n to the first order (kendall-1954; marriott-pope-1954). O(n).</summary>
    /// <remarks>The adjusted one is held between −1 and 1; it is rough below ten values, and spreads more than the other.</remarks>
    /// <param name="values">The values in the order in which they were taken, two or more, not all equal.</param>
    /// <param name="bias">Whether it is adjusted.</param>
    /// <exception cref="ArgumentException">There is one value, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the bias is not a named one.</exception>
    public static double LagOne(ReadOnlySpan<double> values, Bias bias = Bias.Kept)
    {
        Check.Named(bias);
        double kept = AtLag(values, 1);
        return bias == Bias.Kept ? kept : Math.Clamp(kept + (1 + 4 * kept) / values.Length, -1, 1);
    }

    /// <summary>The autocorrelations at lags from 1 on, of more finite values than lags. O(n) for each lag.</summary>
    internal static void Fill(ReadOnlySpan<double> values, Span<double> correlations, string name)
    {
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> deviations = scratch.AsSpan(0, values.Length);
        double squares = FillDeviations(values, deviations, name);
        for (int lag = 1; lag <= correlations.Length; lag++)
        {
            correlations[lag - 1] = Products(deviations, lag) / squares;
        }

        ArrayPool<double>.Shared.Return(scratch);
    }

    /// <summary>The deviations from the mean, in a unit in which their squares stay in range; refuses values that are all
    /// equal.</summary>
    /// <returns>The sum of their squares.</returns>
    internal static double FillDeviations(ReadOnlySpan<double> values, Span<double> deviations, string name)
    {
        var squared = SquaredDeviations.Of(values);
        if (squared.Sum == 0)
        {
            throw new ArgumentException(
                "Values must differ; all were equal, which leaves no correlation in series.",
                name
            );
        }

        var rest = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            double value = squared.Exponent == 0 ? values[i] : Math.ScaleB(values[i], -squared.Exponent);
            deviations[i] = value - squared.Mean;
            rest.Add(deviations[i]);
        }

        // Deviations from the exact mean add up to 0; what they do add up to corrects for the rounded one.
        double correction = rest.Value / values.Length;
        double squares = 0;
        foreach (ref double deviation in deviations)
        {
            deviation -= correction;
            squares += deviation * deviation;
        }

        return squares;
    }

    private static double Products(ReadOnlySpan<double> deviations, int lag)
    {
        double sum = 0;
        for (int i = lag; i < deviations.Length; i++)
        {
            sum += deviations[i] * deviations[i - lag];
        }

        return sum;
    }
}
