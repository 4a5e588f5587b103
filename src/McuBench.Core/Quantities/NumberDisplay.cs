using System.Collections.Immutable;

namespace McuBench.Core.Quantities;

/// <summary>Plain numbers for readers, such as ratios and counts per second, by the rules of
/// <see cref="QuantityDisplay"/>.</summary>
/// <remarks>
/// From 0.001 to below 1,000,000 the digits stand plain; beyond, value and ends share an exponent: "1.235e7". A unit that
/// takes no prefix, such as "blocks/s", may be given and follows each number.
/// </remarks>
public static class NumberDisplay
{
    /// <summary>The number to so many significant digits.</summary>
    /// <param name="value">The number, finite.</param>
    /// <param name="significantDigits">The digits to show, 1 to 17.</param>
    /// <param name="unit">What follows the number; empty for nothing.</param>
    /// <param name="form">ASCII or typographic.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite, or the count of digits is outside 1 to
    /// 17.</exception>
    public static string Rounded(
        double value,
        int significantDigits,
        string unit = "",
        TextForm form = TextForm.Typographic
    ) => DisplayText.Rounded(Finite(value, "Value", nameof(value)), significantDigits, Scales(unit), form);

    /// <summary>The number with its expanded uncertainty: "1.830 ± 0.021".</summary>
    /// <param name="value">The number, finite.</param>
    /// <param name="expandedUncertainty">The expanded uncertainty, above zero and finite.</param>
    /// <param name="unit">What follows each number; empty for nothing.</param>
    /// <param name="form">ASCII or typographic.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the uncertainty is not above
    /// zero.</exception>
    public static string WithUncertainty(
        double value,
        double expandedUncertainty,
        string unit = "",
        TextForm form = TextForm.Typographic
    ) =>
        double.IsFinite(expandedUncertainty) && !(expandedUncertainty > 0)
            ? throw new ArgumentOutOfRangeException(
                nameof(expandedUncertainty),
                expandedUncertainty,
                FormattableString.Invariant($"Expanded uncertainty must be above zero; was {expandedUncertainty}.")
            )
            : DisplayText.WithUncertainty(
                Finite(value, "Value", nameof(value)),
                Finite(expandedUncertainty, "Expanded uncertainty", nameof(expandedUncertainty)),
                Scales(unit),
                form
            );

    /// <summary>The number with an interval: "1.830 (95 % interval 1.811 to 1.852)".</summary>
    /// <param name="value">The number, finite; it may lie outside of the interval.</param>
    /// <param name="lower">The lower end, finite.</param>
    /// <param name="upper">The upper end, finite and above the lower one.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="unit">What follows each number; empty for nothing.</param>
    /// <param name="form">ASCII or typographic.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, the upper end is not above the lower one, or
    /// the confidence lies outside (0, 1).</exception>
    public static string WithInterval(
        double value,
        double lower,
        double upper,
        double confidence,
        string unit = "",
        TextForm form = TextForm.Typographic
    ) =>
        double.IsFinite(lower) && double.IsFinite(upper) && upper <= lower
            ? throw new ArgumentOutOfRangeException(
                nameof(upper),
                upper,
                FormattableString.Invariant($"Upper end must be above the lower end {lower}; was {upper}.")
            )
            : DisplayText.WithInterval(
                Finite(value, "Value", nameof(value)),
                Finite(lower, "Lower end", nameof(lower)),
                Finite(upper, "Upper end", nameof(upper)),
                confidence,
                Scales(unit),
                form
            );

    /// <summary>Value and ends apart, as <see cref="WithInterval"/> shows them; the upper end is above the lower.</summary>
    internal static (string Value, string Lower, string Upper) Interval(
        double value,
        double lower,
        double upper,
        string unit,
        TextForm form
    ) =>
        DisplayText.Interval(
            Finite(value, "Value", nameof(value)),
            Finite(lower, "Lower end", nameof(lower)),
            Finite(upper, "Upper end", nameof(upper)),
            Scales(unit),
            form
        );

    private static DecimalNumber Finite(double value, string what, string name) =>
        DecimalNumber.Of(Si.Finite(value, what, name));

    private static ImmutableArray<DisplayScale> Scales(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return [new DisplayScale(unit, unit, 0)];
    }
}
