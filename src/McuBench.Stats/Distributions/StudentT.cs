using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>Student's t distribution with real degrees of freedom.</summary>
/// <remarks>
/// <para>Immutable; equal when the degrees of freedom are equal. Safe to use from many threads. Density and tails take
/// O(1) steps (at most a few dozen), a quantile two or three tails; nothing is allocated.</para>
/// <para>Density, both tails and the quantiles hold a relative accuracy of 1e-12 or better down to tails of 1e-300, at
/// 0.1 to 1e8 degrees of freedom. A tail too small for a double is 0. Sources: DLMF 8.17 (incomplete beta function);
/// DiDonato and Morris 1992 (continued fraction); Loader 2000 (prefactor); Wallace 1959 (start of the quantile).</para>
/// </remarks>
public sealed record StudentT
{
    // Above this the distribution is the normal one to the last digit at every t whose tail a double can hold.
    private const double NormalFrom = 1e20;

    private const double LogOfHalf = -0.69314718055994531;

    private readonly double _densityAtZero;
    private readonly double _half;

    private StudentT(double degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        _half = 0.5 * degreesOfFreedom;
        _densityAtZero = IsNormal
            ? 1 / Elementary.SqrtTwoPi
            : GammaFunction.HalfStepRatio(_half) / Math.Sqrt(Math.PI * degreesOfFreedom);
    }

    /// <summary>The degrees of freedom, above 0 and not necessarily whole; positive infinity is the standard normal
    /// distribution.</summary>
    public double DegreesOfFreedom { get; }

    private bool IsNormal => DegreesOfFreedom >= NormalFrom;

    /// <summary>The t distribution of some degrees of freedom.</summary>
    /// <param name="degreesOfFreedom">Above 0; need not be whole. Positive infinity gives the standard normal
    /// distribution.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="degreesOfFreedom"/> is NaN or not above
    /// 0.</exception>
    public static StudentT Of(double degreesOfFreedom) => new(Argument.DegreesOfFreedom(degreesOfFreedom));

    /// <summary>The probability density at <paramref name="t"/>.</summary>
    /// <param name="t">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="t"/> is NaN or infinite.</exception>
    public double Density(double t) => DensityAt(Math.Abs(Argument.Finite(t, "Value")));

    /// <summary>The probability of a value at or below <paramref name="t"/>.</summary>
    /// <param name="t">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="t"/> is NaN or infinite.</exception>
    public double Cdf(double t) => UpperTailAt(-Argument.Finite(t, "Value"));

    /// <summary>The probability of a value above <paramref name="t"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="t">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="t"/> is NaN or infinite.</exception>
    public double UpperTail(double t) => UpperTailAt(Argument.Finite(t, "Value"));

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1: at the ends the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double (below one degree of freedom, at tails such as 1e-31 for 0.1).</exception>
    public double Quantile(double probability) =>
        Argument.FiniteQuantile(-UpperQuantileAt(Argument.Probability(probability)), probability);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>, such as 0.025 for a
    /// two-sided 95 % interval.</summary>
    /// <param name="probability">Above 0 and below 1: at the ends the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double (below one degree of freedom, at tails such as 1e-31 for 0.1).</exception>
    public double UpperQuantile(double probability) =>
        Argument.FiniteQuantile(UpperQuantileAt(Argument.Probability(probability)), probability);

    private double DensityAt(double t) =>
        IsNormal ? Normal.StandardDensity(t) : _densityAtZero * Falloff(t, _half + 0.5);

    private double UpperTailAt(double t)
    {
        if (IsNormal)
        {
            return Normal.StandardUpperTail(t);
        }

        var distance = Math.Abs(t);
        if (IsCentral(distance))
        {
            return 0.5 - Math.CopySign(CentralPart(distance).Value, t);
        }

        var tail = TailPart(distance).Value;
        return t > 0 ? tail : 1 - tail;
    }

    private double UpperQuantileAt(double probability)
    {
        if (IsNormal)
        {
            return Normal.StandardUpperQuantile(probability);
        }

        return probability <= 0.5 ? PositiveQuantile(probability) : -PositiveQuantile(1 - probability);
    }

