using System.Globalization;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Uncertainty;

/// <summary>The correlation of two inputs, named as the inputs are.</summary>
/// <remarks>Immutable; equal when both names, in this order, and the coefficient are equal.</remarks>
public sealed record Correlation
{
    /// <summary>States a correlation.</summary>
    /// <param name="first">The name of one input.</param>
    /// <param name="second">The name of another input.</param>
    /// <param name="coefficient">The coefficient, from −1 to 1.</param>
    /// <exception cref="ArgumentException">A name is blank, both are the same, or the coefficient is outside −1 to 1.</exception>
    public Correlation(string first, string second, double coefficient)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(first);
        ArgumentException.ThrowIfNullOrWhiteSpace(second);
        if (first == second)
        {
            throw new ArgumentException(
                $"Correlation must be of two inputs; was of '{first}' with itself.",
                nameof(second)
            );
        }

        if (!(Math.Abs(coefficient) <= 1))
        {
            throw Check.OutOfRange(nameof(coefficient), "Correlation", "between -1 and 1, ends included", coefficient);
        }

        First = first;
        Second = second;
        Coefficient = coefficient;
    }

    /// <summary>The name of one input.</summary>
    public string First { get; }

    /// <summary>The name of the other input.</summary>
    public string Second { get; }

    /// <summary>The coefficient, from −1 to 1.</summary>
    public double Coefficient { get; }

    /// <summary>The correlation of two means from readings that were taken side by side (gum-2008, 5.2.3 and H.2.2).
    /// O(n).</summary>
    /// <param name="first">The name of one input.</param>
    /// <param name="firstReadings">Its readings, two or more that are not all equal.</param>
    /// <param name="second">The name of the other input.</param>
    /// <param name="secondReadings">Its readings, the k-th taken together with the k-th of the first.</param>
    /// <exception cref="ArgumentException">The counts differ, there are too few readings, or those of one input are all
    /// equal, so that they show no correlation.</exception>
    public static Correlation FromReadings(string first, Sample firstReadings, string second, Sample secondReadings)
    {
        ArgumentNullException.ThrowIfNull(firstReadings);
        ArgumentNullException.ThrowIfNull(secondReadings);
        Check.AtLeast(firstReadings.Count, 2, nameof(firstReadings));
        Check.SameCount(
            secondReadings.Count,
            firstReadings.Count,
            "Count of second readings",
            "first reading",
            nameof(secondReadings)
        );
        double[] x = Standardised(firstReadings, nameof(firstReadings));
        double[] y = Standardised(secondReadings, nameof(secondReadings));
        var products = new CompensatedSum();
        for (int k = 0; k < x.Length; k++)
        {
            products.Add(x[k] * y[k]);
        }

        // Rounding may carry readings on a line just past 1.
        return new Correlation(first, second, Math.Clamp(products.Value / (x.Length - 1), -1, 1));
    }

    private static double[] Standardised(Sample readings, string name)
    {
        double mean = Location.Mean(readings.Values);
        double scatter = Scale.StandardDeviation(readings.Values);
        if (!(scatter > 0))
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Readings must scatter to show a correlation; were {readings.Count} times {readings.Values[0]}."
                ),
                name
            );
        }

        return [.. readings.Values.ToArray().Select(value => (value - mean) / scatter)];
    }
}
