namespace McuBench.Stats.Uncertainty;

/// <summary>The ends of coverage intervals among sorted draws (gum-s1-2008, 7.7).</summary>
internal static class CoverageEnds
{
    internal static (double Lower, double Upper) Of(
        CoverageKind kind,
        ReadOnlySpan<double> sorted,
        double confidence
    ) => kind == CoverageKind.Symmetric ? Symmetric(sorted, confidence) : Shortest(sorted, confidence);

    private static (double Lower, double Upper) Symmetric(ReadOnlySpan<double> sorted, double confidence)
    {
        int reach = Reach(sorted.Length, confidence);
        // The standard counts from 1: r = (M − q)/2, or (M − q + 1)/2 where that is no whole number.
        int first = Math.Max((sorted.Length - reach + 1) / 2, 1) - 1;
        return (sorted[first], sorted[first + reach]);
    }

    private static (double Lower, double Upper) Shortest(ReadOnlySpan<double> sorted, double confidence)
    {
        int reach = Reach(sorted.Length, confidence);
        int first = 0;
        for (int i = 1; i + reach < sorted.Length; i++)
        {
            if (sorted[i + reach] - sorted[i] < sorted[first + reach] - sorted[first])
            {
                first = i;
            }
        }

        return (sorted[first], sorted[first + reach]);
    }

    /// <summary>q, the nearest whole number to pM; no more than there are steps between the draws.</summary>
    private static int Reach(int count, double confidence) => Math.Min((int)((confidence * count) + 0.5), count - 1);
}
