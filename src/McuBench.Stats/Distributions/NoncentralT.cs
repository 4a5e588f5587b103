namespace McuBench.Stats.Distributions;

/// <summary>
/// The noncentral t distribution: of (Z + δ)/√(χ²/ν), as in the power of t tests and in normal tolerance factors.
/// </summary>
/// <remarks>
/// <para>Immutable; equal when degrees of freedom and noncentrality are equal. Safe to use from many threads. A tail or
/// density takes about 50·√(1 + δ²/2ν) normal tails, more below 5 degrees of freedom, a quantile some five times that;
/// nothing is allocated.</para>
/// <para>Both tails and the density are means over the distribution of the sample's standard deviation, by the trapezoidal
/// rule on its logarithm: no difference is taken, so that small tails keep their digits. Relative accuracy 1e-12 for
/// |δ| up to 100 and tails down to 1e-100 at 0.5 to 1e6 degrees of freedom; beyond, a rounding of t or δ moves the tail by
/// more.</para>
/// </remarks>
public sealed record NoncentralT
{
    private const double LeastDegreesOfFreedom = 0.5;
    private const double MostDegreesOfFreedom = 1e15;
    private const double MostNoncentralityPerRoot = 100;
    private const int MaximumSteps = 500;

    private readonly ChiOverRootDf _spread;
    private readonly double _step;

    private NoncentralT(double degreesOfFreedom, double noncentrality)
    {
        DegreesOfFreedom = degreesOfFreedom;
        Noncentrality = noncentrality;
        _spread = new ChiOverRootDf(degreesOfFreedom);
        // A fraction of the width of the narrowest bump in log s; the cap keeps clear of the strip |Im u| < π/4 in which
        // the density of log s is bounded.
        _step = Math.Min(0.12, 0.35 / Math.Sqrt((2 * degreesOfFreedom) + (noncentrality * noncentrality) + 4));
    }

    /// <summary>The degrees of freedom, not necessarily whole.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The noncentrality δ, the mean of the normal numerator in its standard deviations.</summary>
    public double Noncentrality { get; }

    /// <summary>The noncentral t distribution of some degrees of freedom and a noncentrality.</summary>
    /// <param name="degreesOfFreedom">From 0.5 to 1e15; need not be whole.</param>
    /// <param name="noncentrality">Of a magnitude of at most 100 times the root of the degrees of freedom.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or out of its range.</exception>
    public static NoncentralT Of(double degreesOfFreedom, double noncentrality)
    {
        if (!(degreesOfFreedom >= LeastDegreesOfFreedom && degreesOfFreedom <= MostDegreesOfFreedom))
        {
            throw Check.OutOfRange(
                nameof(degreesOfFreedom),
                "Degrees of freedom",
                "between 0.5 and 1E+15",
                degreesOfFreedom
            );
        }

        if (!(Math.Abs(noncentrality) <= MostNoncentralityPerRoot * Math.Sqrt(degreesOfFreedom)))
        {
            throw Check.OutOfRange(
                nameof(noncentrality),
                "Noncentrality",
                "of a magnitude of at most 100 times the root of the degrees of freedom",
                noncentrality
            );
        }

        return new NoncentralT(degreesOfFreedom, noncentrality);
    }

    /// <summary>The probability density at <paramref name="t"/>.</summary>
    /// <param name="t">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="t"/> is NaN or infinite.</exception>
    public double Density(double t) => At(Argument.Finite(t, "Value")).Density;

    /// <summary>The probability of a value at or below <paramref name="t"/>.</summary>
    /// <param name="t">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="t"/> is NaN or infinite.</exception>
    public double Cdf(double t) => At(Argument.Finite(t, "Value")).Lower;

    /// <summary>The probability of a value above <paramref name="t"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="t">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="t"/> is NaN or infinite.</exception>
    public double UpperTail(double t) => At(Argument.Finite(t, "Value")).Upper;

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1: at the ends the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double Quantile(double probability) => QuantileOf(Argument.Probability(probability), isUpper: false);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1: at the ends the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double UpperQuantile(double probability) => QuantileOf(Argument.Probability(probability), isUpper: true);

    private (double Lower, double Upper, double Density) At(double t)
    {
        var sums = Add(default, t, 0);
        for (var i = 1; !IsComplete(sums, i, -1); i++)
        {
            sums = Add(sums, t, -i);
        }

        for (var i = 1; !IsComplete(sums, i, 1); i++)
        {
            sums = Add(sums, t, i);
        }

        return (sums.Lower * _step, sums.Upper * _step, sums.Density * _step);
    }

    private (double Lower, double Upper, double Density) Add(
        (double Lower, double Upper, double Density) sums,
        double t,
        int index
    )
    {
        var u = index * _step;
        var s = Math.Exp(u);
        var weight = _spread.Density(u);
        var z = Math.FusedMultiplyAdd(t, s, -Noncentrality);
        return (
            sums.Lower + (weight * Normal.StandardUpperTail(-z)),
            sums.Upper + (weight * Normal.StandardUpperTail(z)),
            sums.Density + (weight * s * Normal.StandardDensity(z))
        );
    }

    /// <summary>Whether nothing from this index on, in this direction, reaches the last place of either tail.</summary>
    private bool IsComplete((double Lower, double Upper, double Density) sums, int index, int direction)
    {
        // What is left of the weights is below this weight times its e-folding length in steps.
        var rest = _spread.Density(direction * index * _step) * (1 + (1 / (DegreesOfFreedom * _step)));
        return rest <= 1e-17 * Math.Min(sums.Lower, sums.Upper);
    }

    private double QuantileOf(double probability, bool isUpper)
    {
        // The smaller tail is solved for; where the given one is the larger, its complement is exact.
        var swap = probability > 0.5;
        var wanted = swap ? 1 - probability : probability;
        isUpper = isUpper != swap;
        var deviation = Math.Sqrt(1 + (Noncentrality * Noncentrality / (2 * DegreesOfFreedom)));
        var t = Noncentrality + (Normal.StandardUpperQuantile(wanted) * deviation * (isUpper ? 1 : -1));
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var i = 0; i < MaximumSteps && double.IsFinite(t); i++)
        {
            var (lower, upper, density) = At(t);
            var tail = isUpper ? upper : lower;
            // Newton's method on log(tail), held within what is known to bracket the quantile.
            if (isUpper == tail > wanted)
            {
                low = t;
            }
            else
            {
                high = t;
            }

            var step = Math.Log(tail / wanted) * tail / density * (isUpper ? 1 : -1);
            var longest = 3 * (Math.Abs(t) + deviation);
            var next = t + (double.IsNaN(step) ? 0 : Math.Clamp(step, -longest, longest));
            if (Math.Abs(step) <= 1e-8 * Math.Min(Math.Abs(t), tail / density) || next == t)
            {
                return next;
            }

            t = next > low && next < high ? next : 0.5 * (low + high);
            if (t == low || t == high)
            {
                return t;
            }
        }

        return double.IsFinite(t)
            ? throw new InvalidOperationException("Noncentral t quantile did not settle.")
            : Argument.FiniteQuantile(t, probability);
    }
}
