namespace McuBench.Stats.Regression;

/// <summary>A straight line that wild points do not move. Made by <see cref="RobustLine"/>.</summary>
/// <param name="Slope">The slope, with its interval where the method has one.</param>
/// <param name="Intercept">The value of the line at x = 0: the median of y − slope · x.</param>
public sealed record RobustLineFit(Estimate Slope, double Intercept)
{
    /// <summary>The value of the line at x, in the unit of y.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite.</exception>
    public double ValueAt(double x)
    {
        Check.Finite(x, "Abscissa");
        return Check.Representable(Intercept + Slope.Value * x, "Value of the line", nameof(x));
    }
}
