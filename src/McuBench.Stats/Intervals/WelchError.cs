using System.Runtime.InteropServices;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Intervals;

/// <summary>
/// The standard error of a difference of two means whose variances need not be equal, and its degrees of freedom
/// (welch-1947; satterthwaite-1946, eq. 17).
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct WelchError(double Value, double DegreesOfFreedom)
{
    /// <summary>The error of the difference in means of two samples of two values or more; 0 with NaN degrees of freedom
    /// where neither spreads.</summary>
    internal static WelchError Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second) =>
        Of(ErrorOfMean(first), first.Length - 1, ErrorOfMean(second), second.Length - 1);

    /// <summary>The error of a difference of two independent estimates with standard errors of their own.</summary>
    internal static WelchError Of(double first, double firstDf, double second, double secondDf)
    {
        double larger = Math.Max(first, second);
        if (larger == 0)
        {
            return new WelchError(0, double.NaN);
        }

        // In shares of the larger error, so that fourth powers neither overflow nor vanish.
        double a = first / larger * (first / larger);
        double b = second / larger * (second / larger);
        return new WelchError(larger * Math.Sqrt(a + b), (a + b) * (a + b) / (a * a / firstDf + b * b / secondDf));
    }

    private static double ErrorOfMean(ReadOnlySpan<double> values) =>
        SquaredDeviations.Of(values).RootOver(values.Length - 1) / Math.Sqrt(values.Length);
}
