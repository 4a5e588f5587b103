using System.Globalization;

namespace McuBench.Core.Quantities;

/// <summary>Finds a unit by the symbol that a text uses.</summary>
/// <remarks>
/// Case decides: mWh is milliwatt-hours, MWh megawatt-hours. Micro may be u, U+00B5 or U+03BC; ohm may be ohm, U+03A9
/// or U+2126; °C may be degC or U+2103; between the parts of Ah, Wh, As and Ws a space or a middle dot (U+00B7, U+22C5)
/// may stand.
/// </remarks>
internal static class UnitTable
{
    private static readonly Dictionary<string, (Unit Unit, QuantityKind Kind)> Symbols = Build();

    private static readonly Dictionary<string, (Unit, QuantityKind)>.AlternateLookup<ReadOnlySpan<char>> Lookup =
        Symbols.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The unit that <paramref name="symbol"/> names, the whole of it.</summary>
    public static bool TryFind(ReadOnlySpan<char> symbol, out Unit unit, out QuantityKind kind)
    {
        var found = Lookup.TryGetValue(symbol, out var entry) || Lookup.TryGetValue(WithPlainSpaces(symbol), out entry);
        (unit, kind) = found ? entry : (null!, null!);
        return found;
    }

    private static string WithPlainSpaces(ReadOnlySpan<char> symbol) =>
        string.Create(
            symbol.Length,
            symbol,
            static (target, source) =>
            {
                for (var i = 0; i < source.Length; i++)
                {
                    target[i] = char.GetUnicodeCategory(source[i]) == UnicodeCategory.SpaceSeparator ? ' ' : source[i];
                }
            }
        );

    private static Dictionary<string, (Unit Unit, QuantityKind Kind)> Build()
    {
        var symbols = new Dictionary<string, (Unit, QuantityKind)>(StringComparer.Ordinal);
        foreach (var kind in QuantityKind.All)
        {
            foreach (var unit in kind.Units)
            {
                foreach (var spelling in Spellings(unit))
                {
                    symbols.Add(spelling, (unit, kind));
                }
            }
        }

        return symbols;
    }

    private static IEnumerable<string> Spellings(Unit unit)
    {
        string[] micros = unit.Symbol.StartsWith('u') ? ["u", "\u00B5", "\u03BC"] : [""];
        var stem = micros.Length > 1 ? unit.Symbol[1..] : unit.Symbol;
        string[] stems = stem switch
        {
            _ when stem.EndsWith("ohm", StringComparison.Ordinal) =>
            [
                stem,
                stem.Replace("ohm", "\u03A9", StringComparison.Ordinal),
                stem.Replace("ohm", "\u2126", StringComparison.Ordinal),
            ],
            _ when unit.IsCelsius => [stem, unit.PrintSymbol, "\u2103"],
            [.., 'A' or 'W', var time and ('h' or 's')] =>
            [
                stem,
                $"{stem.AsSpan(0, stem.Length - 1)}\u00B7{time}",
                $"{stem.AsSpan(0, stem.Length - 1)}\u22C5{time}",
                $"{stem.AsSpan(0, stem.Length - 1)} {time}",
            ],
            _ => [stem],
        };
        return micros.SelectMany(micro => stems, (micro, rest) => micro + rest);
    }
}
