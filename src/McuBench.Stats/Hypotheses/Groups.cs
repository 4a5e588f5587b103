using System.Globalization;

namespace McuBench.Stats.Hypotheses;

/// <summary>The checks that tests of several groups share.</summary>
internal static class Groups
{
    /// <summary>Refuses fewer than two groups, a missing one, and no more values than groups; returns the number of
    /// values.</summary>
    internal static int RefuseUnfit(ReadOnlySpan<Sample> groups, string name)
    {
        int count = Count(groups, 2, name);
        return count > groups.Length
            ? count
            : throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Count of values must be above the count of groups, {groups.Length}; was {count}."
                ),
                name
            );
    }

    /// <summary>Refuses too few groups and a missing one; returns the number of values.</summary>
    internal static int Count(ReadOnlySpan<Sample> groups, int minimum, string name)
    {
        if (groups.Length < minimum)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Count of groups must be at least {minimum}; was {groups.Length}."
                ),
                name
            );
        }

        int count = 0;
        for (int i = 0; i < groups.Length; i++)
        {
            if (groups[i] is null)
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"Group at index {i} must be given; was null."),
                    name
                );
            }

            count = checked(count + groups[i].Count);
        }

        return count;
    }
}
