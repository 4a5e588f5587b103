namespace McuBench.Stats.Hypotheses;

/// <summary>The range within which two things count as equal for a purpose; stated before the data are seen.</summary>
/// <remarks>Immutable; equal when both ends are equal.</remarks>
public sealed record EquivalenceMargin
{
    private EquivalenceMargin(double lower, double upper) => (Lower, Upper) = (lower, upper);

    /// <summary>The least difference, or ratio, that still counts as equal.</summary>
    public double Lower { get; }

    /// <summary>The greatest difference, or ratio, that still counts as equal.</summary>
    public double Upper { get; }

    /// <summary>A margin with any two ends.</summary>
    /// <param name="lower">The lower end, finite, in the unit of the data, or a ratio.</param>
    /// <param name="upper">The upper end, above the lower one.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is not finite, or the upper one not above the lower one.</exception>
    public static EquivalenceMargin Of(double lower, double upper)
    {
        Check.Finite(lower, "Lower end of the margin");
        Check.Finite(upper, "Upper end of the margin");
        return upper > lower
            ? new EquivalenceMargin(lower, upper)
            : throw Check.OutOfRange(nameof(upper), "Upper end of the margin", "above the lower end", upper);
    }

    /// <summary>The same difference allowed each way: from −difference to +difference.</summary>
    /// <param name="difference">Above 0, in the unit of the data.</param>
    /// <exception cref="ArgumentOutOfRangeException">The difference is not a finite number above 0.</exception>
    public static EquivalenceMargin Within(double difference)
    {
        Check.Positive(difference, "Allowed difference");
        return new EquivalenceMargin(-difference, difference);
    }

    /// <summary>The same factor allowed each way: from 1/factor to factor.</summary>
    /// <param name="factor">Above 1, as in 1.05.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not a finite number above 1.</exception>
    public static EquivalenceMargin WithinFactor(double factor) =>
        factor > 1 && double.IsFinite(factor)
            ? new EquivalenceMargin(1 / factor, factor)
            : throw Check.OutOfRange(nameof(factor), "Allowed factor", "a finite number above 1", factor);
}
