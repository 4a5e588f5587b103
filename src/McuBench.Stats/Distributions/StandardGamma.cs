using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>The gamma distribution of scale 1; values are given as a value over a scale, so that nothing is lost.</summary>
internal static class StandardGamma
{
    /// <summary>The density at value/scale; infinite at 0 for a shape below 1.</summary>
    internal static double Density(in IncompleteGamma function, double value, double scale)
    {
        var x = value / scale;
        if (x > 0)
        {
            return double.IsFinite(x) ? function.Prefactor(x, Difference(function.A, value, scale)) / x : 0;
        }

        return value < 0 || function.A > 1 ? 0
            : function.A < 1 ? double.PositiveInfinity
            : 1;
    }

    /// <summary>The probabilities of at or below, and of above value/scale.</summary>
    internal static (double Lower, double Upper) Tails(in IncompleteGamma function, double value, double scale)
    {
        var x = value / scale;
        if (!(x > 0))
        {
            return (0, 1);
        }

        if (!double.IsFinite(x))
        {
            return (1, 0);
        }

        var (lower, upper, _) = function.Tails(x, Difference(function.A, value, scale));
        return (lower, upper);
    }

    /// <summary>The value at which the lower or the upper tail has a probability in (0, 1).</summary>
    internal static double Quantile(in IncompleteGamma function, double probability, bool isUpper)
    {
        // The smaller tail is solved for; where the given one is the larger, its complement is exact.
        var swap = probability > 0.5;
        var part = new Part(function, swap ? 1 - probability : probability, isUpper != swap);
        return TailInversion.Solve(part, part.Start());
    }

    /// <summary>value/scale − shape, which the rounding of the quotient would spoil at large shapes.</summary>
    private static double Difference(double shape, double value, double scale) =>
        Math.FusedMultiplyAdd(-shape, scale, value) / scale;

    /// <summary>One tail against its wanted size.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly struct Part(IncompleteGamma function, double wanted, bool isUpper) : ILogTail
    {
        public double Start()
        {
            var shape = function.A;
            // P(a, x) is at most x^a/Γ(a + 1), which bounds the quantile from below and is close to it far down.
            var lowerTail = isUpper ? 1 - wanted : wanted;
            var bound = Math.Exp((Math.Log(lowerTail) + GammaFunction.LogGamma(shape + 1)) / shape);
            var z = Normal.StandardUpperQuantile(wanted) * (isUpper ? 1 : -1);
            var root = 1 - (1 / (9 * shape)) + (z / (3 * Math.Sqrt(shape)));
            // Wilson and Hilferty 1931: the cube root is nearly normal.
            return Math.Max(bound, root > 0 ? shape * root * root * root : 0);
        }

        public int WayBack => isUpper ? -1 : 1;

        public (double Error, double Slope, double Bend) At(double x)
        {
            var (lower, upper, prefactor) = function.Tails(x, x - function.A);
            var tail = isUpper ? upper : lower;
            var slope = (isUpper ? -prefactor : prefactor) / tail;
            return (Math.Log(tail / wanted), slope, function.A - x - slope);
        }
    }
}
