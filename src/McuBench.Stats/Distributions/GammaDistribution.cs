namespace McuBench.Stats.Distributions;

/// <summary>A gamma distribution with a shape and a scale.</summary>
/// <remarks>
/// <para>Immutable; equal when shape and scale are equal. Safe to use from many threads. Density and tails take O(1)
/// steps (at most some dozens), a quantile a few tails; nothing is allocated.</para>
/// <para>Density, both tails and the quantiles hold a relative accuracy of 1e-12 or better down to tails of 1e-300, at
/// shapes of 0.05 to 5e7. A tail or quantile too small for a double is 0. Sources: DLMF 8; Loader 2000; Wilson and
/// Hilferty 1931 (start of the quantile).</para>
/// </remarks>
public sealed record GammaDistribution
{
    private readonly IncompleteGamma _function;

    private GammaDistribution(double shape, double scale)
    {
        Shape = shape;
        Scale = scale;
        _function = new IncompleteGamma(shape);
    }

    /// <summary>The shape, above 0.</summary>
    public double Shape { get; }

    /// <summary>The scale, in the unit of the values; mean over shape.</summary>
    public double Scale { get; }

    /// <summary>The gamma distribution of a shape and a scale (not a rate).</summary>
    /// <param name="shape">The shape; from 0.001 to 1e15.</param>
    /// <param name="scale">The scale; finite, positive and not denormal.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN, infinite or out of its range.</exception>
    public static GammaDistribution Of(double shape, double scale) =>
        new(Argument.Shape(shape, "Shape"), Argument.Scale(scale, "Scale"));

    /// <summary>The probability density at <paramref name="x"/>; 0 below 0.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite, or 0 where the shape is
    /// below 1 and the density therefore unbounded.</exception>
    public double Density(double x) =>
        Argument.FiniteDensity(StandardGamma.Density(_function, Argument.Finite(x, "Value"), Scale) / Scale, x);

    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double Cdf(double x) => StandardGamma.Tails(_function, Argument.Finite(x, "Value"), Scale).Lower;

    /// <summary>The probability of a value above <paramref name="x"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double UpperTail(double x) => StandardGamma.Tails(_function, Argument.Finite(x, "Value"), Scale).Upper;

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double Quantile(double probability) =>
        Argument.FiniteQuantile(
            Scale * StandardGamma.Quantile(_function, Argument.Probability(probability), isUpper: false),
            probability
        );

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double UpperQuantile(double probability) =>
        Argument.FiniteQuantile(
            Scale * StandardGamma.Quantile(_function, Argument.Probability(probability), isUpper: true),
            probability
        );
}
