namespace McuBench.Stats.Resampling;

/// <summary>Values drawn within their stratum.</summary>
internal sealed class StratifiedScheme(int[][] strata) : ResamplingScheme("stratified")
{
    private readonly int _count = strata.Sum(stratum => stratum.Length);

    internal override void Accept(int count) =>
        Check.SameCount(_count, count, "Count of strata's labels", "value", "scheme");

    internal override int Draw(Span<int> places, int count, RandomStream random)
    {
        foreach (int[] stratum in strata)
        {
            // Each value's place stays in its stratum, so that a statistic may tell strata by place.
            foreach (int place in stratum)
            {
                places[place] = stratum[random.Index(stratum.Length)];
            }
        }

        return count;
    }

    internal override int[][][] JackknifeUnits(int count) =>
        [.. strata.Select(stratum => stratum.Select(place => new[] { place }).ToArray())];
}
