using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>The regularised incomplete beta function I_x(a, b) of fixed parameters.</summary>
/// <remarks>Whichever tail lies beyond the mean keeps its relative accuracy. Sources: DLMF 8.17; DiDonato and Morris 1992
/// (continued fraction); Loader 2000 (prefactor).</remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct IncompleteBeta
{
    // With both parameters from here on the fraction takes longer than a quadrature of fixed length.
    private const double QuadratureFrom = 3000;
    private const int MaximumTerms = 100_000;

    private readonly double _scale;

    internal IncompleteBeta(double a, double b)
    {
        (A, B) = (a, b);
        var n = a + b;
        var correction =
            GammaFunction.StirlingError(n) - (GammaFunction.StirlingError(a) + GammaFunction.StirlingError(b));
        _scale = Math.Sqrt(a * b / n) / Elementary.SqrtTwoPi * Math.Exp(correction);
    }

    /// <summary>The first parameter.</summary>
    internal double A { get; }

    /// <summary>The second parameter.</summary>
    internal double B { get; }

    /// <summary>log B(a, b).</summary>
    internal double LogBeta => -Math.Log(_scale) - (A * Elementary.Log1p(B / A)) - (B * Elementary.Log1p(A / B));

    /// <summary>x^a y^b/B(a, b).</summary>
    /// <param name="x">The argument, in (0, 1).</param>
    /// <param name="y">1 − x.</param>
    /// <param name="excess">ay − bx.</param>
    internal double Prefactor(double x, double y, double excess)
    {
        var n = A + B;
        return _scale * Math.Exp(-(Deviance.Of(A, n * x, -excess) + Deviance.Of(B, n * y, excess)));
    }

    /// <summary>I_x(a, b), 1 − I_x(a, b), and the prefactor x^a y^b/B(a, b).</summary>
    /// <param name="x">The argument, in (0, 1).</param>
    /// <param name="y">1 − x, which cancels and is therefore the caller's to compute.</param>
    /// <param name="excess">ay − bx, likewise; above 0 below the mean.</param>
    internal (double Lower, double Upper, double Prefactor) Tails(double x, double y, double excess)
    {
        var prefactor = Prefactor(x, y, excess);
        if (excess == 0 && A == B)
        {
            // The middle of a symmetric density.
            return (0.5, 0.5, prefactor);
        }

        if (excess > 0)
        {
            var lower = prefactor * LowerOverPrefactor(A, B, x, y, excess);
            return (lower, 1 - lower, prefactor);
        }

        var upper = prefactor * LowerOverPrefactor(B, A, y, x, -excess);
        return (1 - upper, upper, prefactor);
    }

    /// <summary>
    /// The continued fraction C of I_x(a, b) = x^a (1 − x)^b / (B(a, b) C), fit for x below the mean a/(a + b).
    /// </summary>
    /// <remarks>DiDonato and Morris 1992, equation 9 (the even part of DLMF 8.17.22); summed by Lentz's method.</remarks>
    internal static double ContinuedFraction(double a, double b, double x, double excess)
    {
        var fraction = a * (excess + 1) / (a + 1);
        var (c, d) = (fraction, 0.0);
        for (var m = 1; m < MaximumTerms; m++)
        {
            var before = 1 / (a + (2 * m) - 1);
            var after = 1 / (a + (2 * m) + 1);
            var bend = m * (b - m) * x * before;
            var numerator = (a + m - 1) * (a + b + m - 1) * before * bend * x;
            var denominator = m + bend + ((a + m) * after * (excess + 1 + (m * (2 - x))));
            d = 1 / Math.FusedMultiplyAdd(numerator, d, denominator);
            c = denominator + (numerator / c);
            var factor = c * d;
            fraction *= factor;
            if (Math.Abs(factor - 1) < 3e-16)
            {
                return fraction;
            }
        }

        throw new InvalidOperationException("Continued fraction of the incomplete beta function did not settle.");
    }

    private static double LowerOverPrefactor(double a, double b, double x, double y, double excess) =>
        Math.Min(a, b) < QuadratureFrom
            ? 1 / ContinuedFraction(a, b, x, excess)
            : TailQuadrature.Integrate(new Ratio(a, b, x, y, excess)) / (x * y);

    /// <summary>The beta density at a distance below x.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly struct Ratio(double a, double b, double x, double y, double excess) : IDensityRatio
    {
        public double Fall => (excess + (x - y)) / (x * y);

        public double Curvature => ((a - 1) / (x * x)) + ((b - 1) / (y * y));

        public double Limit => x;

        public double Log(double distance) =>
            ((a - 1) * Elementary.Log1pMinusX(-distance / x))
            + ((b - 1) * Elementary.Log1pMinusX(distance / y))
            - (Fall * distance);
    }
}
