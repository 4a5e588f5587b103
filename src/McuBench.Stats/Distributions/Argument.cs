using System.Globalization;
using System.Runtime.CompilerServices;

namespace McuBench.Stats.Distributions;

/// <summary>What the distributions ask of their arguments, and what they say when they don't get it.</summary>
internal static class Argument
{
    private const double SmallestNormal = 2.2250738585072014e-308;

    internal static double Finite(
        double value,
        string what,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) => double.IsFinite(value) ? value : throw Fault(name, value, what, "a finite number");

    internal static double Positive(
        double value,
        string what,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) => value > 0 && double.IsFinite(value) ? value : throw Fault(name, value, what, "a finite number above 0");

    internal static double DegreesOfFreedom(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 ? value : throw Fault(name, value, "Degrees of freedom", "above 0");

    internal static double Scale(
        double value,
        string what,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        value >= SmallestNormal && double.IsFinite(value)
            ? value
            : throw Fault(name, value, what, "a finite number above 0 and not denormal");

    internal static double Probability(
        double probability,
        [CallerArgumentExpression(nameof(probability))] string name = ""
    ) =>
        probability > 0 && probability < 1
            ? probability
            : throw Fault(name, probability, "Probability", "above 0 and below 1");

    internal static double FiniteQuantile(double quantile, double probability) =>
        double.IsFinite(quantile)
            ? quantile
            : throw Fault(
                nameof(probability),
                probability,
                "Probability",
                "far enough from 0 and 1 that a double can hold its quantile"
            );

    private static ArgumentOutOfRangeException Fault(string name, double was, string what, string rule) =>
        new(name, was, string.Create(CultureInfo.InvariantCulture, $"{what} must be {rule}; was {was}."));
}
