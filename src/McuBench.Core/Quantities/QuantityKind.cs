using System.Collections.Immutable;

namespace McuBench.Core.Quantities;

/// <summary>What a quantity measures, in the words that messages use, and the units in which text may give it.</summary>
internal sealed class QuantityKind
{
    private const int HourFactor = 36;
    private const int HourPower = 2;

    public static readonly QuantityKind Duration = new("a duration", "412.1 ms", Prefixed("s", "", "m", "u", "n"))
    {
        OtherUnits = [new("min", 6, 1), new("h", HourFactor, HourPower), new("d", 864, 2)],
    };

    // Millihertz is left out on purpose: in this trade it is a slip for megahertz.
    public static readonly QuantityKind Frequency = new("a frequency", "160 MHz", Prefixed("Hz", "G", "M", "k", ""));

    public static readonly QuantityKind Current = new("a current", "12 mA", Prefixed("A", "", "m", "u", "n", "p"));

    public static readonly QuantityKind Voltage = new("a voltage", "3.3 V", Prefixed("V", "k", "", "m", "u", "n"));

    public static readonly QuantityKind Charge = new("a charge", "3.6 mC", Prefixed("C", "k", "", "m", "u", "n", "p"))
    {
        OtherUnits = [.. Hours("Ah", "", "m", "u"), .. Prefixed("As", "", "m", "u")],
    };

    public static readonly QuantityKind Energy = new("an energy", "12 mJ", Prefixed("J", "M", "k", "", "m", "u", "n"))
    {
        OtherUnits = [.. Hours("Wh", "M", "k", "", "m", "u"), .. Prefixed("Ws", "", "m", "u")],
    };

    public static readonly QuantityKind Power = new("a power", "40 mW", Prefixed("W", "M", "k", "", "m", "u", "n", "p"))
    {
        Smallest = Si.SmallestPower,
        Largest = Si.LargestPower,
    };

    public static readonly QuantityKind Temperature = new("a temperature", "23 degC", Prefixed("K", ""))
    {
        OtherUnits = [new("degC", 1, 0) { IsCelsius = true }],
    };

    public static readonly QuantityKind Resistance = new(
        "a resistance",
        "0.1 ohm",
        Prefixed("ohm", "M", "k", "", "m", "u")
    );

    // Accuracies of half a percent are said in percent, tolerances of oscillators in ppm.
    // No unit for the bare fraction: a bare 5 could be a fraction or a percentage.
    public static readonly QuantityKind Ratio = new(
        "a ratio",
        "20 ppm",
        [new("%", 1, -2) { ShownFrom = -4 }, new("ppm", 1, -6), new("ppb", 1, -9)]
    );

    private QuantityKind(string noun, string example, ImmutableArray<Unit> prefixedUnits)
    {
        Noun = noun;
        Example = example;
        PrefixedUnits = prefixedUnits;
        Scales =
        [
            .. prefixedUnits.Select(unit => new DisplayScale(unit.Symbol, unit.PrintSymbol, unit.PowerOfTen)
            {
                ShownFrom = unit.ShownFrom,
            }),
        ];
    }

    public static ImmutableArray<QuantityKind> All { get; } =
    [Duration, Frequency, Current, Voltage, Charge, Energy, Power, Temperature, Resistance, Ratio];

    /// <summary>The noun with its article: "a current".</summary>
    public string Noun { get; }

    /// <summary>A text of this kind: "12 mA".</summary>
    public string Example { get; }

    /// <summary>The units in which texts are written, largest first: the SI unit under its prefixes.</summary>
    public ImmutableArray<Unit> PrefixedUnits { get; }

    /// <summary>The prefixed units as scales to write in, largest first.</summary>
    public ImmutableArray<DisplayScale> Scales { get; }

    /// <summary>The units that text may use besides.</summary>
    public ImmutableArray<Unit> OtherUnits { get; private init; } = [];

    /// <summary>The size below which nothing but zero can be held, in the SI unit.</summary>
    public double Smallest { get; private init; } = double.Epsilon;

    /// <summary>The largest size that can be held, in the SI unit.</summary>
    public double Largest { get; private init; } = double.MaxValue;

    public IEnumerable<Unit> Units => PrefixedUnits.Concat(OtherUnits);

    private static ImmutableArray<Unit> Prefixed(string symbol, params ReadOnlySpan<string> prefixes) =>
        With(symbol, 1, 0, prefixes);

    private static ImmutableArray<Unit> Hours(string symbol, params ReadOnlySpan<string> prefixes) =>
        With(symbol, HourFactor, HourPower, prefixes);

    private static ImmutableArray<Unit> With(string symbol, int factor, int power, ReadOnlySpan<string> prefixes)
    {
        var units = ImmutableArray.CreateBuilder<Unit>(prefixes.Length);
        foreach (var prefix in prefixes)
        {
            units.Add(new Unit(prefix + symbol, factor, power + PowerOf(prefix)));
        }

        return units.MoveToImmutable();
    }

    private static int PowerOf(string prefix) =>
        prefix switch
        {
            "G" => 9,
            "M" => 6,
            "k" => 3,
            "m" => -3,
            "u" => -6,
            "n" => -9,
            "p" => -12,
            _ => 0,
        };
}
