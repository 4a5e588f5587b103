namespace McuBench.Stats.Distributions;

/// <summary>A beta distribution on [0, 1].</summary>
/// <remarks>
/// <para>Immutable; equal when both shapes are equal. Safe to use from many threads. Density and tails take O(1) steps
/// (at most some dozens), a quantile a few tails; nothing is allocated.</para>
/// <para>Density, both tails and the quantiles hold a relative accuracy of 1e-12 or better down to tails of 1e-300, at
/// shapes of 0.05 to 5e7. A tail or quantile too small for a double is 0, a quantile closer to 1 than a double can show
/// is 1. Sources: DLMF 8.17; DiDonato and Morris 1992; Loader 2000; Abramowitz and Stegun 26.5.22 (start of the
/// quantile).</para>
/// </remarks>
public sealed record BetaDistribution
{
    private readonly IncompleteBeta _function;

    private BetaDistribution(double alpha, double beta)
    {
        Alpha = alpha;
        Beta = beta;
        _function = new IncompleteBeta(alpha, beta);
    }

    /// <summary>The first shape, above 0; the power of x in the density is one less.</summary>
    public double Alpha { get; }

    /// <summary>The second shape, above 0; the power of 1 − x in the density is one less.</summary>
    public double Beta { get; }

    /// <summary>The beta distribution of two shapes.</summary>
    /// <param name="alpha">The first shape; from 0.001 to 1e15.</param>
    /// <param name="beta">The second shape; from 0.001 to 1e15.</param>
    /// <exception cref="ArgumentOutOfRangeException">A shape is NaN or out of its range.</exception>
    public static BetaDistribution Of(double alpha, double beta) =>
        new(Argument.Shape(alpha, "First shape"), Argument.Shape(beta, "Second shape"));

    /// <summary>The probability density at <paramref name="x"/>; 0 outside [0, 1].</summary>
    /// <param name="x">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is NaN or infinite, or an end at which the
    /// shape is below 1 and the density therefore unbounded.</exception>
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
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1.</exception>
    public double Quantile(double probability) => QuantileAt(Argument.Probability(probability), isUpper: false);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1.</exception>
    public double UpperQuantile(double probability) => QuantileAt(Argument.Probability(probability), isUpper: true);

    private static double AtEnd(double shape, double other) =>
        shape > 1 ? 0
        : shape < 1 ? double.PositiveInfinity
        : other;

    private double DensityAt(double x) =>
        x < 0 || x > 1 ? 0
        : x == 0 ? AtEnd(Alpha, Beta)
        : x == 1 ? AtEnd(Beta, Alpha)
        : _function.Prefactor(x, 1 - x, Excess(x)) / x / (1 - x);

    private (double Lower, double Upper) TailsAt(double x)
    {
        if (!(x > 0))
        {
            return (0, 1);
        }

        if (!(x < 1))
        {
            return (1, 0);
        }

        var (lower, upper, _) = _function.Tails(x, 1 - x, Excess(x));
        return (lower, upper);
    }

    private double QuantileAt(double probability, bool isUpper)
    {
        var odds = BetaQuantile.Odds(_function, probability, isUpper);
        return double.IsFinite(odds) ? odds / (1 + odds) : 1;
    }

    /// <summary>α(1 − x) − βx, with the rounding of every operation carried along.</summary>
    private double Excess(double x)
    {
        var ax = Alpha * x;
        var bx = Beta * x;
        var first = Alpha - ax;
        var second = first - bx;
        var rest =
            Rest(Alpha, ax, first)
            + Rest(first, bx, second)
            - Math.FusedMultiplyAdd(Alpha, x, -ax)
            - Math.FusedMultiplyAdd(Beta, x, -bx);
        return second + rest;
    }

    /// <summary>a − b less its rounded value: Knuth's exact difference.</summary>
    private static double Rest(double a, double b, double difference)
    {
        var virtualB = difference - a;
        return a - (difference - virtualB) - (b + virtualB);
    }
}
