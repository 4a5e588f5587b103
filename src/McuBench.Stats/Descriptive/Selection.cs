namespace McuBench.Stats.Descriptive;

/// <summary>Finds order statistics without sorting (floyd-rivest-1975).</summary>
internal static class Selection
{
    // Up to here plain insertion sorting is faster than another partition.
    private const int Small = 24;

    // From here on a sample is taken first, to find pivots that lie close to the wanted rank.
    private const int Large = 600;

    /// <summary>
    /// Rearranges the values so that the one of the given rank stands at its sorted place, none above it before it and
    /// none below it after it. O(n) on average and O(n log n) at worst; allocates nothing.
    /// </summary>
    /// <param name="values">The values, none NaN; their order is lost.</param>
    /// <param name="rank">The rank, from 0 to count less 1.</param>
    /// <returns>The value of that rank.</returns>
    internal static double Nth(Span<double> values, int rank)
    {
        Narrow(values, rank, 2 * int.Log2(values.Length) + 8);
        return values[rank];
    }

    private static void Narrow(Span<double> values, int rank, int patience)
    {
        int left = 0;
        int right = values.Length - 1;
        while (right - left >= Small)
        {
            if (patience-- == 0)
            {
                // Data arranged against the pivots: sorting bounds the worst case.
                values[left..(right + 1)].Sort();
                return;
            }

            if (right - left >= Large)
            {
                MovePivotsNear(values, rank, left, right);
            }
            else
            {
                MedianOfThreeTo(values, rank, left, right);
            }

            (left, right) = Partition(values, rank, left, right);
        }

        // The ends have crossed where the rank fell between the parts, on a value equal to the pivot.
        if (left < right)
        {
            values[left..(right + 1)].Sort();
        }
    }

    /// <summary>Selects within a sample around the rank, so that the value at the rank is a pivot close to the wanted
    /// one; sizes as in the source.</summary>
    private static void MovePivotsNear(Span<double> values, int rank, int left, int right)
    {
        double n = right - left + 1;
        double i = rank - left + 1;
        double z = Math.Log(n);
        double s = 0.5 * Math.Exp(2 * z / 3);
        double sd = 0.5 * Math.Sqrt(z * s * (n - s) / n) * Math.Sign(i - n / 2);
        int from = Math.Clamp((int)(rank - i * s / n + sd), left, rank);
        int to = Math.Clamp((int)(rank + (n - i) * s / n + sd), rank, right);
        Span<double> sample = values[from..(to + 1)];
        Narrow(sample, rank - from, 2 * int.Log2(sample.Length) + 8);
    }

    private static void MedianOfThreeTo(Span<double> values, int rank, int left, int right)
    {
        int middle = left + (right - left) / 2;
        double a = values[left];
        double b = values[middle];
        double c = values[right];
        int median =
            a < b
                ? (
                    b < c ? middle
                    : a < c ? right
                    : left
                )
                : (
                    a < c ? left
                    : b < c ? right
                    : middle
                );
        (values[rank], values[median]) = (values[median], values[rank]);
    }

    /// <summary>Splits around the value at the rank and returns the part that still holds the rank.</summary>
    private static (int Left, int Right) Partition(Span<double> values, int rank, int left, int right)
    {
        double pivot = values[rank];
        int i = left;
        int j = right;
        while (i <= j)
        {
            while (values[i] < pivot)
            {
                i++;
            }

            while (values[j] > pivot)
            {
                j--;
            }

            if (i <= j)
            {
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }
        }

        // Between j and i stand only values equal to the pivot.
        return (j < rank ? i : left, i > rank ? j : right);
    }
}
