namespace McuBench.Stats.Resampling;

/// <summary>Specimens drawn, then sessions within, then values within.</summary>
internal sealed class NestedScheme : ResamplingScheme
{
    // Places by specimen and session.
    private readonly int[][][] _specimens;
    private readonly int _count;

    private NestedScheme(int[][][] specimens)
        : base("nested")
    {
        _specimens = specimens;
        _count = specimens.Sum(sessions => sessions.Sum(session => session.Length));
    }

    internal static NestedScheme Of(ReadOnlySpan<int> specimens, ReadOnlySpan<int> sessions)
    {
        int[][] groups = Grouping.Of(specimens);
        if (groups.Length < 2)
        {
            throw new ArgumentException(
                "Count of specimens must be at least 2; was 1, which says nothing of how specimens differ.",
                nameof(specimens)
            );
        }

        int[][][] nested = new int[groups.Length][][];
        for (int i = 0; i < groups.Length; i++)
        {
            int[] labels = new int[groups[i].Length];
            for (int k = 0; k < labels.Length; k++)
            {
                labels[k] = sessions[groups[i][k]];
            }

            int[] places = groups[i];
            nested[i] = [.. Grouping.Of(labels).Select(session => session.Select(k => places[k]).ToArray())];
        }

        return new NestedScheme(nested);
    }

    internal override void Accept(int count) =>
        Check.SameCount(_count, count, "Count of specimens' labels", "value", "scheme");

    internal override int Capacity(int count) =>
        checked(
            _specimens.Length * _specimens.Max(sessions => sessions.Length * sessions.Max(session => session.Length))
        );

    internal override int Draw(Span<int> places, int count, RandomStream random)
    {
        int filled = 0;
        for (int i = 0; i < _specimens.Length; i++)
        {
            int[][] specimen = _specimens[random.Index(_specimens.Length)];
            for (int j = 0; j < specimen.Length; j++)
            {
                int[] session = specimen[random.Index(specimen.Length)];
                for (int k = 0; k < session.Length; k++)
                {
                    places[filled++] = session[random.Index(session.Length)];
                }
            }
        }

        return filled;
    }

    internal override int[][][] JackknifeUnits(int count) =>
        [
            [.. _specimens.Select(specimen => specimen.SelectMany(session => session).ToArray())],
        ];
}
