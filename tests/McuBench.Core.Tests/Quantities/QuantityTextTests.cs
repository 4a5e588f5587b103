using System.Numerics;
using FsCheck.Xunit;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Quantities;

public class QuantityTextTests
{
    [Fact]
    public void Parse_EveryUnitOfTheTrade_GivesTheNearestDoubleInSi()
    {
        AssertAll(QuantityText.ParseDuration, q => q.Value, "s", ("s", 1), ("ms", 1e-3), ("us", 1e-6), ("ns", 1e-9));
        AssertAll(QuantityText.ParseDuration, q => q.Value, "s", ("min", 60), ("h", 3600), ("d", 86400));
        AssertAll(QuantityText.ParseFrequency, q => q.Value, "Hz", ("Hz", 1), ("kHz", 1e3), ("MHz", 1e6), ("GHz", 1e9));
        AssertAll(QuantityText.ParseCurrent, q => q.Value, "A", ("A", 1), ("mA", 1e-3), ("uA", 1e-6), ("nA", 1e-9));
        AssertAll(QuantityText.ParseCurrent, q => q.Value, "A", ("pA", 1e-12));
        AssertAll(QuantityText.ParseVoltage, q => q.Value, "V", ("kV", 1e3), ("V", 1), ("mV", 1e-3), ("uV", 1e-6));
        AssertAll(QuantityText.ParseVoltage, q => q.Value, "V", ("nV", 1e-9));
        AssertAll(QuantityText.ParseCharge, q => q.Value, "C", ("kC", 1e3), ("C", 1), ("mC", 1e-3), ("uC", 1e-6));
        AssertAll(QuantityText.ParseCharge, q => q.Value, "C", ("nC", 1e-9), ("pC", 1e-12), ("As", 1), ("mAs", 1e-3));
        AssertAll(QuantityText.ParseCharge, q => q.Value, "C", ("Ah", 3600), ("mAh", 3.6), ("uAh", 0.0036));
        AssertAll(QuantityText.ParseEnergy, q => q.Value, "J", ("MJ", 1e6), ("kJ", 1e3), ("J", 1), ("mJ", 1e-3));
        AssertAll(QuantityText.ParseEnergy, q => q.Value, "J", ("uJ", 1e-6), ("nJ", 1e-9), ("Ws", 1), ("mWs", 1e-3));
        AssertAll(QuantityText.ParseEnergy, q => q.Value, "J", ("MWh", 3.6e9), ("kWh", 3.6e6), ("Wh", 3600));
        AssertAll(QuantityText.ParseEnergy, q => q.Value, "J", ("mWh", 3.6), ("uWh", 0.0036));
        AssertAll(QuantityText.ParsePower, q => (double)q.Value, "W", ("MW", 1e6), ("kW", 1e3), ("W", 1), ("mW", 1e-3));
        AssertAll(QuantityText.ParsePower, q => (double)q.Value, "W", ("uW", 1e-6), ("nW", 1e-9), ("pW", 1e-12));
        AssertAll(QuantityText.ParseTemperature, q => q.Value, "K", ("K", 1), ("\u00B0C", 274.15), ("degC", 274.15));
        AssertAll(QuantityText.ParseTemperature, q => q.Value, "K", ("\u2103", 274.15));
        AssertAll(QuantityText.ParseResistance, q => q.Value, "\u03A9", ("Mohm", 1e6), ("kohm", 1e3), ("ohm", 1));
        AssertAll(
            QuantityText.ParseResistance,
            q => q.Value,
            "\u03A9",
            ("mohm", 1e-3),
            ("uohm", 1e-6),
            ("k\u03A9", 1e3)
        );
        AssertAll(QuantityText.ParseResistance, q => q.Value, "\u03A9", ("k\u2126", 1e3), ("m\u03A9", 1e-3));
        AssertAll(QuantityText.ParseRatio, q => q.Value, "", ("%", 0.01), ("ppm", 1e-6), ("ppb", 1e-9));
    }

    [Theory]
    [InlineData("12 uA")]
    [InlineData("12 \u00B5A")]
    [InlineData("12 \u03BCA")]
    [InlineData("12uA")]
    [InlineData("12\u2009\u00B5A")]
    [InlineData("12\u202FuA")]
    [InlineData("12\u00A0uA")]
    [InlineData("  12 \t uA \n")]
    [InlineData("+12 uA")]
    [InlineData("1.2e1 uA")]
    [InlineData("0.12E+2uA")]
    [InlineData("1200e\u22122 uA")]
    [InlineData("12. uA")]
    public void ParseCurrent_AnyRightSpelling_ReadsTheSame(string text) =>
        Assert.Equal(ElectricCurrent.FromAmperes(12e-6), QuantityText.ParseCurrent(text));

