using MathNet.Numerics;

namespace McuBench.Stats.Distributions;

/// <summary>A normal (Gaussian) distribution.</summary>
/// <remarks>
/// <para>Immutable; equal when mean and standard deviation are equal. Safe to use from many threads. Every call is
/// O(1) and allocates nothing.</para>
/// <para>Both tails hold a relative accuracy of 1e-12 or better down to 1e-300, the quantiles likewise (relative to
/// their distance from the mean). A tail too small for a double is 0. Source: DLMF 7.2.</para>
/// </remarks>
public sealed record Normal
{
    private Normal(double mean, double standardDeviation)
    {
        Mean = mean;
        StandardDeviation = standardDeviation;
    }

    /// <summary>Mean 0, standard deviation 1.</summary>
    public static Normal Standard { get; } = new(0, 1);

    /// <summary>The mean, in the unit of the values.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation, in the unit of the values.</summary>
    public double StandardDeviation { get; }

    /// <summary>The normal distribution of a mean and a standard deviation.</summary>
    /// <param name="mean">The mean; finite.</param>
    /// <param name="standardDeviation">The standard deviation; finite, positive and not denormal.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN, infinite or out of its range.</exception>
    public static Normal Of(double mean, double standardDeviation) =>
        new(Argument.Finite(mean, "Mean"), Argument.Scale(standardDeviation, "Standard deviation"));

    /// <summary>The probability density at <paramref name="x"/>.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double Density(double x) => StandardDensity(Standardise(x)) / StandardDeviation;

    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double Cdf(double x) => StandardUpperTail(-Standardise(x));

    /// <summary>The probability of a value above <paramref name="x"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double UpperTail(double x) => StandardUpperTail(Standardise(x));

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1: at the ends the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double Quantile(double probability) =>
        Place(-StandardUpperQuantile(Argument.Probability(probability)), probability);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1: at the ends the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double UpperQuantile(double probability) =>
        Place(StandardUpperQuantile(Argument.Probability(probability)), probability);

    /// <summary>The standard normal density.</summary>
    internal static double StandardDensity(double z) => Math.Exp(-0.5 * z * z) / Elementary.SqrtTwoPi;

    /// <summary>The probability that a standard normal value exceeds <paramref name="z"/>.</summary>
    internal static double StandardUpperTail(double z) => 0.5 * SpecialFunctions.Erfc(z / Constants.Sqrt2);

    /// <summary>The logarithm of the standard upper tail, also where the tail is too small for a double.</summary>
    internal static double StandardLogUpperTail(double z)
    {
        if (z < 0)
        {
            return Elementary.Log1p(-StandardUpperTail(-z));
        }

        if (z < 30)
        {
            return Math.Log(StandardUpperTail(z));
        }

        // DLMF 7.12.1; the first term left out is 105/z⁸, below 2e-10 of what is small beside z²/2.
        double r = 1 / (z * z);
        return -0.5 * z * z - Math.Log(z * Elementary.SqrtTwoPi) + Elementary.Log1p(r * (-1 + r * (3 - 15 * r)));
    }

    /// <summary>The standard normal value exceeded with a probability in (0, 1).</summary>
    internal static double StandardUpperQuantile(double probability) =>
        Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * probability);

    private double Standardise(double x) => (Argument.Finite(x, "Value", nameof(x)) - Mean) / StandardDeviation;

    private double Place(double z, double probability) =>
        Argument.FiniteQuantile(Math.FusedMultiplyAdd(z, StandardDeviation, Mean), probability);
}
