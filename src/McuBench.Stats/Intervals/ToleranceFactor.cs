using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Exact factors of normal tolerance limits: how many sample standard deviations lie between mean and limit.</summary>
internal static class ToleranceFactor
{
    /// <summary>The factor for a count of two or more.</summary>
    internal static double Of(int count, ToleranceOptions options) =>
        options.Side == ToleranceSide.Both
            ? TwoSided(count, options.Content, options.Confidence)
            : OneSided(count, options.Content, options.Confidence);

    /// <summary>
    /// The factor k at which mean ± k·s holds the content with the confidence (odeh-1978, eq. 1): given that the mean lies
    /// u/√n standard deviations off, s must reach r(u)/k, where r(u) is the half-width about it that holds the content.
    /// </summary>
    private static double TwoSided(int count, double content, double confidence)
    {
        // The integrand is an even smooth function under a normal density, for which the plain sum over equal steps is as
        // good as exact; beyond 8.5 the density is below 1e-16.
        const int steps = 68;
        const double step = 0.125;
        double[] squares = new double[steps + 1];
        double[] weights = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            double radius = HalfWidth(i * step / Math.Sqrt(count), content);
            squares[i] = radius * radius;
            weights[i] = (i == 0 ? 1 : 2) * step * Normal.Standard.Density(i * step);
        }

        double df = count - 1;
        var chiSquared = ChiSquared.Of(df);
        // Howe's approximation (howe-1969) is within some percent.
        double guess =
            Normal.Standard.UpperQuantile((1 - content) / 2)
            * Math.Sqrt(df * (1 + 1.0 / count) / chiSquared.Quantile(1 - confidence));
        return Root(
            guess,
            k =>
            {
                double lacking = confidence;
                double slope = 0;
                for (int i = 0; i <= steps; i++)
                {
                    double x = df * squares[i] / (k * k);
                    lacking -= weights[i] * chiSquared.UpperTail(x);
                    slope += weights[i] * chiSquared.Density(x) * 2 * x / k;
                }

                return (lacking, slope);
            }
        );
    }

    /// <summary>
    /// The factor k at which mean + k·s lies above the quantile z of the content with the confidence: the mean of
    /// Φ(√n (k s − z)) over the distribution of s, the noncentral t probability written out (owen-1968, section 4).
    /// </summary>
    private static double OneSided(int count, double content, double confidence)
    {
        // Over the logarithm of s the integrand falls off fast on both sides, so that equal steps are as good as exact.
        const int steps = 400;
        const double negligible = 1e-18;
        double df = count - 1;
        double root = Math.Sqrt(count);
        double z = Normal.Standard.Quantile(content);
        var chiSquared = ChiSquared.Of(df);
        double from = Math.Log(chiSquared.Quantile(negligible) / df) / 2;
        double step = (Math.Log(chiSquared.UpperQuantile(negligible) / df) / 2 - from) / steps;
        double[] deviations = new double[steps + 1];
        double[] weights = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            deviations[i] = Math.Exp(from + i * step);
            double x = df * deviations[i] * deviations[i];
            weights[i] = step * 2 * x * chiSquared.Density(x);
        }

        double guess = z + Normal.Standard.Quantile(confidence) * Math.Sqrt((1 + z * z / 2) / count);
        return Root(
            guess,
            k =>
            {
                double lacking = confidence;
                double slope = 0;
                for (int i = 0; i <= steps; i++)
                {
                    double u = root * (k * deviations[i] - z);
                    lacking -= weights[i] * Normal.Standard.Cdf(u);
                    slope += weights[i] * Normal.Standard.Density(u) * root * deviations[i];
                }

                return (lacking, slope);
            }
        );
    }

    /// <summary>The root of a falling function from a guess: Newton's method, kept between what is known to lie on both
    /// sides.</summary>
    private static double Root(double guess, Func<double, (double Lacking, double Slope)> at)
    {
        double low = double.NegativeInfinity;
        double high = double.PositiveInfinity;
        double k = guess;
        for (int i = 0; i < 200; i++)
        {
            (double lacking, double slope) = at(k);
            (low, high) = lacking > 0 ? (k, high) : (low, k);
            double next = k + lacking / slope;
            if (!(next > low && next < high && Math.Abs(next - k) <= 1 + Math.Abs(k)))
            {
                next =
                    double.IsInfinity(high) ? k + 1 + Math.Abs(k)
                    : double.IsInfinity(low) ? k - 1 - Math.Abs(k)
                    : low + (high - low) / 2;
            }

            if (Math.Abs(next - k) <= 1e-14 * Math.Abs(k))
            {
                return next;
            }

            k = next;
        }

        return k;
    }

    /// <summary>The r at which Φ(a + r) − Φ(a − r) is the content, by Newton's method from above the root of the one
    /// tail that matters.</summary>
    private static double HalfWidth(double away, double content)
    {
        double outside = 1 - content;
        double r = away + Normal.Standard.UpperQuantile(outside / 2);
        for (int i = 0; i < 100; i++)
        {
            double excess = Normal.Standard.UpperTail(r + away) + Normal.Standard.UpperTail(r - away) - outside;
            double slope = Normal.Standard.Density(r + away) + Normal.Standard.Density(r - away);
            double next = Math.Max(0, r + excess / slope);
            if (Math.Abs(next - r) <= 1e-15 * r)
            {
                return next;
            }

            r = next;
        }

        return r;
    }
}
