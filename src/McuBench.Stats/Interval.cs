using System.Globalization;

namespace McuBench.Stats;

/// <summary>
/// A confidence interval: two ends, each finite or infinite on its own side, and the confidence that they hold.
/// </summary>
/// <remarks>Immutable; equal when both ends and the confidence are equal. Safe to use from many threads.</remarks>
public sealed record Interval
{
    /// <summary>Makes an interval.</summary>
    /// <param name="lower">The lower end; may be negative infinity, where nothing bounds it from below.</param>
    /// <param name="upper">The upper end, not below <paramref name="lower"/>; may be positive infinity.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is NaN or the wrong infinity, the ends are in the wrong
    /// order, or the confidence lies outside (0, 1).</exception>
    public Interval(double lower, double upper, double confidence)
    {
        if (double.IsNaN(lower) || double.IsPositiveInfinity(lower))
        {
            throw Fault(nameof(lower), "Lower end", "a finite number or negative infinity", lower);
        }

        if (double.IsNaN(upper) || double.IsNegativeInfinity(upper))
        {
            throw Fault(nameof(upper), "Upper end", "a finite number or positive infinity", upper);
        }

        if (upper < lower)
        {
            throw Fault(
                nameof(upper),
                "Upper end",
                string.Create(CultureInfo.InvariantCulture, $"at or above the lower end {lower}"),
                upper
            );
        }

        if (!(confidence > 0 && confidence < 1))
        {
            throw Fault(nameof(confidence), "Confidence", "above 0 and below 1", confidence);
        }

        Lower = lower;
        Upper = upper;
        Confidence = confidence;
    }

    /// <summary>The lower end, in the unit of the data.</summary>
    public double Lower { get; }

    /// <summary>The upper end, in the unit of the data.</summary>
    public double Upper { get; }

    /// <summary>The confidence, above 0 and below 1; 0.95 means 95 %.</summary>
    public double Confidence { get; }

    /// <summary>Upper less lower end; infinite where an end is, or where the ends are so far apart that no number holds
    /// the distance.</summary>
    public double Width => Upper - Lower;

    /// <summary>Whether a value lies in the interval, ends included.</summary>
    public bool Contains(double value) => value >= Lower && value <= Upper;

    /// <summary>The interval as <c>[1.2, 3.4] (95 %)</c>, in the invariant culture.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"[{Lower:R}, {Upper:R}] ({Confidence * 100:0.###} %)");

    private static ArgumentOutOfRangeException Fault(string name, string what, string rule, double was) =>
        new(name, was, string.Create(CultureInfo.InvariantCulture, $"{what} must be {rule}; was {was}."));
}
