namespace McuBench.Stats.Descriptive;

/// <summary>Cuts off or pulls in a number of values at each end.</summary>
internal static class Trimming
{
    /// <summary>How many values a fraction of the count is, rounded down but for rounding of the product.</summary>
    internal static int CutOf(int count, double fraction)
    {
        if (!(fraction >= 0 && fraction < 0.5))
        {
            throw Check.OutOfRange(nameof(fraction), "Fraction at each end", "from 0 to below 0.5", fraction);
        }

        double cut = count * fraction;
        double whole = Math.Round(cut);
        // Half the count or more can't be cut, however close the fraction is to a half.
        int most = (count - 1) / 2;
        return Math.Min(most, (int)(Math.Abs(cut - whole) <= 1e-15 * whole ? whole : Math.Floor(cut)));
    }

    /// <summary>The values less a number of the least and of the greatest; their order is lost. O(n) on average.</summary>
    internal static Span<double> MiddleOf(Span<double> values, int cut)
    {
        if (cut == 0)
        {
            return values;
        }

        Selection.Nth(values, cut);
        Span<double> upper = values[cut..];
        int kept = values.Length - 2 * cut;
        Selection.Nth(upper, kept - 1);
        return upper[..kept];
    }

    /// <summary>Replaces a number of the least and of the greatest values by the nearest one left; their order is lost.
    /// O(n) on average.</summary>
    internal static void Winsorize(Span<double> values, int cut)
    {
        Span<double> middle = MiddleOf(values, cut);
        if (cut == 0)
        {
            return;
        }

        double least = middle[0];
        double greatest = middle[0];
        foreach (double value in middle)
        {
            least = Math.Min(least, value);
            greatest = Math.Max(greatest, value);
        }

        values[..cut].Fill(least);
        values[^cut..].Fill(greatest);
    }
}
