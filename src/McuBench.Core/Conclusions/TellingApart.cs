namespace McuBench.Core.Conclusions;

/// <summary>Finds the largest sets of things no two of which are told apart.</summary>
internal static class TellingApart
{
    /// <summary>The sets in order of their members, or null where there are more than allowed. The worst case is
    /// exponential in the things (3^(n/3) sets, moon-moser-1965); the limit bounds the work.</summary>
    /// <remarks>Maximal cliques after bron-kerbosch-1973 with a pivot.</remarks>
    /// <param name="count">How many things, numbered from 0.</param>
    /// <param name="areToldApart">Whether two of them are; symmetric.</param>
    /// <param name="most">The most sets.</param>
    public static IReadOnlyList<IReadOnlyList<int>>? Groups(int count, Func<int, int, bool> areToldApart, int most)
    {
        var together = new bool[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                together[i, j] = i != j && !areToldApart(i, j);
            }
        }

        var found = new List<int[]>();
        return Extend([], [.. Enumerable.Range(0, count)], [])
            ? [.. found.OrderBy(g => g, Comparer<int[]>.Create(InOrder))]
            : null;

        // False as soon as there are too many.
        bool Extend(List<int> members, List<int> candidates, List<int> done)
        {
            if (candidates.Count == 0)
            {
                if (done.Count == 0 && members.Count > 0)
                {
                    found.Add([.. members.Order()]);
                }

                return found.Count <= most;
            }

            var pivot = candidates.Concat(done).MaxBy(p => candidates.Count(c => together[p, c]));
            foreach (var next in candidates.Where(c => !together[pivot, c]).ToArray())
            {
                var isFew = Extend(
                    [.. members, next],
                    [.. candidates.Where(c => together[next, c])],
                    [.. done.Where(d => together[next, d])]
                );
                if (!isFew)
                {
                    return false;
                }

                candidates.Remove(next);
                done.Add(next);
            }

            return true;
        }
    }

    private static int InOrder(int[] one, int[] other)
    {
        for (var i = 0; i < Math.Min(one.Length, other.Length); i++)
        {
            if (one[i] != other[i])
            {
                return one[i].CompareTo(other[i]);
            }
        }

        return one.Length.CompareTo(other.Length);
    }
}
