using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>Quantiles of the beta distribution as odds x/(1 − x), which keep their digits at both ends.</summary>
internal static class BetaQuantile
{
    /// <summary>The odds at which the lower or the upper tail has a probability in (0, 1); 0 or infinite where they are
    /// beyond a double.</summary>
    internal static double Odds(in IncompleteBeta function, double probability, bool isUpper)
    {
        // The smaller tail is solved for; where the given one is the larger, its complement is exact.
        var swap = probability > 0.5;
        var part = new Part(function, swap ? 1 - probability : probability, isUpper != swap);
        return TailInversion.Solve(part, part.Start());
    }

    /// <summary>One tail against its wanted size.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly struct Part(IncompleteBeta function, double wanted, bool isUpper) : ILogTail
    {
        public int WayBack => isUpper ? -1 : 1;

        public double Start()
        {
            var (a, b) = (function.A, function.B);
            // The leading powers of the two tails bound the logarithm of the odds from below and above.
            var least = (Math.Log(a * (isUpper ? 1 - wanted : wanted)) + function.LogBeta) / a;
            var most = -(Math.Log(b * (isUpper ? wanted : 1 - wanted)) + function.LogBeta) / b;
            if (Math.Min(a, b) <= 1)
            {
                return Math.Exp(a < b ? least : most);
            }

            // Abramowitz and Stegun 26.5.22.
            var z = Normal.StandardUpperQuantile(wanted) * (isUpper ? 1 : -1);
            var lambda = ((z * z) - 3) / 6;
            var (ra, rb) = (1 / ((2 * a) - 1), 1 / ((2 * b) - 1));
            var h = 2 / (ra + rb);
            var w = (z * Math.Sqrt(Math.Max(0, h + lambda)) / h) + ((rb - ra) * (lambda + (5.0 / 6) - (2 / (3 * h))));
            return Math.Exp(Math.Clamp(Math.Log(a / b) + (2 * w), Math.Min(least, most), most));
        }

        public (double Error, double Slope, double Bend) At(double odds)
        {
            var (x, y) = (odds / (1 + odds), 1 / (1 + odds));
            var excess = Math.FusedMultiplyAdd(-function.B, odds, function.A) / (1 + odds);
            var (lower, upper, prefactor) = function.Tails(x, y, excess);
            var tail = isUpper ? upper : lower;
            var slope = (isUpper ? -prefactor : prefactor) / tail;
            return (Math.Log(tail / wanted), slope, excess - slope);
        }
    }
}