    [Theory]
    [InlineData("-3.3 V")]
    [InlineData("\u22123.3 V")]
    public void ParseVoltage_EitherMinus_IsNegative(string text) =>
        Assert.Equal(ElectricPotential.FromVolts(-3.3), QuantityText.ParseVoltage(text));

    [Theory]
    [InlineData("1 mAh", 3.6)]
    [InlineData("1 mA h", 3.6)]
    [InlineData("1 mA\u202Fh", 3.6)]
    [InlineData("1 mA\u00B7h", 3.6)]
    [InlineData("1 mA\u22C5h", 3.6)]
    [InlineData("1 \u03BCA\u00B7h", 0.0036)]
    [InlineData("1 A s", 1)]
    [InlineData("1 A\u00B7h", 3600)]
    public void ParseCharge_AnySpellingOfAmpereHours_ReadsTheSame(string text, double coulombs) =>
        Assert.Equal(ElectricCharge.FromCoulombs(coulombs), QuantityText.ParseCharge(text));

    [Fact]
    public void ParseEnergy_MilliAndMega_AreNeverConfused()
    {
        Assert.Equal(Energy.FromJoules(18), QuantityText.ParseEnergy("5 mWh"));
        Assert.Equal(Energy.FromJoules(1.8e10), QuantityText.ParseEnergy("5 MWh"));
    }

    [Property]
    public void ParseDuration_AnyDecimalOfMilliseconds_IsRoundedOnce(ulong digits, byte places)
    {
        var decimals = places % 19;
        var text = $"{digits}e-{decimals} ms";

        Assert.Equal(ExactRounding.Nearest(digits, -decimals - 3), QuantityText.ParseDuration(text).Seconds);
    }

    [Property]
    public void ParseCharge_AnyDecimalOfMilliampereHours_IsRoundedOnce(ulong digits, byte places)
    {
        var decimals = places % 19;
        var expected = ExactRounding.Nearest(new BigInteger(digits) * 36, -decimals - 1);

        Assert.Equal(expected, QuantityText.ParseCharge($"{digits}e-{decimals} mAh").Coulombs);
    }

    [Property]
    public void ParseTemperature_AnyDecimalOfCelsius_AgreesWithSystemDecimal(int hundredths)
    {
        var celsius = hundredths / 100m;
        var expected = ExactRounding.Nearest(hundredths + 27315L, -2);

        Assert.Equal(expected, QuantityText.ParseTemperature($"{celsius} \u00B0C").Kelvins);
        Assert.Equal(expected, double.Parse($"{celsius + 273.15m}", null));
    }

    [Fact]
    public void ParseDuration_ExtremesOfADouble_AreHeld()
    {
        Assert.Equal(double.Epsilon, QuantityText.ParseDuration("5e-324 s").Seconds);
        Assert.Equal(double.MaxValue, QuantityText.ParseDuration("1.7976931348623157e311 ms").Seconds);
        Assert.Equal(0, QuantityText.ParseDuration("0e9999 s").Seconds);
        Assert.Equal(273.15, QuantityText.ParseTemperature("1e-9999 \u00B0C").Kelvins);
        Assert.Equal(0, QuantityText.ParseTemperature("-273.15 \u00B0C").Kelvins);
    }

    [Fact]
    public void ParsePower_SeventeenDigits_AreHeld() =>
        Assert.Equal(0.12345678901234566m, QuantityText.ParsePower("123.45678901234566 mW").Value);

    [Fact]
    public void TryParse_RightText_GivesNoError()
    {
        Assert.True(QuantityText.TryParseFrequency("160 MHz", out var value, out var error));
        Assert.Equal(Frequency.FromHertz(160e6), value);
        Assert.Null(error);
    }

    [Fact]
    public void TryParse_WrongText_GivesTheErrorThatParseThrows()
    {
        Assert.False(QuantityText.TryParseFrequency("160", out var value, out var error));
        Assert.Equal(default, value);

        var thrown = Assert.Throws<QuantityFormatException>(() => QuantityText.ParseFrequency("160"));
        Assert.Equal(error, thrown.Error);
        Assert.Equal(error.Message, thrown.Message);
    }

    /// <summary>Each unit is read as the size given, alone and under a number that a product of doubles gets wrong.</summary>
    private static void AssertAll<T>(
        Parser<T> parse,
        Func<T, double> value,
        string siUnit,
        params ReadOnlySpan<(string Symbol, double Size)> units
    )
        where T : struct, IQuantity
    {
        foreach (var (symbol, size) in units)
        {
            var quantity = parse($"1 {symbol}");

            Assert.Equal(size, value(quantity));
            Assert.Equal(siUnit, quantity.ToString("a", null));
        }
    }

    private delegate T Parser<T>(ReadOnlySpan<char> text);
}
