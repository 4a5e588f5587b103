using System.Collections.Immutable;

namespace McuBench.Core.Quantities;

/// <summary>Writes numbers for readers: rounded, with their uncertainty or their interval, in one scale.</summary>
internal static class DisplayText
{
    /// <summary>JCGM 100:2008, 7.2.6 (<c>gum-rounding</c>): two significant digits suffice for an uncertainty.</summary>
    private const int DigitsOfUncertainty = 2;

    public const int MostDigits = 17;

    public static string Rounded(
        DecimalNumber value,
        int significantDigits,
        ImmutableArray<DisplayScale> scales,
        TextForm form
    )
    {
        if (significantDigits is < 1 or > MostDigits)
        {
            throw new ArgumentOutOfRangeException(
                nameof(significantDigits),
                significantDigits,
                $"Number of significant digits must be 1 to {MostDigits}; was {significantDigits}."
            );
        }

        var rounded = value.IsZero ? value.Absolute().Trimmed() : value.RoundedToDigits(significantDigits);
        return DisplayScale.For(rounded, scales, rounded.PowerOfTen).Write(rounded, form);
    }

    public static string WithUncertainty(
        DecimalNumber value,
        DecimalNumber uncertainty,
        ImmutableArray<DisplayScale> scales,
        TextForm form
    )
    {
        var roundedUncertainty = uncertainty.RoundedToDigits(DigitsOfUncertainty);
        var rounded = value.RoundedTo(roundedUncertainty.PowerOfTen);
        var scale = Shared(scales, rounded, roundedUncertainty);
        var sign = form == TextForm.Ascii ? "+/-" : "\u00B1";
        return $"{scale.Write(rounded, form)} {sign} {scale.Write(roundedUncertainty, form)}";
    }

    public static string WithInterval(
        DecimalNumber value,
        DecimalNumber lower,
        DecimalNumber upper,
        double confidence,
        ImmutableArray<DisplayScale> scales,
        TextForm form
    )
    {
        if (!(confidence > 0 && confidence < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence),
                confidence,
                FormattableString.Invariant($"Confidence must be above 0 and below 1; was {confidence}.")
            );
        }

        var shown = Interval(value, lower, upper, scales, form);
        var percent = DecimalNumber.Of(confidence).Scaled(1, 2).Trimmed().ToPositional();
        return $"{shown.Value} ({percent}{UnitSpace(form)}% interval {shown.Lower} to {shown.Upper})";
    }

    /// <summary>Value and ends in one scale, rounded to the place that two digits of half the interval's width reach.</summary>
    public static (string Value, string Lower, string Upper) Interval(
        DecimalNumber value,
        DecimalNumber lower,
        DecimalNumber upper,
        ImmutableArray<DisplayScale> scales,
        TextForm form
    )
    {
        // Half the width is what an uncertainty would be; five tenths of the width is exact in decimals.
        var halfWidth = upper.Plus(lower with { IsNegative = !lower.IsNegative }).Scaled(5, -1);
        var place = halfWidth.RoundedToDigits(DigitsOfUncertainty).PowerOfTen;
        var (middle, low, high) = (value.RoundedTo(place), lower.RoundedTo(place), upper.RoundedTo(place));
        var scale = Shared(scales, middle, low, high);
        return (scale.Write(middle, form), scale.Write(low, form), scale.Write(high, form));
    }

    /// <summary>What stands between a number and its unit.</summary>
    public static string UnitSpace(TextForm form) => form == TextForm.Typographic ? "\u202F" : " ";

    /// <summary>The number with the minus of the form.</summary>
    public static string Signed(string number, TextForm form) =>
        form == TextForm.Typographic ? number.Replace('-', '\u2212') : number;

    /// <summary>The scale of the largest of some numbers that are rounded to the same place.</summary>
    private static DisplayScale Shared(ImmutableArray<DisplayScale> scales, params ReadOnlySpan<DecimalNumber> numbers)
    {
        var largest = numbers[0].Absolute();
        foreach (var number in numbers)
        {
            largest = number.Magnitude > largest.Magnitude ? number.Absolute() : largest;
        }

        return DisplayScale.For(largest, scales, largest.PowerOfTen);
    }
}
