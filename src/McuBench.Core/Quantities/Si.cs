using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace McuBench.Core.Quantities;

/// <summary>
/// The one place where quantities become SI doubles and SI doubles become quantities.
/// </summary>
/// <remarks>
/// <para>
/// A quantity held in another unit counts as the shortest decimal that its double prints as, moved to the SI unit by
/// exact decimal arithmetic and rounded once. So 412.1 ms given from code and "412.1 ms" read from a file are the same
/// bits, which dividing the double does not give (of the values 0.1 ms to 9999.9 ms, 24 % differ in the last bit).
/// Units outside the trade's table take the quantity library's own conversion.
/// </para>
/// <para>
/// Equality of quantities is strict by unit: <see cref="Normalized(Duration, string)"/> and its kin give the same
/// quantity in its SI unit, and records hold nothing else. Power is a decimal in the quantity library, with 28 decimal
/// places: below 1e-11 W digits are lost, and above 7.9e28 W nothing can be held.
/// </para>
/// <para>Cost: nothing for a quantity already in SI, about 0.2 µs otherwise. Not for use per sample of a trace.</para>
/// </remarks>
internal static class Si
{
    /// <summary>The least power besides zero that is held, in watts: the last place of a decimal.</summary>
    public const double SmallestPower = 1e-28;

    /// <summary>The greatest power that is held, in watts.</summary>
    public const double LargestPower = 7.9e28;

    /// <summary>0 °C in hundredths of a kelvin.</summary>
    private const int HundredthsOfKelvinAtZeroCelsius = 27315;

    /// <summary>0 °C in kelvins.</summary>
    public static readonly DecimalNumber ZeroCelsius = new(false, HundredthsOfKelvinAtZeroCelsius, -2);

