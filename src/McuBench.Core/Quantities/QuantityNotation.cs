using UnitsNet;

namespace McuBench.Core.Quantities;

/// <summary>Ties a type of quantity to its kind and to its way into and out of SI doubles.</summary>
/// <param name="Kind">What the quantity measures.</param>
/// <param name="FromSi">The quantity of an SI double, refusing under a name.</param>
/// <param name="ToSi">The SI double of a quantity, refusing under a name.</param>
internal sealed record QuantityNotation<TQuantity>(
    QuantityKind Kind,
    Func<double, string, TQuantity> FromSi,
    Func<TQuantity, string, double> ToSi
)
    where TQuantity : struct, IQuantity
{
    public TQuantity Parse(ReadOnlySpan<char> text) =>
        QuantityParser.Read(text, Kind, out var si) is { } error
            ? throw new QuantityFormatException(error)
            : FromSi(si, nameof(text));

    public bool TryParse(ReadOnlySpan<char> text, out TQuantity value, out QuantityTextError? error)
    {
        error = QuantityParser.Read(text, Kind, out var si);
        value = error is null ? FromSi(si, nameof(text)) : default;
        return error is null;
    }
}

/// <summary>The quantities that have a notation in text.</summary>
internal static class QuantityNotation
{
    public static readonly QuantityNotation<Duration> Duration = new(QuantityKind.Duration, Si.Duration, Si.Seconds);

    public static readonly QuantityNotation<Frequency> Frequency = new(QuantityKind.Frequency, Si.Frequency, Si.Hertz);

    public static readonly QuantityNotation<ElectricCurrent> Current = new(
        QuantityKind.Current,
        Si.Current,
        Si.Amperes
    );

    public static readonly QuantityNotation<ElectricPotential> Voltage = new(
        QuantityKind.Voltage,
        Si.Voltage,
        Si.Volts
    );

    public static readonly QuantityNotation<ElectricCharge> Charge = new(QuantityKind.Charge, Si.Charge, Si.Coulombs);

    public static readonly QuantityNotation<Energy> Energy = new(QuantityKind.Energy, Si.Energy, Si.Joules);

    public static readonly QuantityNotation<Power> Power = new(QuantityKind.Power, Si.Power, Si.Watts);

    public static readonly QuantityNotation<Temperature> Temperature = new(
        QuantityKind.Temperature,
        Si.Temperature,
        Si.Kelvins
    );

    public static readonly QuantityNotation<ElectricResistance> Resistance = new(
        QuantityKind.Resistance,
        Si.Resistance,
        Si.Ohms
    );

    public static readonly QuantityNotation<Ratio> Ratio = new(QuantityKind.Ratio, Si.Ratio, Si.Fraction);

    private static readonly Dictionary<Type, object> ByType = new()
    {
        [typeof(Duration)] = Duration,
        [typeof(Frequency)] = Frequency,
        [typeof(ElectricCurrent)] = Current,
        [typeof(ElectricPotential)] = Voltage,
        [typeof(ElectricCharge)] = Charge,
        [typeof(Energy)] = Energy,
        [typeof(Power)] = Power,
        [typeof(Temperature)] = Temperature,
        [typeof(ElectricResistance)] = Resistance,
        [typeof(Ratio)] = Ratio,
    };

    /// <summary>The notation of a type of quantity.</summary>
    /// <exception cref="NotSupportedException">The type has none.</exception>
    public static QuantityNotation<TQuantity> For<TQuantity>()
        where TQuantity : struct, IQuantity =>
        ByType.TryGetValue(typeof(TQuantity), out var notation)
            ? (QuantityNotation<TQuantity>)notation
            : throw new NotSupportedException(
                $"Quantity must be one of {string.Join(", ", ByType.Keys.Select(type => type.Name))}; was {typeof(TQuantity).Name}."
            );
}
