using System.Runtime.InteropServices;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Planning;

/// <summary>
/// Means over what two sample variances make of Welch's standard error and its degrees of freedom, for normal populations
/// (moser-stevens-watts-1989): given the ratio of the sample variances, the statistic is a t of n₁ + n₂ − 2 degrees of
/// freedom, rescaled; the ratio is F distributed.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct WelchPlan
{
    private readonly int _first;
    private readonly int _second;
    private readonly double _firstVariance;
    private readonly double _secondVariance;

    internal WelchPlan(int first, int second, TwoSpreads spreads)
    {
        _first = first;
        _second = second;
        double a = spreads.First / Math.Sqrt(first);
        double b = spreads.Second / Math.Sqrt(second);
        StandardError = double.Hypot(a, b);
        _firstVariance = Square(a / StandardError);
        _secondVariance = Square(b / StandardError);
    }

    /// <summary>The true standard error of the difference of means.</summary>
    internal double StandardError { get; }

    /// <summary>The degrees of freedom of both sample variances together.</summary>
    internal double DegreesOfFreedom => _first + _second - 2;

    /// <summary>The mean of a probability over the ratio of the variances.</summary>
    /// <param name="perSide">The significance of one side.</param>
    /// <param name="reach">A bound on how far apart, in standard errors, what is compared lies: it sets the step.</param>
    /// <param name="probability">The probability, given Welch's critical distance in true standard errors, at a pooled
    /// sample spread equal to the true one.</param>
    internal double Mean(double perSide, double reach, Func<double, double> probability)
    {
        double n1 = _first - 1;
        double n2 = _second - 1;
        var ratio = FisherF.Of(n1, n2);
        // The trapezoidal rule on x = log(s₁/s₂), in steps short beside the peak of x and beside the relative spread of
        // the statistic, over which the probability changes.
        double peak2 = 1 / (2 * n1) + 1 / (2 * n2);
        double change2 = 1 / (reach * reach) + 1 / (2 * DegreesOfFreedom);
        double step = Math.Min(0.12, 0.5 / Math.Sqrt(1 / peak2 + 1 / change2));
        double sum = 0;
        foreach (int direction in (ReadOnlySpan<int>)[1, -1])
        {
            double rest = 1;
            for (int i = direction == 1 ? 0 : 1; rest > 1e-17; i++)
            {
                double f = Math.Exp(2 * direction * i * step);
                double weight = 2 * f * ratio.Density(f);
                sum += weight * probability(Critical(f, perSide));
                // What is left falls at least as fast as exp(−ν·x), once beyond the peak.
                rest = i * step > Math.Sqrt(peak2) ? weight * (1 + 1 / Math.Min(n1, n2)) : 1;
            }
        }

        return sum * step;
    }

    /// <summary>t at Satterthwaite's degrees of freedom times the standard error found, in true standard errors.</summary>
    private double Critical(double f, double perSide)
    {
        double n1 = _first - 1;
        double n2 = _second - 1;
        // Sample variances over true ones, given their ratio and a pooled one of 1.
        double second = DegreesOfFreedom / (n1 * f + n2);
        double a = _firstVariance * f * second;
        double b = _secondVariance * second;
        double df = (a + b) * (a + b) / (a * a / n1 + b * b / n2);
        return StudentT.Of(df).UpperQuantile(perSide) * Math.Sqrt(a + b);
    }

    private static double Square(double x) => x * x;
}
