namespace McuBench.Stats.Distributions;

/// <summary>The chi-square distribution with real degrees of freedom.</summary>
/// <remarks>
/// <para>Immutable; equal when the degrees of freedom are equal. Safe to use from many threads. Density and tails take
/// O(1) steps (at most some dozens), a quantile a few tails; nothing is allocated.</para>
/// <para>Density, both tails and the quantiles hold a relative accuracy of 1e-12 or better down to tails of 1e-300, at
/// 0.1 to 1e8 degrees of freedom. A tail or quantile too small for a double is 0. Sources: as for
/// <see cref="GammaDistribution"/>.</para>
/// </remarks>
public sealed record ChiSquared
{
    private readonly IncompleteGamma _function;

    private ChiSquared(double degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        _function = new IncompleteGamma(degreesOfFreedom / 2);
    }

    /// <summary>The degrees of freedom, above 0 and not necessarily whole.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The chi-square distribution of some degrees of freedom.</summary>
    /// <param name="degreesOfFreedom">From 0.001 to 1e15; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="degreesOfFreedom"/> is NaN or out of its
    /// range.</exception>
    public static ChiSquared Of(double degreesOfFreedom) => new(Argument.Shape(degreesOfFreedom, "Degrees of freedom"));

    /// <summary>The probability density at <paramref name="x"/>; 0 below 0.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite, or 0 with fewer than 2
    /// degrees of freedom, where the density is unbounded.</exception>
    public double Density(double x) =>
        Argument.FiniteDensity(StandardGamma.Density(_function, Argument.Finite(x, "Value"), 2) / 2, x);

    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double Cdf(double x) => StandardGamma.Tails(_function, Argument.Finite(x, "Value"), 2).Lower;

    /// <summary>The probability of a value above <paramref name="x"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double UpperTail(double x) => StandardGamma.Tails(_function, Argument.Finite(x, "Value"), 2).Upper;

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below
    /// 1.</exception>
    public double Quantile(double probability) =>
        2 * StandardGamma.Quantile(_function, Argument.Probability(probability), isUpper: false);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below
    /// 1.</exception>
    public double UpperQuantile(double probability) =>
        2 * StandardGamma.Quantile(_function, Argument.Probability(probability), isUpper: true);
}
