namespace McuBench.Stats.Tests.Series;

/// <summary>The invented traces of <c>series.py</c>, made again from whole numbers.</summary>
internal static class TraceRule
{
    internal const double Step = 1e-5;

    internal static double[] Decimals(int count) => Make(count, i => Picoamperes(i) / 1e12);

    internal static double[] Volts(int count) => Make(count, i => (3_300_000 - (long)(Random(42, i) >> 48)) / 1e6);

    internal static double[] UnevenTimes(int count) => Make(count, i => (10 * i + (long)(Random(51, i) >> 61)) / 1e6);

    internal static double[] Wild(int count) =>
        Make(
            count,
            i =>
                (Random(61, i) >> 63 == 1 ? 1 : -1)
                * (double)(Random(62, i) >> 11)
                * Math.ScaleB(1, (int)(Random(63, i) % 200) - 100)
        );

    /// <summary>SplitMix64, counted: an output of a stream.</summary>
    internal static ulong Random(ulong stream, long index)
    {
        ulong x = unchecked((stream << 40) + ((ulong)index + 1) * 0x9E3779B97F4A7C15);
        x = unchecked((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9);
        x = unchecked((x ^ (x >> 27)) * 0x94D049BB133111EB);
        return x ^ (x >> 31);
    }

    private static long Picoamperes(long i) =>
        (i % 1000 < 50 ? 5_000_000_000 : 2_000_000) + (long)(Random(41, i) >> 44);

    private static double[] Make(int count, Func<long, double> value) =>
        [.. Enumerable.Range(0, count).Select(i => value(i))];
}
