namespace CompareBoards.Charts;

/// <summary>Draws fewer marks where there are more trials than can be told apart, and loses no outlier by it.</summary>
public static class Thinning
{
    /// <summary>As many marks a chart may have: more make a picture of megabytes that shows no more.</summary>
    private const int MostMarks = 6000;

    /// <summary>What a caption has to say where marks were left out.</summary>
    public const string Words =
        " There are too many trials to draw them all: of each stretch of trials the shortest and the longest are drawn.";

    /// <summary>As many marks each of the rows of a chart may have.</summary>
    public static int MostInRow(int rows) => Math.Max(12, MostMarks / Math.Max(1, rows));

    /// <summary>The items in their order: all of them, or of each of equal stretches the smallest and the largest.</summary>
    /// <param name="items">The items.</param>
    /// <param name="value">What they are small or large by.</param>
    /// <param name="most">As many may stay: at least 2.</param>
    public static IReadOnlyList<T> Of<T>(IReadOnlyList<T> items, Func<T, double> value, int most)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(value);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 2);
        if (items.Count <= most)
        {
            return items;
        }

        var stretches = most / 2;
        var kept = new List<T>(most);
        for (var i = 0; i < stretches; i++)
        {
            var start = (int)((long)i * items.Count / stretches);
            var end = (int)((long)(i + 1) * items.Count / stretches);
            var places = Enumerable.Range(start, end - start).ToArray();
            var smallest = places.MinBy(place => value(items[place]));
            var largest = places.MaxBy(place => value(items[place]));
            kept.Add(items[Math.Min(smallest, largest)]);
            if (smallest != largest)
            {
                kept.Add(items[Math.Max(smallest, largest)]);
            }
        }

        return kept;
    }
}
