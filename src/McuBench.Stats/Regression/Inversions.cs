namespace McuBench.Stats.Regression;

/// <summary>The pairs that stand in one order in one arrangement of points and in the other in another. O(n log n).</summary>
internal static class Inversions
{
    /// <summary>How many there are.</summary>
    internal static long Count(ReadOnlySpan<int> before, ReadOnlySpan<int> after)
    {
        int[] places = PlacesOf(before, after);
        return Merge(places, new int[places.Length], 0, [], []);
    }

    /// <summary>For each point how many of the pairs hold it.</summary>
    internal static int[] CountEach(ReadOnlySpan<int> before, ReadOnlySpan<int> after)
    {
        int[] places = PlacesOf(before, after);
        int[] held = new int[places.Length];
        MergeEach(places, new int[places.Length], held);
        int[] counts = new int[places.Length];
        for (int place = 0; place < held.Length; place++)
        {
            counts[after[place]] = held[place];
        }

        return counts;
    }

    /// <summary>The pairs of the given numbers in their list.</summary>
    /// <param name="before">The points in one order.</param>
    /// <param name="after">The points in the other.</param>
    /// <param name="numbers">The wanted numbers, ascending, each from 0 to below the count.</param>
    /// <param name="pairs">Where the pairs go, one for each number.</param>
    internal static void Find(
        ReadOnlySpan<int> before,
        ReadOnlySpan<int> after,
        ReadOnlySpan<long> numbers,
        Span<(int First, int Second)> pairs
    )
    {
        int[] places = PlacesOf(before, after);
        Merge(places, new int[places.Length], 0, numbers, pairs);
        foreach (ref (int First, int Second) pair in pairs)
        {
            pair = (after[pair.First], after[pair.Second]);
        }
    }

    private static int[] PlacesOf(ReadOnlySpan<int> before, ReadOnlySpan<int> after)
    {
        int[] placeOf = new int[after.Length];
        for (int place = 0; place < after.Length; place++)
        {
            placeOf[after[place]] = place;
        }

        int[] places = new int[before.Length];
        for (int i = 0; i < before.Length; i++)
        {
            places[i] = placeOf[before[i]];
        }

        return places;
    }

    /// <summary>Sorts by merging and counts the pairs out of order, from a number on; pairs whose number is wanted are
    /// written down on the way.</summary>
    private static long Merge(
        Span<int> values,
        Span<int> scratch,
        long number,
        ReadOnlySpan<long> wanted,
        Span<(int, int)> pairs
    )
    {
        if (values.Length < 2)
        {
            return number;
        }

        int half = values.Length / 2;
        long middle = Merge(values[..half], scratch[..half], number, wanted, pairs);
        int left = NumberBelow(wanted, middle);
        long end = Merge(values[half..], scratch[half..], middle, wanted[left..], pairs[left..]);
        int done = left + NumberBelow(wanted[left..], end);
        values.CopyTo(scratch);
        int i = 0;
        int j = half;
        for (int k = 0; k < values.Length; k++)
        {
            if (j == values.Length || (i < half && scratch[i] < scratch[j]))
            {
                values[k] = scratch[i++];
                continue;
            }

            // All that is left of the first half stands above this one.
            while (done < wanted.Length && wanted[done] < end + half - i)
            {
                pairs[done] = (scratch[i + (int)(wanted[done] - end)], scratch[j]);
                done++;
            }

            end += half - i;
            values[k] = scratch[j++];
        }

        return end;
    }

    private static void MergeEach(Span<int> values, Span<int> scratch, int[] held)
    {
        if (values.Length < 2)
        {
            return;
        }

        int half = values.Length / 2;
        MergeEach(values[..half], scratch[..half], held);
        MergeEach(values[half..], scratch[half..], held);
        values.CopyTo(scratch);
        int i = 0;
        int j = half;
        for (int k = 0; k < values.Length; k++)
        {
            if (j == values.Length || (i < half && scratch[i] < scratch[j]))
            {
                held[scratch[i]] += j - half;
                values[k] = scratch[i++];
            }
            else
            {
                held[scratch[j]] += half - i;
                values[k] = scratch[j++];
            }
        }
    }

    private static int NumberBelow(ReadOnlySpan<long> ascending, long limit)
    {
        int place = ascending.BinarySearch(limit);
        return place < 0 ? ~place : place;
    }
}
