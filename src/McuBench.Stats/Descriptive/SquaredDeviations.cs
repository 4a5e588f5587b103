using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace McuBench.Stats.Descriptive;

/// <summary>
/// The mean of values and the sum of their squared deviations from it, by the corrected two-pass algorithm
/// (chan-golub-leveque-1983, eq. 1.7), which keeps 14 digits where the textbook formula keeps none.
/// </summary>
/// <param name="Mean">The mean, divided by 2^<paramref name="Exponent"/>.</param>
/// <param name="Sum">The sum of squares, divided by 4^<paramref name="Exponent"/>.</param>
/// <param name="Exponent">The power of two by which the values had to be scaled to keep their squares in range;
/// 0 for all but extreme data.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SquaredDeviations(double Mean, double Sum, int Exponent)
{
    // Below this the squares of deviations are so near the denormals that they lose digits.
    private const double SmallestTrusted = 1e-280;

    /// <summary>The deviations of finite values, of which there is at least one. O(n), two passes.</summary>
    internal static SquaredDeviations Of(ReadOnlySpan<double> values)
    {
        if (values.IndexOfAnyExcept(values[0]) < 0)
        {
            // Rounding in the mean must not make a spread where there is none.
            return new SquaredDeviations(values[0], 0, 0);
        }

        double mean = CompensatedSum.Of(values) / values.Length;
        double sum = SumOf(values, mean, 0);
        if (double.IsFinite(mean) && double.IsFinite(sum) && sum >= SmallestTrusted)
        {
            return new SquaredDeviations(mean, sum, 0);
        }

        int exponent = ExponentOfLargest(values);
        mean = ScaledMean(values, exponent);
        return new SquaredDeviations(mean, SumOf(values, mean, -exponent), exponent);
    }

    /// <summary>The mean of values, of which there is at least one, also where their sum overflows; refuses what is not
    /// finite. O(n).</summary>
    internal static double MeanAlone(
        ReadOnlySpan<double> values,
        [CallerArgumentExpression(nameof(values))] string name = ""
    )
    {
        if (double.IsFinite(values[0]) && values.IndexOfAnyExcept(values[0]) < 0)
        {
            return values[0];
        }

        // NaN and infinity stay in a sum, so that a finite one has been looked through already.
        double mean = CompensatedSum.Of(values) / values.Length;
        if (double.IsFinite(mean))
        {
            return mean;
        }

        Check.Finite(values, name);
        int exponent = ExponentOfLargest(values);
        return Math.ScaleB(ScaledMean(values, exponent), exponent);
    }

    /// <summary>The mean in the unit of the data.</summary>
    internal double UnscaledMean => Math.ScaleB(Mean, Exponent);

    /// <summary>The square root of the sum divided by a divisor, in the unit of the data; never overflows.</summary>
    internal double RootOver(double divisor) => Math.ScaleB(Math.Sqrt(Sum / divisor), Exponent);

    private static double ScaledMean(ReadOnlySpan<double> values, int exponent)
    {
        var total = new CompensatedSum();
        foreach (double value in values)
        {
            total.Add(Math.ScaleB(value, -exponent));
        }

        return total.Value / values.Length;
    }

    private static double SumOf(ReadOnlySpan<double> values, double mean, int scale)
    {
        double squares = 0;
        double rest = 0;
        foreach (double value in values)
        {
            double deviation = (scale == 0 ? value : Math.ScaleB(value, scale)) - mean;
            squares += deviation * deviation;
            rest += deviation;
        }

        // Deviations from the exact mean add up to 0; what they do add up to corrects for the rounded one.
        return Math.Max(0, squares - rest * rest / values.Length);
    }

    private static int ExponentOfLargest(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        // One more than the exponent brings all values below 1, so that sums of 2^31 squares stay in range.
        return Math.ILogB(largest) + 1;
    }
}
