namespace McuBench.Stats.Distributions;

/// <summary>The regularised incomplete beta function.</summary>
internal static class IncompleteBeta
{
    private const int MaximumTerms = 100_000;

    /// <summary>
    /// The continued fraction C of I_x(a, b) = x^a (1 − x)^b / (B(a, b) C), fit for x below the mean a/(a + b).
    /// </summary>
    /// <param name="a">The first parameter.</param>
    /// <param name="b">The second parameter.</param>
    /// <param name="x">The argument.</param>
    /// <param name="excess">a(1 − x) − bx, which cancels and is therefore the caller's to compute.</param>
    /// <remarks>DiDonato and Morris 1992, equation 9 (the even part of DLMF 8.17.22); summed by Lentz's method.</remarks>
    internal static double ContinuedFraction(double a, double b, double x, double excess)
    {
        var lower = 1 / (a + 1);
        var fraction = a * (excess + 1) * lower;
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
            if (Math.Abs(factor - 1) < 2e-16)
            {
                return fraction;
            }
        }

        throw new InvalidOperationException("Continued fraction of the incomplete beta function did not settle.");
    }
}
