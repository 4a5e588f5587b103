using System.Globalization;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests of whether values come from a normal population whose mean and spread are not known.</summary>
/// <remarks>
/// A p-value that is not small does not show that the population is normal: ten values hardly ever tell. With thousands of
/// values the slightest departure is found, ties by rounding among them.
/// </remarks>
public static class Normality
{
    private const int MostForShapiroWilk = 5000;

    // Where the fitted curve of the p-value ends; it turns upward beyond.
    private const double LargestAdjusted = 10;

    /// <summary>Shapiro and Wilk's test in Royston's approximation (royston-1995): the squared correlation of the sorted
    /// values with those that a normal sample would have. O(n log n).</summary>
    /// <remarks>Shift and scale change nothing. For three values the p-value is exact, for others it comes from
    /// curves fitted to simulations: a very small one says no more than that it is very small.</remarks>
    /// <param name="sample">From 3 to 5000 values that are not all equal.</param>
    /// <exception cref="ArgumentNullException">The sample is null.</exception>
    /// <exception cref="ArgumentException">There are too few or too many values, or all are equal, which leaves W
    /// undefined.</exception>
    public static NormalityResult ShapiroWilk(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 3, nameof(sample));
        if (sample.Count > MostForShapiroWilk)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Count of values must be at most {MostForShapiroWilk}, as far as the approximation goes; was {sample.Count}, for which Anderson-Darling has no limit."
                ),
                nameof(sample)
            );
        }

        double[] values = Sorted(sample, "W", out SquaredDeviations deviations);
        double[] weights = RoystonWeights(values.Length);
        double along = 0;
        double squares = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            along += weights[i] * (values[^(i + 1)] - values[i]);
            squares += 2 * weights[i] * weights[i];
        }

        // 1 − W from a product, so that the digits that make the p-value remain.
        double product = squares * deviations.Sum;
        double root = Math.Sqrt(product);
        double lack = Math.Max(0, (root - along) * (root + along) / product);
        double pValue = PValue(lack, values.Length);
        return new NormalityResult(1 - lack, pValue, IsPValueBound: false, values.Length, "Shapiro-Wilk");
    }

    /// <summary>Anderson and Darling's test with mean and spread estimated; p-value by stephens-1986. O(n log n).</summary>
    /// <remarks>
    /// Shift and scale change nothing. The statistic is the plain A²; the p-value belongs to A² (1 + 0.75/n + 2.25/n²), from
    /// curves fitted to a table in four stretches, with steps of 2 % of itself where they meet. Beyond an adjusted value of 10 the curve
    /// ends, and the p-value there, 4E-24, is given as a bound.
    /// </remarks>
    /// <param name="sample">Eight values or more that are not all equal.</param>
    /// <exception cref="ArgumentNullException">The sample is null.</exception>
    /// <exception cref="ArgumentException">There are too few values, or all are equal, which leaves A² undefined.</exception>
    public static NormalityResult AndersonDarling(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.AtLeast(sample.Count, 8, nameof(sample));
        double[] values = Sorted(sample, "A²", out SquaredDeviations deviations);
        int n = values.Length;
        double deviation = deviations.RootOver(n - 1);
        var sum = new CompensatedSum();
        for (int i = 0; i < n; i++)
        {
            double fromBelow = (values[i] - deviations.Mean) / deviation;
            double fromAbove = (values[n - 1 - i] - deviations.Mean) / deviation;
            sum.Add((2.0 * i + 1) * (Normal.StandardLogUpperTail(-fromBelow) + Normal.StandardLogUpperTail(fromAbove)));
        }

        sum.Add((double)n * n);
        double statistic = -sum.Value / n;
        double adjusted = statistic * (1 + 0.75 / n + 2.25 / ((double)n * n));
        bool isBound = adjusted > LargestAdjusted;
        double pValue = AndersonDarlingPValue(Math.Min(adjusted, LargestAdjusted));
        return new NormalityResult(statistic, pValue, isBound, n, "Anderson-Darling");
    }

    private static double[] Sorted(Sample sample, string statistic, out SquaredDeviations deviations)
    {
        double[] values = ShiftedValues.Of(sample);
        Array.Sort(values);
        deviations = SquaredDeviations.Of(values);
        return deviations.Sum > 0
            ? values
            : throw new ArgumentException(
                $"Values must differ; all were equal, which leaves {statistic} undefined.",
                nameof(sample)
            );
    }

    // royston-1995, step 1: the weights of the largest half, largest first; the others are their negatives.
    private static double[] RoystonWeights(int n)
    {
        double[] weights = new double[n / 2];
        if (n == 3)
        {
            weights[0] = Math.Sqrt(0.5);
            return weights;
        }

        double squares = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] = Normal.Standard.UpperQuantile((i + 1 - 0.375) / (n + 0.25));
            squares += 2 * weights[i] * weights[i];
        }

        double u = 1 / Math.Sqrt(n);
        double root = Math.Sqrt(squares);
        double first = weights[0] / root + Polynomial(u, 0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056);
        double rest = squares - 2 * weights[0] * weights[0];
        double share = 1 - 2 * first * first;
        int from = 1;
        if (n > 5)
        {
            double second = weights[1] / root + Polynomial(u, 0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633);
            rest -= 2 * weights[1] * weights[1];
            share -= 2 * second * second;
            weights[1] = second;
            from = 2;
        }

        weights[0] = first;
        double factor = Math.Sqrt(rest / share);
        for (int i = from; i < weights.Length; i++)
        {
            weights[i] /= factor;
        }

        return weights;
    }

    private static double PValue(double lack, int n)
    {
        if (n == 3)
        {
            // Exact (shapiro-wilk-1965): W is at least 3/4.
            double angle = Math.Atan2(Math.Sqrt(1 - lack), Math.Sqrt(lack)) - Math.PI / 3;
            return Math.Clamp(6 / Math.PI * angle, 0, 1);
        }

        double log = Math.Log(lack);
        double z;
        if (n <= 11)
        {
            double y = -Math.Log(0.459 * n - 2.273 - log);
            double mean = Polynomial(n, 0.544, -0.39978, 0.025054, -0.0006714);
            z = (y - mean) / Math.Exp(Polynomial(n, 1.3822, -0.77857, 0.062767, -0.0020322));
        }
        else
        {
            double x = Math.Log(n);
            double mean = Polynomial(x, -1.5861, -0.31082, -0.083751, 0.0038915);
            z = (log - mean) / Math.Exp(Polynomial(x, -0.4803, -0.082676, 0.0030302));
        }

        return Normal.StandardUpperTail(z);
    }

    // stephens-1986, Table 4.9.
    private static double AndersonDarlingPValue(double a) =>
        a switch
        {
            <= 0.2 => 1 - Math.Exp(Polynomial(a, -13.436, 101.14, -223.73)),
            <= 0.34 => 1 - Math.Exp(Polynomial(a, -8.318, 42.796, -59.938)),
            < 0.6 => Math.Exp(Polynomial(a, 0.9177, -4.279, -1.38)),
            _ => Math.Exp(Polynomial(a, 1.2937, -5.709, 0.0186)),
        };

    private static double Polynomial(double x, params ReadOnlySpan<double> coefficients)
    {
        double sum = 0;
        for (int i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = sum * x + coefficients[i];
        }

        return sum;
    }
}
