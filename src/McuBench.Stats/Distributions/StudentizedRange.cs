using System.Globalization;

namespace McuBench.Stats.Distributions;

/// <summary>
/// The studentized range: the range of normal means over an independent estimate of their standard deviation, as in Tukey's
/// and Games and Howell's comparisons of all pairs.
/// </summary>
/// <remarks>
/// <para>Immutable; equal when the number of means and the degrees of freedom are equal. Safe to use from many threads. A
/// tail takes some thousands of normal tails (about 0.1 ms), a quantile some four times that; nothing is
/// allocated.</para>
/// <para>Both tails are double integrals of positive terms by the trapezoidal rule, over the place of the largest mean
/// and over the logarithm of the estimate. Relative accuracy 1e-12 for upper tails down to 1e-30, lower tails down to
/// 1e-3 and the quantiles of both, for 2 to 100 means and from 2 degrees of freedom. Source: Copenhaver and Holland 1988
/// (the integrals, not their quadrature).</para>
/// </remarks>
public sealed record StudentizedRange
{
    private const int MostMeans = 1000;
    private const double NormalFrom = 1e20;
    private const int MaximumSteps = 200;
    private const double FarOut = 400;

    private readonly ChiOverRootDf _spread;
    private readonly NormalRange _range;

    private StudentizedRange(int means, double degreesOfFreedom)
    {
        Means = means;
        DegreesOfFreedom = degreesOfFreedom;
        _spread = new ChiOverRootDf(degreesOfFreedom);
        _range = new NormalRange(means);
    }

    /// <summary>The number of means, 2 or more.</summary>
    public int Means { get; }

    /// <summary>The degrees of freedom of the standard deviation, not necessarily whole; positive infinity where it is
    /// known.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The studentized range of a number of means with some degrees of freedom.</summary>
    /// <param name="means">The number of means; from 2 to 1000.</param>
    /// <param name="degreesOfFreedom">1 or more; need not be whole. Positive infinity gives the range of normal values
    /// of known standard deviation.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or out of its range.</exception>
    public static StudentizedRange Of(int means, double degreesOfFreedom)
    {
        if (means is < 2 or > MostMeans)
        {
            throw new ArgumentOutOfRangeException(
                nameof(means),
                means,
                string.Create(CultureInfo.InvariantCulture, $"Means must be between 2 and {MostMeans}; was {means}.")
            );
        }

        return degreesOfFreedom >= 1
            ? new StudentizedRange(means, degreesOfFreedom)
            : throw Check.OutOfRange(nameof(degreesOfFreedom), "Degrees of freedom", "at least 1", degreesOfFreedom);
    }

    /// <summary>The probability density at <paramref name="q"/>; 0 below 0.</summary>
    /// <param name="q">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="q"/> is NaN or infinite.</exception>
    public double Density(double q) => At(Argument.Finite(q, "Value")).Density;

    /// <summary>The probability of a value at or below <paramref name="q"/>.</summary>
    /// <param name="q">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="q"/> is NaN or infinite.</exception>
    public double Cdf(double q) => At(Argument.Finite(q, "Value")).Lower;

    /// <summary>The probability of a value above <paramref name="q"/>; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="q">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="q"/> is NaN or infinite.</exception>
    public double UpperTail(double q) => At(Argument.Finite(q, "Value")).Upper;

    /// <summary>The value that a draw stays at or below with probability <paramref name="probability"/>.</summary>
    /// <param name="probability">Above 0 and below 1: at 1 the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double Quantile(double probability) => QuantileOf(Argument.Probability(probability), isUpper: false);

    /// <summary>The value that a draw exceeds with probability <paramref name="probability"/>, such as 0.05 for Tukey's
    /// comparisons at 95 %.</summary>
    /// <param name="probability">Above 0 and below 1: at 0 the quantile would be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below 1, or the
    /// quantile is too large for a double.</exception>
    public double UpperQuantile(double probability) => QuantileOf(Argument.Probability(probability), isUpper: true);

