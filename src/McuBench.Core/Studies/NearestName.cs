namespace McuBench.Core.Studies;

/// <summary>Finds the known name that a misspelt one was probably meant to be.</summary>
internal static class NearestName
{
    private const int LongestCompared = 64;

    /// <summary>The known name fewest single-letter changes away, case aside, if that is no more than a third of its
    /// letters; null otherwise. O(n·m²) in the count and length of names; longer ones than 64 characters are passed over.</summary>
    public static string? Of(string name, IEnumerable<string> known)
    {
        if (name.Length > LongestCompared)
        {
            return null;
        }

        string? nearest = null;
        var least = int.MaxValue;
        foreach (var candidate in known)
        {
            if (candidate.Length > LongestCompared)
            {
                continue;
            }

            var distance = Distance(name.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (distance < least && distance <= Math.Max(1, candidate.Length / 3))
            {
                (nearest, least) = (candidate, distance);
            }
        }

        return nearest;
    }

    /// <summary>"Did you mean …?", or the known names where none is near.</summary>
    public static string Mend(string name, IReadOnlyCollection<string> known, string what)
    {
        const int most = 12;
        if (Of(name, known) is { } nearest)
        {
            return $"Did you mean {Quantities.Excerpt.Quoted(nearest)}?";
        }

        return known.Count switch
        {
            0 => $"There are no {what}.",
            <= most => $"The {what} are {string.Join(", ", known.Select(one => Quantities.Excerpt.Of(one)))}.",
            _ => FormattableString.Invariant($"It is none of the {known.Count} {what}."),
        };
    }

    // Changes, insertions and deletions of one letter, and swaps of two neighbours.
    private static int Distance(string a, string b)
    {
        var beforeLast = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var current = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                current[j] = Math.Min(change, Math.Min(last[j], current[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    current[j] = Math.Min(current[j], beforeLast[j - 2] + 1);
                }
            }

            (beforeLast, last, current) = (last, current, beforeLast);
        }

        return last[b.Length];
    }
}
