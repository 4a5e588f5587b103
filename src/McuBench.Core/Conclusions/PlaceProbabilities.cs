using McuBench.Stats.Resampling;

namespace McuBench.Core.Conclusions;

/// <summary>With what probability each of several uncertain numbers takes each place, by Monte Carlo after JCGM 101.</summary>
/// <remarks>
/// Every source is drawn once a round and moves all numbers that share it, on logarithms as ratios do: from Student's t
/// at its degrees of freedom where it was estimated (gum-s1-2008, 6.4.9), evenly within its limits where it is a
/// tolerance, an accuracy or a step (6.4.2).
/// </remarks>
internal static class PlaceProbabilities
{
    /// <summary>So many that a probability is off by 0.5 % at most, at one standard error.</summary>
    public const int Rounds = 10_000;

    private static readonly double HalfWidth = Math.Sqrt(3);

    /// <summary>The probability of each place, by number and place. O(rounds · (sources + n log n)).</summary>
    /// <param name="values">The numbers, each above zero.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="stream">Which of the seed's streams.</param>
    public static double[][] Of(IReadOnlyList<UncertainValue> values, ulong seed, ulong stream)
    {
        var sources = values
            .SelectMany(v => v.Contributions.Select(c => c.Source))
            .DistinctBy(s => s.Key, StringComparer.Ordinal)
            .OrderBy(s => s.Key, StringComparer.Ordinal)
            .ToArray();
        var number = sources.Select((s, i) => (s.Key, i)).ToDictionary(p => p.Key, p => p.i, StringComparer.Ordinal);
        var moves = values
            .Select(v => v.Contributions.Select(c => (Source: number[c.Source.Key], By: c.Amount / v.Value)).ToArray())
            .ToArray();
        double[] centres = [.. values.Select(v => Math.Log(v.Value))];

        var random = RandomStream.Of(seed, stream);
        var counts = values.Select(_ => new int[values.Count]).ToArray();
        var drawn = new double[sources.Length];
        var keys = new double[values.Count];
        var order = new int[values.Count];
        for (var round = 0; round < Rounds; round++)
        {
            for (var s = 0; s < drawn.Length; s++)
            {
                drawn[s] = double.IsInfinity(sources[s].DegreesOfFreedom)
                    ? random.Rectangular(-HalfWidth, HalfWidth)
                    : random.StudentT(sources[s].DegreesOfFreedom);
            }

            for (var i = 0; i < keys.Length; i++)
            {
                var key = centres[i];
                foreach (var (source, by) in moves[i])
                {
                    key += by * drawn[source];
                }

                keys[i] = key;
                order[i] = i;
            }

            keys.AsSpan().Sort(order.AsSpan());
            for (var place = 0; place < order.Length; place++)
            {
                counts[order[place]][place]++;
            }
        }

        return [.. counts.Select(c => c.Select(n => (double)n / Rounds).ToArray())];
    }
}