    private (double Lower, double Upper, double Density) At(double q)
    {
        if (!(q > 0))
        {
            return (0, 1, 0);
        }

        if (DegreesOfFreedom >= NormalFrom)
        {
            return _range.At(q);
        }

        // A fraction of the width of the narrowest bump in log s; the cap keeps clear of the strip |Im u| < π/4 in which
        // the density of log s is bounded.
        // Far out, where the bump has moved to where s brings q back to the bulk, it is as wide as the weights are there.
        var step = Math.Min(0.12, 0.4 / Math.Sqrt((2 * DegreesOfFreedom) + (0.5 * Math.Min(q * q, FarOut))));
        var sums = Add(default, q, 0);
        for (var i = 1; !IsComplete(sums, -i * step, step); i++)
        {
            sums = Add(sums, q, -i * step);
        }

        for (var i = 1; !IsComplete(sums, i * step, step); i++)
        {
            sums = Add(sums, q, i * step);
        }

        return sums.Upper < sums.Lower
            ? (1 - (sums.Upper * step), sums.Upper * step, sums.Density * step)
            : (sums.Lower * step, 1 - (sums.Lower * step), sums.Density * step);
    }

    private (double Lower, double Upper, double Density) Add(
        (double Lower, double Upper, double Density) sums,
        double q,
        double u
    )
    {
        var s = Math.Exp(u);
        var weight = _spread.Density(u);
        var (lower, upper, density) = _range.At(q * s);
        return (sums.Lower + (weight * lower), sums.Upper + (weight * upper), sums.Density + (weight * s * density));
    }

    /// <summary>Whether nothing from this logarithm on reaches the last place of the smaller tail.</summary>
    private bool IsComplete((double Lower, double Upper, double Density) sums, double u, double step)
    {
        // What is left of the weights is below this weight times its e-folding length in steps.
        var rest = _spread.Density(u) * (1 + (1 / (DegreesOfFreedom * step)));
        return rest <= 1e-16 * Math.Min(sums.Lower, sums.Upper);
    }

    private double QuantileOf(double probability, bool isUpper)
    {
        // The smaller tail is solved for; where the given one is the larger, its complement is exact.
        var swap = probability > 0.5;
        var wanted = swap ? 1 - probability : probability;
        isUpper = isUpper != swap;

        // Each pair of means alone exceeds q with the two tails of Student's t beyond q/√2: all together, with at most
        // their sum.
        var tailOfPair = (isUpper ? wanted : 1 - wanted) / ((double)Means * (Means - 1));
        var q = Math.Sqrt(2) * StudentT.Of(DegreesOfFreedom).UpperQuantile(tailOfPair);
        var (step, slope) = (0.0, 0.0);
        for (var i = 0; i < MaximumSteps && double.IsFinite(q); i++)
        {
            var (lower, upper, density) = At(q);
            var tail = isUpper ? upper : lower;
            if (tail == 0)
            {
                // Too small for a double: back towards the bulk.
                q *= isUpper ? 0.9 : 1.1;
                continue;
            }

            var error = Math.Log(tail / wanted);
            var last = slope;
            slope = q * density / tail * (isUpper ? -1 : 1);
            // Halley's method in log q, with the bend as seen from the last place.
            var bend = step == 0 ? 0 : Math.Log(slope / last) / step;
            step =
                Math.Abs(error * bend) < Math.Abs(slope) ? -2 * error / ((2 * slope) - (error * bend)) : -error / slope;
            step = Math.Clamp(step, -1, 1);
            q *= Math.Exp(step);
            if (Math.Abs(step) * Math.Abs(step) * (1 + Math.Abs(slope)) < 1e-13)
            {
                return q;
            }
        }

        return double.IsFinite(q)
            ? throw new InvalidOperationException("Studentized range quantile did not settle.")
            : Argument.FiniteQuantile(q, probability);
    }
}
