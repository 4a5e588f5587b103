namespace DemoStudy;

/// <summary>
/// Random numbers by place instead of by state: the number at (stream, index) depends on the seed and on these two
/// alone, so that a series keeps its numbers when another is added before it.
/// </summary>
/// <remarks>The 64-bit finaliser is that of the published SplitMix64 generator. Only integer arithmetic, addition and
/// multiplication are used: the same bits on every platform.</remarks>
public sealed class CounterRandom(ulong seed)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;

    // 12 uniform numbers have variance 1 and mean 6, and need no logarithm, whose last digit depends on the platform.
    private const int UniformsPerNormal = 12;

    /// <summary>64 random bits.</summary>
    public ulong Bits(int stream, int index) =>
        Mix(Mix(Mix(seed + Golden) + (ulong)stream * Golden) + (ulong)index * Golden);

    /// <summary>A number from 0 up to, but not including, 1.</summary>
    public double Uniform(int stream, int index) => (Bits(stream, index) >> 11) * (1.0 / (1UL << 53));

    /// <summary>A nearly normal number of mean 0 and variance 1, never beyond ±6.</summary>
    public double Normal(int stream, int index)
    {
        var sum = 0.0;
        for (var i = 0; i < UniformsPerNormal; i++)
        {
            sum += Uniform(stream, index * UniformsPerNormal + i);
        }

        return sum - UniformsPerNormal / 2;
    }

    /// <summary>The items in random order (Fisher and Yates).</summary>
    public T[] Shuffled<T>(IEnumerable<T> items, int stream)
    {
        var order = items.ToArray();
        for (var i = order.Length - 1; i > 0; i--)
        {
            var j = (int)(Uniform(stream, i) * (i + 1));
            (order[i], order[j]) = (order[j], order[i]);
        }

        return order;
    }

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
