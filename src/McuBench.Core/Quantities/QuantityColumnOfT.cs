using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace McuBench.Core.Quantities;

/// <summary>A column of quantities: its cells are bare numbers in the unit that the head gives.</summary>
/// <typeparam name="TQuantity">The type of quantity.</typeparam>
/// <remarks>
/// Immutable and safe to use from many threads. A cell is as exact as the same number with its unit in
/// <see cref="QuantityText"/>: 412.1 under [ms] is the double 0.4121, in seconds. Made by
/// <see cref="QuantityColumn.OfHead{TQuantity}"/>.
/// </remarks>
public sealed class QuantityColumn<TQuantity>
    where TQuantity : struct, IQuantity
{
    private readonly Unit _unit;
    private readonly QuantityNotation<TQuantity> _notation;

    internal QuantityColumn(string name, Unit unit, QuantityNotation<TQuantity> notation)
    {
        Name = name;
        _unit = unit;
        _notation = notation;
    }

    /// <summary>The name in the head, without the unit.</summary>
    public string Name { get; }

    /// <summary>The unit's symbol in ASCII, as <c>us</c> for a head that says µs.</summary>
    public string Unit => _unit.Symbol;

    /// <summary>Reads a cell.</summary>
    /// <exception cref="QuantityFormatException">The cell is no bare number that can be held.</exception>
    public TQuantity Parse(ReadOnlySpan<char> cell) =>
        TryParse(cell, out var value, out var error) ? value : throw new QuantityFormatException(error);

    /// <summary>Reads a cell or says why not; see <see cref="Parse"/>.</summary>
    public bool TryParse(
        ReadOnlySpan<char> cell,
        out TQuantity value,
        [NotNullWhen(false)] out QuantityTextError? error
    )
    {
        error = QuantityParser.ReadBare(cell, _unit, _notation.Kind, out var si);
        value = error is null ? _notation.FromSi(si, nameof(cell)) : default;
        return error is null;
    }

    /// <summary>The head: the name and the unit in brackets.</summary>
    public override string ToString() => $"{Name} [{Unit}]";
}
