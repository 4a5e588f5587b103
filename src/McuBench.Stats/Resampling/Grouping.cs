namespace McuBench.Stats.Resampling;

/// <summary>The places of values that share a label, label by label in order of first appearance.</summary>
internal static class Grouping
{
    internal static int[][] Of(ReadOnlySpan<int> labels)
    {
        var groups = new List<List<int>>();
        var known = new Dictionary<int, int>();
        for (int place = 0; place < labels.Length; place++)
        {
            if (!known.TryGetValue(labels[place], out int group))
            {
                group = groups.Count;
                known.Add(labels[place], group);
                groups.Add([]);
            }

            groups[group].Add(place);
        }

        return [.. groups.Select(group => group.ToArray())];
    }
}
