namespace McuBench.Stats.Distributions;

/// <summary>The deviance term of Loader's saddle-point densities.</summary>
internal static class Deviance
{
    /// <summary>a log(a/m) + m − a, never negative, for a and m above 0.</summary>
    /// <param name="a">The parameter.</param>
    /// <param name="m">What it is compared with.</param>
    /// <param name="difference">m − a, which cancels and is therefore the caller's to compute.</param>
    /// <remarks>Loader 2000, the function D0 times the parameter.</remarks>
    internal static double Of(double a, double m, double difference) =>
        m < 0.25 * a ? (a * (Math.Log(a) - Math.Log(m))) + difference : -a * Elementary.Log1pMinusX(difference / a);
}