    public static double Seconds(Duration value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                DurationUnit.Second => value.Value,
                DurationUnit.Millisecond => Scaled(value.Value, 1, -3),
                DurationUnit.Microsecond => Scaled(value.Value, 1, -6),
                DurationUnit.Nanosecond => Scaled(value.Value, 1, -9),
                DurationUnit.Minute => Scaled(value.Value, 6, 1),
                DurationUnit.Hour => Scaled(value.Value, 36, 2),
                DurationUnit.Day => Scaled(value.Value, 864, 2),
                _ => value.Seconds,
            },
            value,
            "seconds",
            name
        );

    public static double Hertz(Frequency value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                FrequencyUnit.Hertz or FrequencyUnit.PerSecond => value.Value,
                FrequencyUnit.Millihertz => Scaled(value.Value, 1, -3),
                FrequencyUnit.Kilohertz => Scaled(value.Value, 1, 3),
                FrequencyUnit.Megahertz => Scaled(value.Value, 1, 6),
                FrequencyUnit.Gigahertz => Scaled(value.Value, 1, 9),
                _ => value.Hertz,
            },
            value,
            "hertz",
            name
        );

    public static double Amperes(ElectricCurrent value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                ElectricCurrentUnit.Ampere => value.Value,
                ElectricCurrentUnit.Milliampere => Scaled(value.Value, 1, -3),
                ElectricCurrentUnit.Microampere => Scaled(value.Value, 1, -6),
                ElectricCurrentUnit.Nanoampere => Scaled(value.Value, 1, -9),
                ElectricCurrentUnit.Picoampere => Scaled(value.Value, 1, -12),
                _ => value.Amperes,
            },
            value,
            "amperes",
            name
        );

    public static double Volts(ElectricPotential value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                ElectricPotentialUnit.Volt => value.Value,
                ElectricPotentialUnit.Millivolt => Scaled(value.Value, 1, -3),
                ElectricPotentialUnit.Microvolt => Scaled(value.Value, 1, -6),
                ElectricPotentialUnit.Nanovolt => Scaled(value.Value, 1, -9),
                ElectricPotentialUnit.Kilovolt => Scaled(value.Value, 1, 3),
                _ => value.Volts,
            },
            value,
            "volts",
            name
        );

    public static double Coulombs(ElectricCharge value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                ElectricChargeUnit.Coulomb => value.Value,
                ElectricChargeUnit.Millicoulomb => Scaled(value.Value, 1, -3),
                ElectricChargeUnit.Microcoulomb => Scaled(value.Value, 1, -6),
                ElectricChargeUnit.Nanocoulomb => Scaled(value.Value, 1, -9),
                ElectricChargeUnit.Picocoulomb => Scaled(value.Value, 1, -12),
                ElectricChargeUnit.Kilocoulomb => Scaled(value.Value, 1, 3),
                ElectricChargeUnit.AmpereHour => Scaled(value.Value, 36, 2),
                ElectricChargeUnit.MilliampereHour => Scaled(value.Value, 36, -1),
                _ => value.Coulombs,
            },
            value,
            "coulombs",
            name
        );

    public static double Joules(Energy value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                EnergyUnit.Joule => value.Value,
                EnergyUnit.Millijoule => Scaled(value.Value, 1, -3),
                EnergyUnit.Microjoule => Scaled(value.Value, 1, -6),
                EnergyUnit.Nanojoule => Scaled(value.Value, 1, -9),
                EnergyUnit.Kilojoule => Scaled(value.Value, 1, 3),
                EnergyUnit.Megajoule => Scaled(value.Value, 1, 6),
                EnergyUnit.WattHour => Scaled(value.Value, 36, 2),
                EnergyUnit.KilowattHour => Scaled(value.Value, 36, 5),
                EnergyUnit.MegawattHour => Scaled(value.Value, 36, 8),
                _ => value.Joules,
            },
            value,
            "joules",
            name
        );

    public static double Watts(Power value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                PowerUnit.Watt => DecimalNumber.Of(value.Value).ToDouble(),
                PowerUnit.Picowatt => Scaled(value.Value, -12),
                PowerUnit.Nanowatt => Scaled(value.Value, -9),
                PowerUnit.Microwatt => Scaled(value.Value, -6),
                PowerUnit.Milliwatt => Scaled(value.Value, -3),
                PowerUnit.Kilowatt => Scaled(value.Value, 3),
                PowerUnit.Megawatt => Scaled(value.Value, 6),
                _ => DecimalNumber.Of(value.ToUnit(PowerUnit.Watt).Value).ToDouble(),
            },
            value,
            "watts",
            name
        );

    public static double Kelvins(Temperature value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                TemperatureUnit.Kelvin => value.Value,
                TemperatureUnit.DegreeCelsius => KelvinsOfCelsius(DecimalNumber.Of(value.Value)).ToDouble(),
                _ => value.Kelvins,
            },
            value,
            "kelvins",
            name
        );

    public static double Ohms(ElectricResistance value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                ElectricResistanceUnit.Ohm => value.Value,
                ElectricResistanceUnit.Microohm => Scaled(value.Value, 1, -6),
                ElectricResistanceUnit.Milliohm => Scaled(value.Value, 1, -3),
                ElectricResistanceUnit.Kiloohm => Scaled(value.Value, 1, 3),
                ElectricResistanceUnit.Megaohm => Scaled(value.Value, 1, 6),
                _ => value.Ohms,
            },
            value,
            "ohms",
            name
        );

    /// <summary>The ratio as a decimal fraction: 0.2 for 20 %.</summary>
    public static double Fraction(Ratio value, string name = "value") =>
        Finite(
            value.Unit switch
            {
                RatioUnit.DecimalFraction => value.Value,
                RatioUnit.Percent => Scaled(value.Value, 1, -2),
                RatioUnit.PartPerMillion => Scaled(value.Value, 1, -6),
                RatioUnit.PartPerBillion => Scaled(value.Value, 1, -9),
                _ => value.DecimalFractions,
            },
            value,
            "as a fraction",
            name
        );

    public static Duration Duration(double seconds, string name = "value") =>
        UnitsNet.Duration.FromSeconds(Finite(seconds, "Duration in seconds", name));

    public static Frequency Frequency(double hertz, string name = "value") =>
        UnitsNet.Frequency.FromHertz(Finite(hertz, "Frequency in hertz", name));

    public static ElectricCurrent Current(double amperes, string name = "value") =>
        ElectricCurrent.FromAmperes(Finite(amperes, "Current in amperes", name));

    public static ElectricPotential Voltage(double volts, string name = "value") =>
        ElectricPotential.FromVolts(Finite(volts, "Voltage in volts", name));

    public static ElectricCharge Charge(double coulombs, string name = "value") =>
        ElectricCharge.FromCoulombs(Finite(coulombs, "Charge in coulombs", name));

    public static Energy Energy(double joules, string name = "value") =>
        UnitsNet.Energy.FromJoules(Finite(joules, "Energy in joules", name));

    /// <summary>A power; all 17 digits of the double are kept wherever a decimal has places for them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power is not finite, or larger than
    /// <see cref="LargestPower"/>, or not zero and smaller than <see cref="SmallestPower"/>.</exception>
    public static Power Power(double watts, string name = "value")
    {
        // Not the cast: from double to decimal it keeps 15 digits.
        var digits = Finite(watts, "Power in watts", name).ToString("R", CultureInfo.InvariantCulture);
        return watts == 0 || Math.Abs(watts) is >= SmallestPower and <= LargestPower
            ? UnitsNet.Power.FromWatts(decimal.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture))
            : throw new ArgumentOutOfRangeException(
                name,
                watts,
                $"Power must be zero or between 1e-28 W and 7.9e28 W in size; was {digits} W."
            );
    }

    public static Temperature Temperature(double kelvins, string name = "value") =>
        UnitsNet.Temperature.FromKelvins(Finite(kelvins, "Temperature in kelvins", name));

    public static ElectricResistance Resistance(double ohms, string name = "value") =>
        ElectricResistance.FromOhms(Finite(ohms, "Resistance in ohms", name));

    public static Ratio Ratio(double fraction, string name = "value") =>
        UnitsNet.Ratio.FromDecimalFractions(Finite(fraction, "Ratio", name));

    public static Duration Normalized(Duration value, string name = "value") =>
        value.Unit == DurationUnit.Second ? value : Duration(Seconds(value, name), name);

    public static Frequency Normalized(Frequency value, string name = "value") =>
        value.Unit == FrequencyUnit.Hertz ? value : Frequency(Hertz(value, name), name);

    public static ElectricCurrent Normalized(ElectricCurrent value, string name = "value") =>
        value.Unit == ElectricCurrentUnit.Ampere ? value : Current(Amperes(value, name), name);

    public static ElectricPotential Normalized(ElectricPotential value, string name = "value") =>
        value.Unit == ElectricPotentialUnit.Volt ? value : Voltage(Volts(value, name), name);

    public static ElectricCharge Normalized(ElectricCharge value, string name = "value") =>
        value.Unit == ElectricChargeUnit.Coulomb ? value : Charge(Coulombs(value, name), name);

    public static Energy Normalized(Energy value, string name = "value") =>
        value.Unit == EnergyUnit.Joule ? value : Energy(Joules(value, name), name);

    /// <summary>The same power in watts, always through its double: 31 mW and 0.0310 W end in equal decimals.</summary>
    public static Power Normalized(Power value, string name = "value") => Power(Watts(value, name), name);

    public static Temperature Normalized(Temperature value, string name = "value") =>
        value.Unit == TemperatureUnit.Kelvin ? value : Temperature(Kelvins(value, name), name);

    public static ElectricResistance Normalized(ElectricResistance value, string name = "value") =>
        value.Unit == ElectricResistanceUnit.Ohm ? value : Resistance(Ohms(value, name), name);

    public static Ratio Normalized(Ratio value, string name = "value") =>
        value.Unit == RatioUnit.DecimalFraction ? value : Ratio(Fraction(value, name), name);

    /// <summary>A number of degrees Celsius as one of kelvins, exactly.</summary>
    public static DecimalNumber KelvinsOfCelsius(DecimalNumber celsius) => celsius.Plus(ZeroCelsius);

    private static double Scaled(double value, int factor, int powerOfTen) =>
        DecimalNumber.Of(value).Scaled(factor, powerOfTen).ToDouble();

    private static double Scaled(decimal value, int powerOfTen) =>
        DecimalNumber.Of(value).Scaled(1, powerOfTen).ToDouble();

    /// <summary>The number, refused where it is not finite.</summary>
    public static double Finite(double si, string what, string name) =>
        double.IsFinite(si)
            ? si
            : throw new ArgumentOutOfRangeException(
                name,
                si,
                string.Create(CultureInfo.InvariantCulture, $"{what} must be finite; was {si}.")
            );

    // The quantity library refuses NaN and infinity itself; what is left is a unit so large that its SI value overflows.
    private static double Finite<TQuantity>(double si, TQuantity value, string siUnit, string name)
        where TQuantity : IQuantity => double.IsFinite(si) ? si : throw Overflow(value, siUnit, name);

    private static ArgumentOutOfRangeException Overflow(IQuantity value, string siUnit, string name) =>
        new(
            name,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{value.QuantityInfo.Name} must be within the range of a double in {siUnit}; was {(double)value.Value:R} {value.Unit}."
            )
        );
}
