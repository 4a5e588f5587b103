using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>
/// The noncentralities at which a t statistic stands just at the edge of its distribution: the limits of a standardized
/// difference times the root of its information (steiger-fouladi-1997).
/// </summary>
internal static class StandardizedLimits
{
    // From so many roots of the degrees of freedom on the spread of s outweighs that of the mean, and the sum over the mean is
    // the smooth one.
    private const double FarFrom = 30;
    private const int MaximumSteps = 200;

    /// <summary>The limits for a statistic with whole degrees of freedom, two or more.</summary>
    internal static (double Lower, double Upper) Of(double t, double degreesOfFreedom, double confidence)
    {
        double tail = (1 - confidence) / 2;
        return (Lower(t, degreesOfFreedom, tail), -Lower(-t, degreesOfFreedom, tail));
    }

    /// <summary>The noncentrality at which a statistic as large as t or larger has the probability of the tail.</summary>
    private static double Lower(double t, double df, double tail)
    {
        // Rises with the noncentrality.
        double Excess(double noncentrality) => Math.Log(UpperTail(t, df, noncentrality) / tail);

        double step = Normal.Standard.UpperQuantile(tail) * Math.Sqrt(1 + t * t / (2 * df));
        double low = t - step;
        double atLow = Excess(low);
        while (atLow > 0)
        {
            low -= step;
            step *= 2;
            atLow = Excess(low);
        }

        double high = t;
        double atHigh = Excess(high);
        while (atHigh < 0)
        {
            high += step;
            step *= 2;
            atHigh = Excess(high);
        }

        return Root(Excess, (low, atLow), (high, atHigh));
    }

    /// <summary>The root of a rising function between two arguments: regula falsi that halves the weight of an end which stays
    /// (Illinois), and bisection where the lower end has no tail left.</summary>
    private static double Root(Func<double, double> rising, (double X, double Y) low, (double X, double Y) high)
    {
        int stayed = 0;
        for (int i = 0; i < MaximumSteps; i++)
        {
            double middle = low.X + (high.X - low.X) / 2;
            double x = double.IsFinite(low.Y) ? low.X - low.Y * (high.X - low.X) / (high.Y - low.Y) : middle;
            x = x > low.X && x < high.X ? x : middle;
            if (high.X - low.X <= 1e-15 * Math.Max(Math.Abs(low.X), Math.Abs(high.X)) || x == low.X || x == high.X)
            {
                return x;
            }

            double y = rising(x);
            if (Math.Abs(y) < 1e-15)
            {
                return x;
            }

            if (y < 0)
            {
                low = (x, y);
                high.Y = stayed > 0 ? high.Y / 2 : high.Y;
                stayed = 1;
            }
            else
            {
                high = (x, y);
                low.Y = stayed < 0 ? low.Y / 2 : low.Y;
                stayed = -1;
            }
        }

        return low.X + (high.X - low.X) / 2;
    }

    private static double UpperTail(double t, double df, double noncentrality)
    {
        double root = Math.Sqrt(df);
        return Math.Abs(t) > FarFrom * root || Math.Abs(noncentrality) > 3 * FarFrom * root
            ? FarUpperTail(t, df, noncentrality)
            : NoncentralT.Of(df, noncentrality).UpperTail(t);
    }

    /// <summary>The same for large statistics: Z + δ above t·s, given Z and then over all Z. The probability given Z changes slowly
    /// beside the normal density, for which the plain sum over equal steps is as good as exact.</summary>
    private static double FarUpperTail(double t, double df, double noncentrality)
    {
        const int steps = 18;
        const double step = 0.5;
        var squares = ChiSquared.Of(df);
        double sum = 0;
        for (int i = -steps; i <= steps; i++)
        {
            double s = (noncentrality + i * step) / t;
            double x = df * s * s;
            double tail = t > 0 ? (s > 0 ? squares.Cdf(x) : 0) : (s > 0 ? squares.UpperTail(x) : 1);
            sum += tail * step * Normal.Standard.Density(i * step);
        }

        return sum;
    }
}
