using System.Runtime.InteropServices;
using McuBench.Stats;
using McuBench.Stats.Resampling;

namespace McuBench.Benchmarks.Ratios;

/// <summary>The data that every side computes with: invented, drawn from a seed, written as files for the others.</summary>
internal sealed class RatioData
{
    private const ulong Seed = 2026;

    /// <summary>A million values about 100, one in twenty from a distribution ten times as wide.</summary>
    internal double[] Million { get; } = Draw(1, 1_000_000, (random, _) => 100 + 4 * Heavy(random));

    /// <summary>3,000 values of the same kind.</summary>
    internal double[] X { get; } = Draw(2, 3000, (random, _) => 100 + 4 * Heavy(random));

    /// <summary>3,000 values of the same kind, one unit above.</summary>
    internal double[] Y { get; } = Draw(3, 3000, (random, _) => 101 + 4 * Heavy(random));

    /// <summary>Abscissas 0, 1/64, 2/64 …</summary>
    internal double[] T { get; } = Draw(4, 3000, (_, i) => i / 64.0);

    /// <summary>Ordinates about a line of slope 1/2.</summary>
    internal double[] Line { get; } = Draw(5, 3000, (random, i) => 3 + i / 128.0 + Heavy(random));

    /// <summary>1,000 trials: 10 specimens of 10 sessions of 10 trials, in that order.</summary>
    internal double[] Nested { get; } = DrawNested();

    /// <summary>Writes all of them as little-endian doubles.</summary>
    internal void Write(string folder)
    {
        foreach (
            var (name, values) in new[]
            {
                ("million", Million),
                ("x", X),
                ("y", Y),
                ("t", T),
                ("line", Line),
                ("nested", Nested),
            }
        )
        {
            File.WriteAllBytes(Path.Combine(folder, name + ".f64"), MemoryMarshal.AsBytes<double>(values).ToArray());
        }
    }

    private static double Heavy(RandomStream random) => random.Normal() * (random.Index(20) == 0 ? 10 : 1);

    private static double[] Draw(ulong stream, int count, Func<RandomStream, int, double> value)
    {
        var random = RandomStream.Of(Seed, stream);
        double[] values = new double[count];
        for (int i = 0; i < count; i++)
        {
            values[i] = value(random, i);
        }

        return values;
    }

    private static double[] DrawNested()
    {
        var random = RandomStream.Of(Seed, 6);
        double[] specimens = [.. Enumerable.Range(0, 10).Select(_ => 2 * random.Normal())];
        double[] sessions = [.. Enumerable.Range(0, 100).Select(_ => random.Normal())];
        return
        [
            .. Enumerable.Range(0, 1000).Select(i => 50 + specimens[i / 100] + sessions[i / 10] + random.Normal() / 2),
        ];
    }
}
