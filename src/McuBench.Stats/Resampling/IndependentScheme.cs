namespace McuBench.Stats.Resampling;

/// <summary>Values drawn one by one.</summary>
internal sealed class IndependentScheme() : ResamplingScheme("independent")
{
    internal override void Accept(int count) { }

    internal override int Draw(Span<int> places, int count, RandomStream random)
    {
        for (int i = 0; i < count; i++)
        {
            places[i] = random.Index(count);
        }

        return count;
    }

    internal override int[][][] JackknifeUnits(int count) =>
        [
            [.. Enumerable.Range(0, count).Select(place => new[] { place })],
        ];
}
