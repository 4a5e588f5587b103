using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>
/// A sample's standard deviation over the true one, s = χ/√ν, as a weight on u = log s for the trapezoidal rule.
/// </summary>
/// <remarks>On the whole line the trapezoidal rule converges faster than any power of the step for a smooth integrand
/// that falls off on both sides, as every mean over s here does.</remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct ChiOverRootDf
{
    private readonly double _half;
    private readonly double _peak;

    internal ChiOverRootDf(double degreesOfFreedom)
    {
        _half = degreesOfFreedom / 2;
        _peak = Math.Sqrt(degreesOfFreedom / Math.PI) * Math.Exp(-GammaFunction.StirlingError(_half));
    }

    /// <summary>The density of u = log s; its peak is at 0, and it bends there like a normal one of variance
    /// 1/(2ν).</summary>
    internal double Density(double u)
    {
        var v = Elementary.Expm1(2 * u);
        // log(1 + v) − v, which cancels near 0 and is 2u − v elsewhere.
        return _peak * Math.Exp(_half * (Math.Abs(u) < 0.3 ? Elementary.Log1pMinusX(v) : (2 * u) - v));
    }
}
