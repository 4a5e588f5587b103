using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace McuBench.Core.Quantities;

/// <summary>Quantities as text: "412.1 ms", "12 µA", "160 MHz".</summary>
/// <remarks>
/// <para>
/// A text is one number and one unit, with white space between them or none (any kind, thin and no-break spaces
/// included) and around them. The number has an optional sign (+, - or U+2212), digits with an optional decimal
/// point, and an optional exponent, the same on every machine: a decimal comma and grouped digits are refused with the
/// mend, never guessed. The text may have 64 characters (<see cref="MaxLength"/>).
/// </para>
/// <para>
/// Case counts in units: mWh is milliwatt-hours, MWh megawatt-hours. Micro is u, U+00B5 or U+03BC; ohm may be U+03A9 or
/// U+2126; degrees Celsius may be degC; "mA h" and "mA·h" are mAh. Millihertz is not known, being a slip for megahertz
/// in this trade.
/// </para>
/// <para>
/// The result is held in the SI unit (seconds, hertz, amperes, volts, coulombs, joules, watts, kelvins, ohms, decimal
/// fractions) and is the double nearest to the decimal that was written: "412.1 ms" gives the double 0.4121, and minutes,
/// hours and degrees Celsius are as exact. Power, which the quantity library holds as a decimal with 28 places, loses
/// digits below 1e-11 W.
/// </para>
/// <para>
/// A refusal is a <see cref="QuantityTextError"/>, thrown as <see cref="QuantityFormatException"/> or handed out; no
/// other exception leaves these methods. A null string counts as empty. Cost: O(length), less than a microsecond for a
/// text that is right. Safe to use from many threads.
/// </para>
/// </remarks>
public static class QuantityText
{
    /// <summary>As many characters may a text have: 64.</summary>
    public const int MaxLength = QuantityParser.MaxLength;

    /// <summary>Writes a quantity so that reading the text gives the same quantity, bit for bit.</summary>
    /// <remarks>
    /// <para>
    /// The digits are the shortest that identify the SI double, with the point moved to the SI prefix under which one to
    /// three digits stand before it: "412.1 ms". Beyond the prefixes of the unit plain digits go on for three places
    /// (2400 s, 0.5 Hz, 25000 %), and then an exponent stands with the SI unit: "4.7e-15 s". A ratio takes the largest of
    /// %, ppm and ppb that leaves a digit before the point. Zero is "0 s", and its sign is kept. Minutes, hours and
    /// ampere-hours are read but never written; temperatures are written in kelvins.
    /// </para>
    /// <para>
    /// "Same" means the quantity in its SI unit, as these methods and the library's records hold it. Powers are the
    /// same where their decimal holds no more than 17 digits.
    /// </para>
    /// </remarks>
    /// <typeparam name="TQuantity">One of the quantities that this class reads.</typeparam>
    /// <param name="value">The quantity, in any unit.</param>
    /// <returns>The text in ASCII: "-3.3 us".</returns>
    /// <exception cref="NotSupportedException">The quantity is none of those that this class reads.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The quantity overflows in its SI unit.</exception>
    public static string Format<TQuantity>(TQuantity value)
        where TQuantity : struct, IQuantity => Format(value, TextForm.Ascii);

    /// <summary>Writes a quantity in ASCII ("-3.3 us") or typographically ("−3.3 µs"), either of which reads back the
    /// same; see <see cref="Format{TQuantity}(TQuantity)"/>.</summary>
    /// <typeparam name="TQuantity">One of the quantities that this class reads.</typeparam>
    /// <param name="value">The quantity, in any unit.</param>
    /// <param name="form">The form.</param>
    /// <exception cref="NotSupportedException">The quantity is none of those that this class reads.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The quantity overflows in its SI unit.</exception>
    public static string Format<TQuantity>(TQuantity value, TextForm form)
        where TQuantity : struct, IQuantity
    {
        var notation = QuantityNotation.For<TQuantity>();
        var si = DecimalNumber.Of(notation.ToSi(value, nameof(value))).Trimmed();
        return DisplayScale.For(si, notation.Kind.Scales).Write(si, form);
    }

    /// <summary>Reads a duration, as "412.1 ms"; units: s, ms, us, ns, min, h, d.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in seconds.</returns>
    /// <exception cref="QuantityFormatException">The text is not a duration.</exception>
    public static Duration ParseDuration(ReadOnlySpan<char> text) => QuantityNotation.Duration.Parse(text);

    /// <summary>Reads a duration or says why not; see <see cref="ParseDuration"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseDuration(
        ReadOnlySpan<char> text,
        out Duration value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Duration.TryParse(text, out value, out error);

    /// <summary>Reads a frequency, as "160 MHz"; units: Hz, kHz, MHz, GHz.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in hertz.</returns>
    /// <exception cref="QuantityFormatException">The text is not a frequency.</exception>
    public static Frequency ParseFrequency(ReadOnlySpan<char> text) => QuantityNotation.Frequency.Parse(text);

