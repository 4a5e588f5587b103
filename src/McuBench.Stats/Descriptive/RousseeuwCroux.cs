namespace McuBench.Stats.Descriptive;

/// <summary>
/// The scales Sn and Qn of sorted values (rousseeuw-croux-1993) and their factors for normal populations.
/// </summary>
internal static class RousseeuwCroux
{
    private const double SnConsistency = 1.1926;

    /// <summary>1/(√2 Φ⁻¹(5/8)); the papers' 2.2219 is a misprint.</summary>
    private const double QnConsistency = 2.21914;

    /// <summary>The low median over i of the high median over j of |xᵢ − xⱼ|, j = i included. O(n).</summary>
    internal static double Sn(ReadOnlySpan<double> sorted, Span<double> scratch)
    {
        int n = sorted.Length;
        int size = n / 2 + 1;
        int start = 0;
        // The distance of the size-th nearest value is that to the far end of the best window of that many values around
        // it; as i moves up, so does the window.
        for (int i = 0; i < n; i++)
        {
            double distance = Reach(sorted, i, start, size);
            while (start + size < n && start < i)
            {
                double next = Reach(sorted, i, start + 1, size);
                if (next > distance)
                {
                    break;
                }

                distance = next;
                start++;
            }

            scratch[i] = distance;
        }

        return Selection.Nth(scratch[..n], (n + 1) / 2 - 1);
    }

    /// <summary>The k-th smallest |xᵢ − xⱼ| over i below j, k = C(⌊n/2⌋ + 1, 2). O(n log n).</summary>
    internal static double Qn(ReadOnlySpan<double> sorted)
    {
        long half = sorted.Length / 2 + 1;
        return new PairDifferences(sorted, sorted, PairRegion.AfterOwn).Select(half * (half - 1) / 2 - 1);
    }

    /// <summary>What Sn of a count of values is multiplied by (croux-rousseeuw-1992, section 3).</summary>
    internal static double SnFactor(int count, Consistency consistency) =>
        consistency switch
        {
            Consistency.None => 1,
            Consistency.Normal => SnConsistency,
            _ => SnConsistency * SnSmallSample(count),
        };

    /// <summary>What Qn of a count of values is multiplied by (the refined factors of robustbase-qn).</summary>
    internal static double QnFactor(int count, Consistency consistency) =>
        consistency switch
        {
            Consistency.None => 1,
            Consistency.Normal => QnConsistency,
            _ => QnConsistency * QnSmallSample(count),
        };

    private static double SnSmallSample(double n)
    {
        ReadOnlySpan<double> upToNine = [0.743, 1.851, 0.954, 1.351, 0.993, 1.198, 1.005, 1.131];
        return n switch
        {
            <= 9 => upToNine[(int)n - 2],
            _ => n % 2 == 1 ? n / (n - 0.9) : 1,
        };
    }

    private static double QnSmallSample(double n)
    {
        ReadOnlySpan<double> upToTwelve =
        [
            0.399356,
            0.99365,
            0.51321,
            0.84401,
            0.61220,
            0.85877,
            0.66993,
            0.87344,
            0.72014,
            0.88906,
            0.75743,
        ];
        return n switch
        {
            <= 12 => upToTwelve[(int)n - 2],
            _ when n % 2 == 1 => 1 / (1 + (1.60188 + (-2.1284 - 5.172 / n) / n) / n),
            _ => 1 / (1 + (3.67561 + (1.9654 + (6.987 - 77 / n) / n) / n) / n),
        };
    }

    private static double Reach(ReadOnlySpan<double> sorted, int i, int start, int size) =>
        Math.Max(sorted[i] - sorted[start], sorted[start + size - 1] - sorted[i]);
}