    /// <summary>(1 + t²/ν)^(−power), also where t² is too large for a double.</summary>
    private double Falloff(double t, double power)
    {
        var square = t * t / DegreesOfFreedom;
        // Pow carries the logarithm in more than double precision, exp(−power log …) does not; where the base is near
        // 1 its own rounding would cost more than that.
        return square < 1 ? Math.Exp(-power * Elementary.Log1p(square))
            : t < 1e100 ? Math.Pow(1 + square, -power)
            : Math.Pow(t / Math.Sqrt(DegreesOfFreedom), -2 * power);
    }

    /// <summary>Whether the probability between 0 and t is summed, rather than the tail beyond t.</summary>
    private bool IsCentral(double t) => t * t <= Math.Min(4, DegreesOfFreedom);

    /// <summary>P(0 &lt; T &lt; t), by the series of positive terms DLMF 8.17.8 in y = t²/(ν + t²), and the slope of
    /// its logarithm in log t.</summary>
    private (double Value, double Slope) CentralPart(double t)
    {
        var t2 = t * t;
        var y = t2 / (DegreesOfFreedom + t2);
        var (term, sum) = (1.0, 1.0);
        for (var n = 0; term > 1e-17 * sum; n++)
        {
            term *= y * ((_half + 0.5 + n) / (1.5 + n));
            sum += term;
        }

        return (t * DensityAt(t) * sum, 1 / sum);
    }

    /// <summary>P(T &gt; t) for t beyond the central part, and the slope of its logarithm in log t.</summary>
    private (double Value, double Slope) TailPart(double t)
    {
        // f(t) t, in a form that neither overflows nor underflows before the tail does.
        var s = DegreesOfFreedom / t / t;
        var prefactor = _densityAtZero * Math.Sqrt(DegreesOfFreedom / (1 + s)) * Falloff(t, _half);
        if (s < 1e-100)
        {
            // Only the leading power of the incomplete beta function is left.
            return (prefactor / DegreesOfFreedom, -DegreesOfFreedom);
        }

        var t2 = t * t;
        var excess = _half * (t2 - 1) / (DegreesOfFreedom + t2);
        var fraction = 2 * IncompleteBeta.ContinuedFraction(_half, 0.5, s / (1 + s), excess);
        return (prefactor / fraction, -fraction);
    }

    private double PositiveQuantile(double probability)
    {
        var centre = 0.5 - probability;
        if (centre == 0)
        {
            return 0;
        }

        return TailInversion.Solve(new Part(this, probability, centre), Start(probability));
    }

    /// <summary>A first guess at the quantile of a tail of at most ½.</summary>
    private double Start(double tail)
    {
        // Where t² is well above ν, three terms of the tail's power series, turned round.
        var logPower = Math.Log(Math.Sqrt(DegreesOfFreedom) * tail / _densityAtZero) / _half;
        if (logPower < LogOfHalf)
        {
            var w = Math.Exp(logPower);
            var alpha = 0.5 / (_half + 1);
            var beta = (0.375 / (_half + 2)) + (0.5 * (1 - _half) * alpha * alpha);
            var correction = 1 + (w * (-alpha + (w * ((2 * alpha * alpha) - beta))));
            return Math.Sqrt(DegreesOfFreedom * (1 - (w * correction)) / correction) * Math.Exp(-0.5 * logPower);
        }

        // Elsewhere the normal quantile, by Wallace's transformation.
        var z = Normal.StandardUpperQuantile(tail) * ((8 * DegreesOfFreedom) + 3) / ((8 * DegreesOfFreedom) + 1);
        return Math.Sqrt(DegreesOfFreedom * Elementary.Expm1(z * z / DegreesOfFreedom));
    }

    /// <summary>Whichever part is computed directly, against its wanted size.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly struct Part(StudentT distribution, double tail, double centre) : ILogTail
    {
        public int WayBack => -1;

        public (double Error, double Slope, double Bend) At(double t)
        {
            var isCentral = distribution.IsCentral(t);
            var (part, slope) = isCentral ? distribution.CentralPart(t) : distribution.TailPart(t);
            var df = distribution.DegreesOfFreedom;
            var bend = 1 - ((df + 1) / (1 + (df / t / t))) - slope;
            return (Math.Log(part / (isCentral ? centre : tail)), slope, bend);
        }
    }
}
