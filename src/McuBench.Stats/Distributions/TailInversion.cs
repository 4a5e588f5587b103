namespace McuBench.Stats.Distributions;

/// <summary>Finds the positive quantity at which a tail has a given size.</summary>
internal static class TailInversion
{
    private const int MaximumSteps = 2000;
    private const double LongestStep = 20;

    /// <summary>
    /// Halley's method on the logarithm of a tail, in the logarithm of the quantity.
    /// </summary>
    /// <remarks>In these coordinates every tail here is concave, so that the steps settle from any start. An infinite or
    /// zero start is given back as it is: the quantile is then beyond what a double holds.</remarks>
    internal static double Solve<T>(in T tail, double start)
        where T : struct, ILogTail
    {
        var (value, step) = (start, 0.0);
        for (var i = 0; i < MaximumSteps; i++)
        {
            if (value == 0 || !double.IsFinite(value))
            {
                return value;
            }

            var (error, slope, bend) = tail.At(value);
            if (double.IsNegativeInfinity(error))
            {
                // Nothing is left of the tail there: back towards the bulk.
                step = tail.WayBack * Math.Max(0.5, Math.Abs(step) / 2);
                value *= Math.Exp(step);
                continue;
            }

            // Halley's method where the bend is mild, Newton's elsewhere.
            step =
                Math.Abs(error * bend) < Math.Abs(slope)
                    ? -2 * error / ((2 * slope) - (error * bend))
                    : Math.Clamp(-error / slope, -LongestStep, LongestStep);
            value *= Math.Exp(step);

            // A step of Halley's method leaves about its cube, on the scale over which the tail changes.
            var scaled = step * (1 + Math.Abs(slope) + Math.Abs(bend));
            if (Math.Abs(step) * scaled * scaled < 1e-17)
            {
                return value;
            }
        }

        throw new InvalidOperationException("Quantile did not settle.");
    }
}
