namespace McuBench.Stats.Planning;

/// <summary>The standard deviations of two populations that a plan reckons with.</summary>
/// <remarks>Immutable; equal when both are equal. In the unit of the data; or of their logarithms, where ratios are planned
/// (<see cref="OfLogarithms"/>).</remarks>
public sealed record TwoSpreads
{
    /// <summary>Two standard deviations.</summary>
    /// <param name="first">The first population's, above 0.</param>
    /// <param name="second">The second population's, above 0, in the same unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">One is not a finite number above 0.</exception>
    public TwoSpreads(double first, double second)
    {
        Check.Positive(first, "Standard deviation");
        Check.Positive(second, "Standard deviation");
        First = first;
        Second = second;
    }

    /// <summary>The first population's standard deviation.</summary>
    public double First { get; }

    /// <summary>The second population's standard deviation.</summary>
    public double Second { get; }

    /// <summary>The standard deviations of the logarithms of two lognormal populations, √log(1 + cv²): what a plan for a
    /// ratio takes, with the logarithms of ratios as differences.</summary>
    /// <param name="first">The first population's standard deviation over its mean, above 0.</param>
    /// <param name="second">The second population's, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">One is not a finite number above 0.</exception>
    public static TwoSpreads OfLogarithms(double first, double second)
    {
        Check.Positive(first, "Relative spread");
        Check.Positive(second, "Relative spread");
        return new TwoSpreads(OfLogarithm(first), OfLogarithm(second));
    }

    private static double OfLogarithm(double relative) =>
        // Where the square is below the last place of 1, the logarithm's spread is the relative one.
        relative < 1e-8
            ? relative
        : relative > 1e150 ? Math.Sqrt(2 * Math.Log(relative))
        : Math.Sqrt(Distributions.Elementary.Log1p(relative * relative));
}
