namespace McuBench.Stats.Distributions;

/// <summary>The range of some independent standard normal values.</summary>
/// <remarks>With z the largest value, a = Φ(z), b = Φ(z − w) and c = a − b, the range is at most w with probability
/// k∫φ c^(k−1) and above it with k∫φ (a^(k−1) − c^(k−1)), both of positive terms. The trapezoidal rule on the whole line
/// gives them to the last places, because all factors are smooth and φ falls off so fast.</remarks>
internal sealed class NormalRange
{
    // Fine enough for 1e-12 at 100 means; the more of them, the narrower the strip in which the integrand is smooth.
    private const double Step = 0.16;
    private const double First = -9;
    private const double Last = 34;

    // Beyond this nothing is left of the upper tail.
    private const double WidestRange = 54;

    // Up to here powers are multiplied out.
    private const int SmallPower = 24;

    private static readonly double[] Density = Table(Normal.StandardDensity);
    private static readonly double[] Below = Table(z => Normal.StandardUpperTail(-z));
    private static readonly double[] Above = Table(Normal.StandardUpperTail);

    private readonly int _count;
    private readonly double[] _belowPower;

    internal NormalRange(int count)
    {
        _count = count;
        _belowPower = Array.ConvertAll(Below, a => Math.Pow(a, count - 1));
    }

    /// <summary>The probabilities of a range of at most, and of above w, and the density at w; w at or above 0.</summary>
    internal (double Lower, double Upper, double Density) At(double w)
    {
        if (w >= WidestRange)
        {
            return (1, 0, 0);
        }

        // Outside of these no term reaches the last place of either sum, or of 1 less the other where that is used.
        var from = (int)(((0.5 * w) - 6.2 - First) / Step);
        var to = (int)((Math.Max(8.5, (0.5 * w) + 6.2) - First) / Step);
        var (lower, upper, density) = (0.0, 0.0, 0.0);
        for (var i = from; i <= to; i++)
        {
            var shifted = First + (i * Step) - w;
            var a = Below[i];
            double b;
            double c;
            if (shifted > 0)
            {
                var above = Normal.StandardUpperTail(shifted);
                (b, c) = (1 - above, above - Above[i]);
            }
            else
            {
                b = Normal.StandardUpperTail(-shifted);
                c = a - b;
            }

            var (inner, beyond) = Powers(a, b, c, i);
            lower += Density[i] * inner * c;
            upper += Density[i] * beyond;
            density += Density[i] * Normal.StandardDensity(shifted) * inner;
        }

        var scale = _count * Step;
        (lower, upper) = (lower * scale, upper * scale);
        return upper < 0.5
            ? (1 - upper, upper, density * scale * (_count - 1))
            : (lower, 1 - lower, density * scale * (_count - 1));
    }

    /// <summary>c^(k−2), and a^(k−1) − c^(k−1) without cancellation.</summary>
    private (double Inner, double Beyond) Powers(double a, double b, double c, int index)
    {
        var power = _count - 1;
        if (power > SmallPower)
        {
            return (Math.Pow(c, power - 1), -_belowPower[index] * Elementary.Expm1(power * Elementary.Log1p(-b / a)));
        }

        // a^n − c^n = b (a^(n−1) + a^(n−2) c + … + c^(n−1)).
        var (rest, aPower, sum) = (1.0, 1.0, 1.0);
        for (var i = 1; i < power; i++)
        {
            rest *= c;
            aPower *= a;
            sum = (sum * c) + aPower;
        }

        return (rest, b * sum);
    }

    private static double[] Table(Func<double, double> function)
    {
        var table = new double[(int)((Last - First) / Step) + 1];
        for (var i = 0; i < table.Length; i++)
        {
            table[i] = function(First + (i * Step));
        }

        return table;
    }
}
