using McuBench.Stats.Distributions;

namespace McuBench.Core.Conclusions;

/// <summary>The upper tail of the F distribution with a whole numerator, as small as the tests of lines need it.</summary>
internal static class FTail
{
    /// <summary>The probability of a ratio above <paramref name="ratio"/>.</summary>
    /// <remarks>The tail is the incomplete beta function I_x(ν/2, m/2) at x = ν/(ν + m·F). At m = 1 that is both tails of
    /// Student's t at √(m·F), at m = 2 it is x^(ν/2); each two more degrees of freedom add
    /// x^a·(1 − x)^b/(b·B(a, b)) (DLMF 8.17.21). Infinite ν gives the chi-squared tail of m·F. O(m).</remarks>
    /// <param name="ratio">At least 0.</param>
    /// <param name="numerator">m, at least 1.</param>
    /// <param name="denominator">ν, above 0; may be infinite.</param>
    public static double Upper(double ratio, int numerator, double denominator)
    {
        var square = numerator * ratio;
        var isOdd = numerator % 2 == 1;
        var student = StudentT.Of(denominator);

        // Everything as limits for infinite ν: x^a is exp(−square/2), and (1 − x)·ν tends to the square.
        var isNormal = double.IsInfinity(denominator);
        var a = denominator / 2;
        var power = isNormal ? Math.Exp(-square / 2) : Math.Exp(-a * Math.Log(1 + square / denominator));
        var rest = isNormal ? square : square / (1 + square / denominator);

        var tail = isOdd ? 2 * student.UpperTail(Math.Sqrt(square)) : power;
        var b = isOdd ? 0.5 : 1;

        // (1 − x)^b/(b·B(a, b)), with ν taken out of both so that neither overflows: at b = 1/2 from Student's density
        // at nothing, which is 1/(√ν·B(a, 1/2)).
        var term = isOdd ? 2 * student.Density(0) * Math.Sqrt(rest) : rest / 2;
        for (; b < numerator / 2.0; b++)
        {
            tail += power * term;
            var growth = isNormal ? 0.5 : (a + b) / denominator;
            term *= growth * rest / (b + 1);
        }

        return Math.Min(1, tail);
    }
}
