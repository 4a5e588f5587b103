namespace McuBench.Stats.Tests.Edges;

/// <summary>Data at the edges of what a number can hold and of what a procedure can be asked.</summary>
internal static class EdgeData
{
    private const double Denormal = double.Epsilon;

    /// <summary>Data without any fault, to stand beside the others.</summary>
    internal static double[] Ordinary { get; } = [10.2, 9.7, 10.9, 10.1, 9.4, 10.6, 11.3, 9.9, 10.4, 8.8, 10.0, 9.1];

    /// <summary>Finite values; every procedure gives a finite answer or refuses them.</summary>
    internal static IReadOnlyDictionary<string, double[]> Finite { get; } =
        new Dictionary<string, double[]>
        {
            ["empty"] = [],
            ["one value"] = [3.5],
            ["one zero"] = [0],
            ["two values"] = [1, 2],
            ["two equal values"] = [2, 2],
            ["three values"] = [1, 2, 4],
            ["all equal"] = [.. Enumerable.Repeat(7.1, 12)],
            ["all zero"] = new double[12],
            ["both zeros"] = [-0.0, 0.0, -0.0, 0.0, 0.0, -0.0, 0.0, 0.0],
            ["two levels"] = [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 2],
            ["half and half"] = [1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2],
            ["denormal"] = [Denormal],
            ["denormals"] = [.. Enumerable.Range(1, 12).Select(i => i * Denormal)],
            ["equal denormals"] = [.. Enumerable.Repeat(3 * Denormal, 12)],
            ["small"] = [.. Ordinary.Select(x => x * 1e-300)],
            ["near overflow"] = [.. Ordinary.Select(x => x * 1.5e307)],
            ["greatest"] = [.. Enumerable.Repeat(double.MaxValue, 12)],
            ["both greatest"] = [double.MaxValue, double.MinValue, double.MaxValue, double.MinValue, 1, -1, 0, 2],
            ["two opposite greatest"] = [double.MinValue, double.MaxValue],
            ["near overflow with signs"] = [.. Ordinary.Select((x, i) => x * (i % 2 == 0 ? 1e307 : -1e307))],
            ["from least to greatest"] = [Denormal, 1e-300, 1e-100, 1, 2, 3, 1e100, 1e300, double.MaxValue],
            ["one far away"] = [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1e300],
            ["one just above"] = [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, Math.BitIncrement(1)],
            ["large offset"] = [.. Ordinary.Select(x => 1e15 + Math.Round(x))],
            ["negative"] = [.. Ordinary.Select(x => -x)],
            ["about zero"] = [-3, -2, -1, 0, 1, 2, 3, -3, -2, -1, 0, 1, 2, 3],
            ["rising"] = [.. Enumerable.Range(0, 30).Select(i => (double)i)],
        };

    /// <summary>Values that must be refused, with the index of the one at fault.</summary>
    internal static IReadOnlyDictionary<string, double[]> NotFinite { get; } =
        new Dictionary<string, double[]>
        {
            ["NaN first"] = [double.NaN, .. Ordinary[1..]],
            ["NaN last"] = [.. Ordinary[..^1], double.NaN],
            ["infinity"] = [1, 2, double.PositiveInfinity, .. Ordinary[3..]],
            ["negative infinity"] = [1, double.NegativeInfinity, .. Ordinary[2..]],
            ["both infinities"] = [double.NegativeInfinity, double.PositiveInfinity, .. Ordinary[2..]],
        };
}
