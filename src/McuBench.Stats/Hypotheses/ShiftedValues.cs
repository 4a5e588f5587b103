namespace McuBench.Stats.Hypotheses;

/// <summary>Values as distances from their median: what depends on deviations alone loses no digit to an offset, to a gross
/// outlier or to an extreme unit.</summary>
internal static class ShiftedValues
{
    /// <summary>Each value less the upper median, in the order given, times the power of two that brings the largest
    /// distance between 1 and 2; all 0 where all values are equal. O(n log n) for a sample not sorted yet.</summary>
    internal static double[] Of(Sample sample)
    {
        ReadOnlySpan<double> sorted = sample.Sorted;
        // A quarter, so that the difference of two values near the ends of the range is one that a double holds.
        double quarter = Math.Max(-sorted[0], sorted[^1]) > double.MaxValue / 4 ? 0.25 : 1;
        double origin = sorted[sorted.Length / 2] * quarter;
        double largest = Math.Max(origin - sorted[0] * quarter, sorted[^1] * quarter - origin);
        double[] shifted = new double[sample.Count];
        if (largest == 0)
        {
            return shifted;
        }

        int exponent = -Math.ILogB(largest);
        for (int i = 0; i < shifted.Length; i++)
        {
            shifted[i] = Math.ScaleB(sample.Values[i] * quarter - origin, exponent);
        }

        return shifted;
    }
}
