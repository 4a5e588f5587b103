namespace McuBench.Stats.Distributions;

/// <summary>The F distribution with real degrees of freedom.</summary>
/// <remarks>
/// <para>Immutable; equal when both degrees of freedom are equal. Safe to use from many threads. Density and tails take
/// O(1) steps (at most some dozens), a quantile a few tails; nothing is allocated.</para>
/// <para>Density, both tails and the quantiles hold a relative accuracy of 1e-12 or better down to tails of 1e-300, at
/// 0.1 to 1e8 degrees of freedom. A tail or quantile too small for a double is 0. Sources: DLMF 8.17; DiDonato and Morris
/// 1992; Loader 2000; Abramowitz and Stegun 26.5.22 (start of the quantile).</para>
/// </remarks>
public sealed record FisherF
{
    private readonly IncompleteBeta _function;

    private FisherF(double numerator, double denominator)
    {
        NumeratorDegreesOfFreedom = numerator;
        DenominatorDegreesOfFreedom = denominator;
        _function = new IncompleteBeta(numerator / 2, denominator / 2);
    }

    /// <summary>The degrees of freedom of the numerator, above 0 and not necessarily whole.</summary>
    public double NumeratorDegreesOfFreedom { get; }

    /// <summary>The degrees of freedom of the denominator, above 0 and not necessarily whole.</summary>
    public double DenominatorDegreesOfFreedom { get; }

    /// <summary>The F distribution of some degrees of freedom.</summary>
    /// <param name="numeratorDegreesOfFreedom">From 0.001 to 1e15; need not be whole.</param>
    /// <param name="denominatorDegreesOfFreedom">From 0.001 to 1e15; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or out of its range.</exception>
    public static FisherF Of(double numeratorDegreesOfFreedom, double denominatorDegreesOfFreedom) =>
        new(
            Argument.Shape(numeratorDegreesOfFreedom, "Degrees of freedom of the numerator"),
            Argument.Shape(denominatorDegreesOfFreedom, "Degrees of freedom of the denominator")
        );

    /// <summary>The probability density at <paramref name="x"/>; 0 below 0.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite, or 0 with fewer than 2
    /// degrees of freedom of the numerator, where the density is unbounded.</exception>
    public double Density(double x) => Argument.FiniteDensity(DensityAt(Argument.Finite(x, "Value")), x);

    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double Cdf(double x) => TailsAt(Argument.Finite(x, "Value")).Lower;

    /// <summary>The probability of a value above <paramref name="x"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite.</exception>
    public double UpperTail(double x) => TailsAt(Argument.Finite(x, "Value")).Upper;

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double Quantile(double probability) => QuantileAt(Argument.Probability(probability), isUpper: false);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double UpperQuantile(double probability) => QuantileAt(Argument.Probability(probability), isUpper: true);

    private double DensityAt(double x)
    {
        if (x > 0)
        {
            var (p, q, excess) = Place(x);
            return _function.Prefactor(p, q, excess) / x;
        }

        return x < 0 || _function.A > 1 ? 0
            : _function.A < 1 ? double.PositiveInfinity
            : 1;
    }

    private (double Lower, double Upper) TailsAt(double x)
    {
        if (!(x > 0))
        {
            return (0, 1);
        }

        var (p, q, excess) = Place(x);
        var (lower, upper, _) = _function.Tails(p, q, excess);
        return (lower, upper);
    }

    private double QuantileAt(double probability, bool isUpper) =>
        Argument.FiniteQuantile(
            BetaQuantile.Odds(_function, probability, isUpper) * (_function.B / _function.A),
            probability
        );

    /// <summary>The argument of the incomplete beta function, its complement, and what it lacks to the mean.</summary>
    private (double X, double Y, double Excess) Place(double x)
    {
        var odds = _function.A / _function.B * x;
        return odds < 1
            ? (odds / (1 + odds), 1 / (1 + odds), _function.A * (1 - x) / (1 + odds))
            // In this form nothing overflows.
            : (1 / (1 + (1 / odds)), 1 / odds / (1 + (1 / odds)), _function.B * ((1 - x) / x) / (1 + (1 / odds)));
    }
}
