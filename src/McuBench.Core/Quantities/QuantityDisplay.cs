using System.Collections.Immutable;
using UnitsNet;

namespace McuBench.Core.Quantities;

/// <summary>Quantities for readers: rounded as their uncertainty allows, value and ends under one prefix.</summary>
/// <remarks>
/// <para>
/// An uncertainty is given to two significant digits and the value to the same place (JCGM 100:2008, 7.2.6; <c>gum-rounding</c>); an interval
/// to the place that two digits of its half width reach. Rounding is to nearest, ties to even, on the shortest decimal
/// that identifies the SI double. The prefix leaves one to three digits before the point of the largest number, and is
/// the next larger one where digits without meaning would stand before the point: 0.41 s ± 0.12 s, not 410 ms ± 120 ms.
/// Beyond the prefixes the rules of <see cref="QuantityText.Format{TQuantity}(TQuantity)"/> hold. Temperatures are shown in degrees
/// Celsius.
/// </para>
/// <para>
/// These texts are for reading, not for storing: <see cref="QuantityText.Format{TQuantity}(TQuantity)"/> loses nothing. Plain
/// numbers have <see cref="NumberDisplay"/>.
/// </para>
/// </remarks>
public static class QuantityDisplay
{
    private static readonly DecimalNumber MinusZeroCelsius = Si.ZeroCelsius with { IsNegative = true };

    private static readonly ImmutableArray<DisplayScale> Celsius = [new DisplayScale("degC", "\u00B0C", 0)];

    /// <summary>The quantity to so many significant digits: "4.70 s".</summary>
    /// <typeparam name="TQuantity">One of the quantities that <see cref="QuantityText"/> reads.</typeparam>
    /// <param name="value">The quantity.</param>
    /// <param name="significantDigits">The digits to show, 1 to 17.</param>
    /// <param name="form">ASCII or typographic.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count of digits is outside 1 to 17.</exception>
    /// <exception cref="NotSupportedException">The quantity is none of those.</exception>
    public static string Rounded<TQuantity>(
        TQuantity value,
        int significantDigits,
        TextForm form = TextForm.Typographic
    )
        where TQuantity : struct, IQuantity =>
        DisplayText.Rounded(Shown(value, nameof(value)), significantDigits, Scales<TQuantity>(), form);

    /// <summary>The quantity with its expanded uncertainty: "4.704 s ± 0.064 s".</summary>
    /// <typeparam name="TQuantity">One of the quantities that <see cref="QuantityText"/> reads.</typeparam>
    /// <param name="value">The quantity.</param>
    /// <param name="expandedUncertainty">The expanded uncertainty, above zero; of a temperature, in kelvins.</param>
    /// <param name="form">ASCII or typographic.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is not above zero: where it is not known, no text
    /// may claim that it is zero.</exception>
    /// <exception cref="NotSupportedException">The quantity is none of those.</exception>
    public static string WithUncertainty<TQuantity>(
        TQuantity value,
        TQuantity expandedUncertainty,
        TextForm form = TextForm.Typographic
    )
        where TQuantity : struct, IQuantity
    {
        // A difference of temperatures has no ice point to move.
        var uncertainty = QuantityNotation.For<TQuantity>().ToSi(expandedUncertainty, nameof(expandedUncertainty));
        return uncertainty > 0
            ? DisplayText.WithUncertainty(
                Shown(value, nameof(value)),
                DecimalNumber.Of(uncertainty),
                Scales<TQuantity>(),
                form
            )
            : throw new ArgumentOutOfRangeException(
                nameof(expandedUncertainty),
                $"Expanded uncertainty must be above zero; was {QuantityText.Format(expandedUncertainty)}."
            );
    }

    /// <summary>The quantity with an interval: "412.10 ms (95 % interval 411.86 ms to 412.37 ms)".</summary>
    /// <typeparam name="TQuantity">One of the quantities that <see cref="QuantityText"/> reads.</typeparam>
    /// <param name="value">The quantity; it may lie outside of the interval.</param>
    /// <param name="lower">The lower end.</param>
    /// <param name="upper">The upper end, above the lower one.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="form">ASCII or typographic.</param>
    /// <exception cref="ArgumentOutOfRangeException">The upper end is not above the lower one, or the confidence lies
    /// outside (0, 1).</exception>
    /// <exception cref="NotSupportedException">The quantity is none of those.</exception>
    public static string WithInterval<TQuantity>(
        TQuantity value,
        TQuantity lower,
        TQuantity upper,
        double confidence,
        TextForm form = TextForm.Typographic
    )
        where TQuantity : struct, IQuantity
    {
        var notation = QuantityNotation.For<TQuantity>();
        return notation.ToSi(upper, nameof(upper)) > notation.ToSi(lower, nameof(lower))
            ? DisplayText.WithInterval(
                Shown(value, nameof(value)),
                Shown(lower, nameof(lower)),
                Shown(upper, nameof(upper)),
                confidence,
                Scales<TQuantity>(),
                form
            )
            : throw new ArgumentOutOfRangeException(
                nameof(upper),
                $"Upper end must be above the lower end {QuantityText.Format(lower)}; was {QuantityText.Format(upper)}."
            );
    }

    /// <summary>Value and ends apart, as <see cref="WithInterval{TQuantity}"/> shows them; the upper end is above the lower.</summary>
    internal static (string Value, string Lower, string Upper) Interval<TQuantity>(
        TQuantity value,
        TQuantity lower,
        TQuantity upper,
        TextForm form
    )
        where TQuantity : struct, IQuantity =>
        DisplayText.Interval(
            Shown(value, nameof(value)),
            Shown(lower, nameof(lower)),
            Shown(upper, nameof(upper)),
            Scales<TQuantity>(),
            form
        );

    private static DecimalNumber Shown<TQuantity>(TQuantity value, string name)
        where TQuantity : struct, IQuantity
    {
        var notation = QuantityNotation.For<TQuantity>();
        var si = DecimalNumber.Of(notation.ToSi(value, name));
        return notation.Kind == QuantityKind.Temperature ? si.Plus(MinusZeroCelsius) : si;
    }

    private static ImmutableArray<DisplayScale> Scales<TQuantity>()
        where TQuantity : struct, IQuantity
    {
        var kind = QuantityNotation.For<TQuantity>().Kind;
        return kind == QuantityKind.Temperature ? Celsius : kind.Scales;
    }
}
