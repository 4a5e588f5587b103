using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>The regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 − P(a, x) of a fixed shape a.</summary>
/// <remarks>Whichever is smaller keeps its relative accuracy. Sources: DLMF 8.11.4 (series), 8.9.2 (continued fraction);
/// Loader 2000 (prefactor).</remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct IncompleteGamma
{
    // From here on the series and the fraction take longer than a quadrature of fixed length.
    private const double QuadratureFrom = 3000;
    private const int MaximumTerms = 100_000;

    private readonly double _scale;

    internal IncompleteGamma(double a)
    {
        A = a;
        _scale = Math.Sqrt(a) / Elementary.SqrtTwoPi * Math.Exp(-GammaFunction.StirlingError(a));
    }

    /// <summary>The shape.</summary>
    internal double A { get; }

    /// <summary>x^a e^(−x)/Γ(a), for x above 0.</summary>
    /// <param name="x">The argument.</param>
    /// <param name="difference">x − a, which cancels and is therefore the caller's to compute.</param>
    internal double Prefactor(double x, double difference) => _scale * Math.Exp(-Deviance.Of(A, x, difference));

    /// <summary>P and Q at x above 0, and the prefactor x^a e^(−x)/Γ(a).</summary>
    /// <param name="x">The argument.</param>
    /// <param name="difference">x − a, which cancels and is therefore the caller's to compute.</param>
    internal (double Lower, double Upper, double Prefactor) Tails(double x, double difference)
    {
        var prefactor = Prefactor(x, difference);
        if (difference < 0)
        {
            var lower =
                prefactor
                * (A < QuadratureFrom ? Series(A, x) : TailQuadrature.Integrate(new Ratio(A, x, difference, -1)) / x);
            return (lower, 1 - lower, prefactor);
        }

        var upper =
            prefactor
            * (
                A < QuadratureFrom
                    ? 1 / ContinuedFraction(A, x)
                    : TailQuadrature.Integrate(new Ratio(A, x, difference, 1)) / x
            );
        return (1 - upper, upper, prefactor);
    }

    private static double Series(double a, double x)
    {
        var (term, sum) = (1 / a, 1 / a);
        for (var n = 1; term > 1e-17 * sum; n++)
        {
            term *= x / (a + n);
            sum += term;
        }

        return sum;
    }

    private static double ContinuedFraction(double a, double x)
    {
        var denominator = x - a + 1;
        var (fraction, c, d) = (denominator, denominator, 0.0);
        for (var n = 1; n < MaximumTerms; n++)
        {
            var numerator = n * (a - n);
            denominator += 2;
            d = 1 / Math.FusedMultiplyAdd(numerator, d, denominator);
            c = denominator + (numerator / c);
            var factor = c * d;
            fraction *= factor;
            if (Math.Abs(factor - 1) < 3e-16)
            {
                return fraction;
            }
        }

        throw new InvalidOperationException("Continued fraction of the incomplete gamma function did not settle.");
    }

    /// <summary>The gamma density at a distance above (direction 1) or below (−1) x.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly struct Ratio(double a, double x, double difference, int direction) : IDensityRatio
    {
        public double Fall => direction * (difference + 1) / x;

        public double Curvature => (a - 1) / (x * x);

        public double Limit => direction < 0 ? x : double.PositiveInfinity;

        public double Log(double distance) =>
            ((a - 1) * Elementary.Log1pMinusX(direction * distance / x)) - (Fall * distance);
    }
}