    /// <summary>Reads a frequency or says why not; see <see cref="ParseFrequency"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseFrequency(
        ReadOnlySpan<char> text,
        out Frequency value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Frequency.TryParse(text, out value, out error);

    /// <summary>Reads a current, as "12 mA"; units: A, mA, uA, nA, pA.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in amperes.</returns>
    /// <exception cref="QuantityFormatException">The text is not a current.</exception>
    public static ElectricCurrent ParseCurrent(ReadOnlySpan<char> text) => QuantityNotation.Current.Parse(text);

    /// <summary>Reads a current or says why not; see <see cref="ParseCurrent"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseCurrent(
        ReadOnlySpan<char> text,
        out ElectricCurrent value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Current.TryParse(text, out value, out error);

    /// <summary>Reads a voltage, as "3.3 V"; units: V, kV, mV, uV, nV.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in volts.</returns>
    /// <exception cref="QuantityFormatException">The text is not a voltage.</exception>
    public static ElectricPotential ParseVoltage(ReadOnlySpan<char> text) => QuantityNotation.Voltage.Parse(text);

    /// <summary>Reads a voltage or says why not; see <see cref="ParseVoltage"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseVoltage(
        ReadOnlySpan<char> text,
        out ElectricPotential value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Voltage.TryParse(text, out value, out error);

    /// <summary>Reads a charge, as "3.6 mC"; units: C, kC, mC, uC, nC, pC; Ah, mAh, uAh; As, mAs, uAs.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in coulombs.</returns>
    /// <exception cref="QuantityFormatException">The text is not a charge.</exception>
    public static ElectricCharge ParseCharge(ReadOnlySpan<char> text) => QuantityNotation.Charge.Parse(text);

    /// <summary>Reads a charge or says why not; see <see cref="ParseCharge"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseCharge(
        ReadOnlySpan<char> text,
        out ElectricCharge value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Charge.TryParse(text, out value, out error);

    /// <summary>Reads an energy, as "12 mJ"; units: J, MJ, kJ, mJ, uJ, nJ; Wh, MWh, kWh, mWh, uWh; Ws, mWs, uWs.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in joules.</returns>
    /// <exception cref="QuantityFormatException">The text is not an energy.</exception>
    public static Energy ParseEnergy(ReadOnlySpan<char> text) => QuantityNotation.Energy.Parse(text);

    /// <summary>Reads an energy or says why not; see <see cref="ParseEnergy"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseEnergy(
        ReadOnlySpan<char> text,
        out Energy value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Energy.TryParse(text, out value, out error);

    /// <summary>Reads a power, as "40 mW"; units: W, MW, kW, mW, uW, nW, pW.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in watts.</returns>
    /// <exception cref="QuantityFormatException">The text is not a power.</exception>
    public static Power ParsePower(ReadOnlySpan<char> text) => QuantityNotation.Power.Parse(text);

    /// <summary>Reads a power or says why not; see <see cref="ParsePower"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParsePower(
        ReadOnlySpan<char> text,
        out Power value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Power.TryParse(text, out value, out error);

    /// <summary>Reads a temperature, as "23 °C"; units: K, °C.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in kelvins.</returns>
    /// <exception cref="QuantityFormatException">The text is not a temperature.</exception>
    public static Temperature ParseTemperature(ReadOnlySpan<char> text) => QuantityNotation.Temperature.Parse(text);

    /// <summary>Reads a temperature or says why not; see <see cref="ParseTemperature"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseTemperature(
        ReadOnlySpan<char> text,
        out Temperature value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Temperature.TryParse(text, out value, out error);

    /// <summary>Reads a resistance, as "0.1 ohm"; units: ohm, Mohm, kohm, mohm, uohm.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in ohms.</returns>
    /// <exception cref="QuantityFormatException">The text is not a resistance.</exception>
    public static ElectricResistance ParseResistance(ReadOnlySpan<char> text) =>
        QuantityNotation.Resistance.Parse(text);

    /// <summary>Reads a resistance or says why not; see <see cref="ParseResistance"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseResistance(
        ReadOnlySpan<char> text,
        out ElectricResistance value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Resistance.TryParse(text, out value, out error);

    /// <summary>Reads a ratio, as "20 ppm"; units: %, ppm, ppb; a bare fraction is refused.</summary>
    /// <param name="text">The number and its unit.</param>
    /// <returns>The quantity, held in decimal fractions.</returns>
    /// <exception cref="QuantityFormatException">The text is not a ratio.</exception>
    public static Ratio ParseRatio(ReadOnlySpan<char> text) => QuantityNotation.Ratio.Parse(text);

    /// <summary>Reads a ratio or says why not; see <see cref="ParseRatio"/>.</summary>
    /// <returns>Whether the text was read; where not, <paramref name="value"/> is the default.</returns>
    public static bool TryParseRatio(
        ReadOnlySpan<char> text,
        out Ratio value,
        [NotNullWhen(false)] out QuantityTextError? error
    ) => QuantityNotation.Ratio.TryParse(text, out value, out error);
}
