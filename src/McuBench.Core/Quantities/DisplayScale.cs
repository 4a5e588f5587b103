using System.Collections.Immutable;
using System.Globalization;

namespace McuBench.Core.Quantities;

/// <summary>A unit, and where no prefix reaches an exponent, in which numbers are written.</summary>
/// <param name="Symbol">The unit in ASCII; empty for plain numbers.</param>
/// <param name="PrintSymbol">The unit as print has it.</param>
/// <param name="PowerOfTen">The unit's size in the SI unit.</param>
internal sealed record DisplayScale(string Symbol, string PrintSymbol, int PowerOfTen)
{
    /// <summary>Plain digits go on for so many places beyond the largest and the smallest unit.</summary>
    private const int PlacesBeyondPrefixes = 3;

    private int Exponent { get; init; }

    /// <summary>The power of ten of the leading digit from which on numbers are written in this scale.</summary>
    public int ShownFrom { get; init; } = PowerOfTen;

    /// <summary>
    /// The scale for numbers up to a size: the largest of the units that leaves a digit before the point.
    /// </summary>
    /// <param name="size">The largest of the numbers that are to be written in the same scale.</param>
    /// <param name="scales">The units, largest first.</param>
    /// <param name="place">The power of ten of the last significant digit: where it would be followed by zeros without
    /// meaning before the point, the next larger unit is taken.</param>
    public static DisplayScale For(DecimalNumber size, ImmutableArray<DisplayScale> scales, int place = int.MinValue)
    {
        var si = scales.FirstOrDefault(scale => scale.PowerOfTen == 0, scales[0]);
        if (size.IsZero)
        {
            return si;
        }

        var leading = size.LeadingPower;
        var beyondLargest = leading >= scales[0].PowerOfTen + (2 * PlacesBeyondPrefixes);
        var beyondSmallest = leading < scales[^1].PowerOfTen - PlacesBeyondPrefixes;
        if (beyondLargest || beyondSmallest)
        {
            return si with { Exponent = leading - si.PowerOfTen };
        }

        for (var i = 0; i < scales.Length; i++)
        {
            if (scales[i].ShownFrom <= leading)
            {
                return i > 0 && place > scales[i].PowerOfTen ? scales[i - 1] : scales[i];
            }
        }

        return scales[^1];
    }

    /// <summary>An SI number in this scale, with the unit.</summary>
    public string Write(DecimalNumber si, TextForm form)
    {
        var number = si.Scaled(1, -(PowerOfTen + Exponent)).ToPositional();
        var exponent = Exponent == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"e{Exponent}");
        var unit = form == TextForm.Ascii ? Symbol : PrintSymbol;
        var space = unit.Length == 0 ? "" : DisplayText.UnitSpace(form);
        return $"{DisplayText.Signed(number + exponent, form)}{space}{unit}";
    }
}
