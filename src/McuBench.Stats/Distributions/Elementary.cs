namespace McuBench.Stats.Distributions;

/// <summary>
/// Elementary functions that keep their relative accuracy where the plain formula cancels.
/// </summary>
/// <remarks>
/// The runtime's <c>double.LogP1</c> and <c>double.ExpM1</c> add or subtract the 1 first, so that
/// <c>LogP1(1e-17)</c> is 0; nothing in the tails can be built on them.
/// </remarks>
internal static class Elementary
{
    /// <summary>√(2π).</summary>
    internal const double SqrtTwoPi = 2.50662827463100050242;

    // 1/3, 1/5, 1/7 …: the series of (artanh(r)/r − 1)/r² in powers of r².
    private static ReadOnlySpan<double> OddReciprocals =>
        [
            1.0 / 3,
            1.0 / 5,
            1.0 / 7,
            1.0 / 9,
            1.0 / 11,
            1.0 / 13,
            1.0 / 15,
            1.0 / 17,
            1.0 / 19,
            1.0 / 21,
            1.0 / 23,
            1.0 / 25,
            1.0 / 27,
            1.0 / 29,
            1.0 / 31,
            1.0 / 33,
            1.0 / 35,
        ];

    /// <summary>log(1 + x) to about one unit in the last place, for x above −1.</summary>
    internal static double Log1p(double x)
    {
        // What the sum 1 + x has lost is known exactly, and enters as the first term of a Taylor series.
        var u = 1 + x;
        return double.IsFinite(u) ? Math.Log(u) + ((x - (u - 1)) / u) : Math.Log(x);
    }

    /// <summary>exp(x) − 1 to a few units in the last place.</summary>
    internal static double Expm1(double x)
    {
        if (Math.Abs(x) > 1)
        {
            return Math.Exp(x) - 1;
        }

        // The rounding of u is the same in both factors, and cancels.
        var u = Math.Exp(x);
        return u == 1 ? x : (u - 1) * x / Math.Log(u);
    }

    /// <summary>log(1 + x) − x with relative accuracy, for x above −1; never positive.</summary>
    internal static double Log1pMinusX(double x)
    {
        if (x < -0.5 || x > 1)
        {
            return Log1p(x) - x;
        }

        // log(1 + x) = 2 artanh(r) with r = x/(2 + x), and 2r − x = −rx.
        var r = x / (2 + x);
        var r2 = r * r;
        return r * ((2 * r2 * ArtanhTail(r2)) - x);
    }

    /// <summary>(artanh(r)/r − 1)/r² = 1/3 + r²/5 + r⁴/7 + …, from r² of at most 1/9.</summary>
    internal static double ArtanhTail(double r2)
    {
        var coefficients = OddReciprocals;
        // Enough terms that the first one left out is below the last place.
        var terms =
            r2 < 1e-4 ? 4
            : r2 < 0.01 ? 8
            : coefficients.Length;
        var sum = coefficients[terms - 1];
        for (var k = terms - 2; k >= 0; k--)
        {
            sum = Math.FusedMultiplyAdd(sum, r2, coefficients[k]);
        }

        return sum;
    }
}
