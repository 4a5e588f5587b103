using System.Runtime.InteropServices;

namespace McuBench.Stats.Descriptive;

/// <summary>
/// Where a quantile stands among sorted values: <paramref name="Fraction"/> of the way from the value at
/// <paramref name="Index"/> (from 0) to the next one.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct QuantilePosition(int Index, double Fraction)
{
    // Count times probability is a whole number far more often than its rounded product is: 100 * 0.07 is not 7.
    private const double Fuzz = 4 * 2.220446049250313e-16;

    /// <summary>The position of the quantile of a probability in a count of values, both already checked
    /// (hyndman-fan-1996, sections 2 and 3).</summary>
    internal static QuantilePosition Of(int count, double probability, QuantileDefinition definition)
    {
        // Rank j + g, counted from 1, as the paper's nop + m.
        double rank = definition switch
        {
            QuantileDefinition.HyndmanFan1 or QuantileDefinition.HyndmanFan2 or QuantileDefinition.HyndmanFan4 => count
                * probability,
            QuantileDefinition.HyndmanFan3 => count * probability - 0.5,
            QuantileDefinition.HyndmanFan5 => count * probability + 0.5,
            QuantileDefinition.HyndmanFan6 => (count + 1.0) * probability,
            QuantileDefinition.HyndmanFan7 => (count - 1.0) * probability + 1,
            QuantileDefinition.HyndmanFan8 => (count + 1.0 / 3) * probability + 1.0 / 3,
            _ => (count + 0.25) * probability + 0.375,
        };
        double whole = Math.Round(rank);
        if (Math.Abs(rank - whole) <= Fuzz * Math.Max(1, Math.Abs(whole)))
        {
            rank = whole;
        }

        double j = Math.Floor(rank);
        double g = rank - j;
        double fraction = definition switch
        {
            QuantileDefinition.HyndmanFan1 => g > 0 ? 1 : 0,
            QuantileDefinition.HyndmanFan2 => g > 0 ? 1 : 0.5,
            QuantileDefinition.HyndmanFan3 => g > 0 || j % 2 != 0 ? 1 : 0,
            _ => g,
        };
        if (j < 1)
        {
            return new QuantilePosition(0, 0);
        }

        return j >= count ? new QuantilePosition(count - 1, 0) : new QuantilePosition((int)j - 1, fraction);
    }

    /// <summary>The value at the position between two neighbours, never outside them.</summary>
    internal double Between(double lower, double upper)
    {
        if (Fraction == 0 || lower == upper)
        {
            return lower;
        }

        double step = upper - lower;
        double value = double.IsFinite(step) ? lower + Fraction * step : (1 - Fraction) * lower + Fraction * upper;
        return Math.Clamp(value, lower, upper);
    }
}
