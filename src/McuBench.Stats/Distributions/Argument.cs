using System.Runtime.CompilerServices;

namespace McuBench.Stats.Distributions;

/// <summary>What the distributions ask of their arguments. Each check gives the value back, so that it can stand in an
/// expression; the wording is <see cref="Check"/>'s.</summary>
internal static class Argument
{
    private const double SmallestNormal = 2.2250738585072014e-308;

    // Beyond this a difference such as x less the shape has no digits that mean anything.
    private const double LargestShape = 1e15;

    // Below this the upper tail is a small difference at every argument.
    private const double SmallestShape = 1e-3;

    internal static double Finite(double value, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        Check.Finite(value, what, name);
        return value;
    }

    internal static double DegreesOfFreedom(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        Check.DegreesOfFreedom(value, name);
        return value;
    }

    internal static double Shape(
        double value,
        string what,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        value >= SmallestShape && value <= LargestShape
            ? value
            : throw Check.OutOfRange(name, what, "between 0.001 and 1E+15", value);

    internal static double Scale(
        double value,
        string what,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        value >= SmallestNormal && double.IsFinite(value)
            ? value
            : throw Check.OutOfRange(name, what, "a finite number above 0 and not denormal", value);

    /// <summary>A probability that a continuous distribution without ends has a quantile for.</summary>
    internal static double Probability(
        double probability,
        [CallerArgumentExpression(nameof(probability))] string name = ""
    ) =>
        probability > 0 && probability < 1
            ? probability
            : throw Check.OutOfRange(name, "Probability", "above 0 and below 1", probability);

    internal static double FiniteQuantile(double quantile, double probability) =>
        double.IsFinite(quantile)
            ? quantile
            : throw Check.OutOfRange(
                nameof(probability),
                "Probability",
                "far enough from 0 and 1 that a double can hold its quantile",
                probability
            );

    internal static double FiniteDensity(double density, double x) =>
        double.IsFinite(density)
            ? density
            : throw Check.OutOfRange(nameof(x), "Value", "one at which the density is bounded", x);
}
