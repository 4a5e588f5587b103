namespace McuBench.Core.Quantities;

/// <summary>A unit that text may use: its symbol, and its size in the SI unit as factor · 10^power.</summary>
/// <param name="Symbol">The symbol as a keyboard has it: <c>us</c>, <c>kohm</c>, <c>degC</c>.</param>
/// <param name="Factor">What the SI unit is multiplied by, besides the power of ten: 36 for hours.</param>
/// <param name="PowerOfTen">The power of ten: −3 for milli, 2 for hours.</param>
internal sealed record Unit(string Symbol, int Factor, int PowerOfTen)
{
    /// <summary>Whether the unit counts from the ice point rather than from zero.</summary>
    public bool IsCelsius { get; init; }

    /// <summary>The power of ten of the leading digit from which on results are shown in this unit, rather than in the
    /// next smaller one.</summary>
    public int ShownFrom { get; init; } = PowerOfTen;

    /// <summary>The symbol as print has it: <c>µs</c>, <c>kΩ</c>.</summary>
    public string PrintSymbol { get; } = Print(Symbol);

    /// <summary>A number of this unit in the SI unit, exactly.</summary>
    public DecimalNumber ToSi(DecimalNumber number) =>
        IsCelsius ? Si.KelvinsOfCelsius(number) : number.Scaled(Factor, PowerOfTen);

    private static string Print(string symbol)
    {
        var printed = symbol
            .Replace("ohm", "\u03A9", StringComparison.Ordinal)
            .Replace("deg", "\u00B0", StringComparison.Ordinal);
        return printed.StartsWith('u') ? $"\u00B5{printed.AsSpan(1)}" : printed;
    }
}
