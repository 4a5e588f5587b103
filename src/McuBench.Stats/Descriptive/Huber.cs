using System.Buffers;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Descriptive;

/// <summary>Huber's estimates: means of values that are pulled in where they lie too far out (huber-1964).</summary>
public static class Huber
{
    private const int MostIterations = 10_000;

    /// <summary>The location at which values, pulled in to a number of median absolute deviations around it, have their
    /// mean; with the scale held at 1.4826 times the median absolute deviation. O(n) a round, few rounds.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="tuning">At how many scales values are pulled in, above 0; 1.345 is 95 % as precise as the mean on
    /// normal data.</param>
    /// <returns>The location; the median where more than half of the values are equal, which is its limit.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the tuning is not above 0.</exception>
    public static double Location(ReadOnlySpan<double> values, double tuning = 1.5)
    {
        Check.Positive(tuning, "Tuning");
        double location = Descriptive.Location.Median(values);
        double reach = tuning * Scale.MedianAbsoluteDeviation(values);
        if (reach == 0)
        {
            return location;
        }

        // Newton's method on a falling piecewise linear function, kept between values on both sides of its root.
        double low = double.NegativeInfinity;
        double high = double.PositiveInfinity;
        for (int i = 0; i < MostIterations; i++)
        {
            (double pull, int inside) = Pull(values, location, reach);
            if (pull == 0)
            {
                break;
            }

            (low, high) = pull > 0 ? (location, high) : (low, location);
            double next = inside > 0 ? location + pull / inside : location + Math.CopySign(reach, pull);
            if (!(next > low && next < high))
            {
                next = Descriptive.Location.Middle(low, high);
            }

            if (!(next > low && next < high) || Math.Abs(next - location) <= 1e-16 * Math.Abs(location))
            {
                break;
            }

            location = next;
        }

        return location;
    }

    /// <summary>Algorithm A of the standard for proficiency testing (iso-13528, C.3), the same fixed point as Huber's
    /// proposal 2: mean and standard deviation of values pulled in at a number of standard deviations, iterated until
    /// neither changes. O(n) a round, some tens of rounds.</summary>
    /// <remarks>Starts from the median and 1.4826 times the median absolute deviation, or the standard deviation where that
    /// is 0. Up to about a third of the values may be wild.</remarks>
    /// <param name="values">At least two values, each finite.</param>
    /// <param name="options">The constants; <see cref="AlgorithmAOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the values spread over more than the
    /// square root of the greatest number.</exception>
    public static LocationAndScale AlgorithmA(ReadOnlySpan<double> values, AlgorithmAOptions? options = null)
    {
        options ??= AlgorithmAOptions.Default;
        double location = Descriptive.Location.Median(values);
        double scale = Scale.MedianAbsoluteDeviation(values);
        if (scale == 0)
        {
            scale = Scale.StandardDeviation(values);
        }

        Check.AtLeast(values.Length, 2, nameof(values));
        double factor = options.ScaleFactor ?? ExactFactor(options.Tuning);
        double smallest = 1e-12 * scale;
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> pulled = scratch.AsSpan(0, values.Length);
        int iterations = 0;
        bool converged = scale == 0;
        while (!converged && iterations < MostIterations)
        {
            double reach = options.Tuning * scale;
            for (int i = 0; i < pulled.Length; i++)
            {
                pulled[i] = Math.Clamp(values[i], location - reach, location + reach);
            }

            var deviations = SquaredDeviations.Of(pulled);
            double mean = deviations.UnscaledMean;
            double spread = factor * deviations.RootOver(pulled.Length - 1);
            converged = Math.Abs(mean - location) <= 1e-14 * scale && Math.Abs(spread - scale) <= 1e-14 * scale;
            (location, scale) = (mean, spread);
            iterations++;
            if (scale <= smallest)
            {
                // Shrinking by the same share each round, towards nothing: most values are equal.
                (location, scale, converged) = (Descriptive.Location.Median(values), 0, true);
            }
        }

        ArrayPool<double>.Shared.Return(scratch);
        return new LocationAndScale(location, scale, iterations, converged);
    }

    /// <summary>1/√E(min(z², k²)) for standard normal z: what pulling in at k takes from a standard deviation.</summary>
    private static double ExactFactor(double k)
    {
        double tail = Normal.Standard.UpperTail(k);
        double inside = 1 - 2 * tail - 2 * k * Normal.Standard.Density(k);
        return 1 / Math.Sqrt(inside + 2 * k * k * tail);
    }

    /// <summary>The sum of pulled-in deviations from a location, and how many are not pulled in.</summary>
    private static (double Sum, int Inside) Pull(ReadOnlySpan<double> values, double location, double reach)
    {
        var sum = new CompensatedSum();
        int inside = 0;
        foreach (double value in values)
        {
            double deviation = value - location;
            inside += Math.Abs(deviation) <= reach ? 1 : 0;
            sum.Add(Math.Clamp(deviation, -reach, reach));
        }

        return (sum.Value, inside);
    }
}
