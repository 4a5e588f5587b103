namespace McuBench.Stats.Distributions;

/// <summary>The gamma function, as its deviation from Stirling's formula.</summary>
internal static class GammaFunction
{
    private const double SeriesFrom = 10;

    /// <summary>
    /// δ(z) in Γ(z) = √(2π) z^(z − ½) e^(−z) e^δ(z), for z above 0, with an absolute error of about 1e-16.
    /// </summary>
    /// <remarks>Densities that are written with δ keep their digits at any size of their parameters
    /// (Loader 2000), where differences of log Γ lose them. Source: DLMF 5.11.1.</remarks>
    internal static double StirlingError(double z)
    {
        var shift = 0.0;
        while (z < SeriesFrom)
        {
            // δ(z) − δ(z + 1) = (z + ½) log(1 + 1/z) − 1 = artanh(r)/r − 1, where r = 1/(2z + 1).
            if (z < 1)
            {
                shift += ((z + 0.5) * Elementary.Log1p(1 / z)) - 1;
            }
            else
            {
                var r = 1 / ((2 * z) + 1);
                shift += r * r * Elementary.ArtanhTail(r * r);
            }

            z++;
        }

        var w = 1 / (z * z);
        var series =
            (1.0 / 12)
            - (
                w
                * (
                    (1.0 / 360)
                    - (
                        w
                        * (
                            (1.0 / 1260)
                            - (w * ((1.0 / 1680) - (w * ((1.0 / 1188) - (w * ((691.0 / 360360) - (w / 156)))))))
                        )
                    )
                )
            );
        return shift + (series / z);
    }

    /// <summary>log Γ(z) for z above 0, with an absolute error of a few units in the last place of the larger of 1 and
    /// the value.</summary>
    internal static double LogGamma(double z) =>
        ((z - 0.5) * Math.Log(z)) - z + Math.Log(Elementary.SqrtTwoPi) + StirlingError(z);

    /// <summary>Γ(z + ½)/Γ(z) for z above 0, to a few units in the last place.</summary>
    internal static double HalfStepRatio(double z)
    {
        var (numerator, denominator) = (1.0, 1.0);
        while (z < SeriesFrom)
        {
            numerator *= z;
            denominator *= z + 0.5;
            z++;
        }

        // z log(1 + 1/(2z)) − ½, without the cancellation.
        var exponent = z * Elementary.Log1pMinusX(0.5 / z);
        return numerator / denominator * Math.Sqrt(z) * Math.Exp(exponent + StirlingError(z + 0.5) - StirlingError(z));
    }
}
