using System.Collections.Immutable;

namespace McuBench.Stats.Hypotheses;

/// <summary>Several tests at once.</summary>
public static class MultipleComparisons
{
    /// <summary>Adjusts p-values for their number, so that each can be held against the one level that all of them
    /// together shall keep. O(n log n).</summary>
    /// <remarks>Adjusted values keep the order of the given ones and are never below them; equal ones stay equal.</remarks>
    /// <param name="pValues">At least one p-value, each from 0 to 1.</param>
    /// <param name="method">How; <see cref="AdjustmentMethod.Holm"/> needs no condition.</param>
    /// <exception cref="ArgumentException">There is no p-value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A p-value lies outside [0, 1] or is NaN, or the method is not a named
    /// one.</exception>
    public static AdjustedPValues Adjust(ReadOnlySpan<double> pValues, AdjustmentMethod method = AdjustmentMethod.Holm)
    {
        Check.Named(method);
        Check.AtLeast(pValues.Length, 1, nameof(pValues));
        foreach (double pValue in pValues)
        {
            Check.Probability(pValue, nameof(pValues));
        }

        int n = pValues.Length;
        double[] sorted = pValues.ToArray();
        int[] order = new int[n];
        for (int i = 0; i < n; i++)
        {
            order[i] = i;
        }

        sorted.AsSpan().Sort(order.AsSpan());
        for (int i = 0; i < n; i++)
        {
            sorted[i] *= method switch
            {
                AdjustmentMethod.Bonferroni => n,
                AdjustmentMethod.BenjaminiHochberg => n / (i + 1.0),
                _ => n - i,
            };
        }

        MakeMonotone(sorted, method);
        double[] adjusted = new double[n];
        for (int i = 0; i < n; i++)
        {
            adjusted[order[i]] = Math.Min(1, sorted[i]);
        }

        return new AdjustedPValues(ImmutableArray.Create(adjusted), method);
    }

    // A test that steps down stops at the first that isn't rejected, one that steps up rejects all below the last.
    private static void MakeMonotone(Span<double> sorted, AdjustmentMethod method)
    {
        if (method is AdjustmentMethod.Holm)
        {
            for (int i = 1; i < sorted.Length; i++)
            {
                sorted[i] = Math.Max(sorted[i - 1], sorted[i]);
            }
        }
        else
        {
            for (int i = sorted.Length - 2; i >= 0; i--)
            {
                sorted[i] = Math.Min(sorted[i], sorted[i + 1]);
            }
        }
    }
}
