using FsCheck.Xunit;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Quantities;

public class QuantityTextFormatTests
{
    [Theory]
    [InlineData(0.4121, "412.1 ms")]
    [InlineData(1, "1 s")]
    [InlineData(0.001, "1 ms")]
    [InlineData(0.9999, "999.9 ms")]
    [InlineData(-3.3e-6, "-3.3 us")]
    [InlineData(1e-9, "1 ns")]
    [InlineData(5e-10, "0.5 ns")]
    [InlineData(1.5e-12, "0.0015 ns")]
    [InlineData(4.7e-15, "4.7e-15 s")]
    [InlineData(2400, "2400 s")]
    [InlineData(90061, "90061 s")]
    [InlineData(999999.5, "999999.5 s")]
    [InlineData(1e6, "1e6 s")]
    [InlineData(-1.25e30, "-1.25e30 s")]
    [InlineData(0.1 + 0.2, "300.00000000000004 ms")]
    [InlineData(0.0, "0 s")]
    [InlineData(-0.0, "-0 s")]
    [InlineData(double.Epsilon, "5e-324 s")]
    [InlineData(double.MaxValue, "1.7976931348623157e308 s")]
    public void Format_Seconds_TakesThePrefix(double seconds, string expected) =>
        Assert.Equal(expected, QuantityText.Format(Duration.FromSeconds(seconds)));

    [Fact]
    public void Format_OtherQuantities_TakeTheirUnits()
    {
        Assert.Equal("168 MHz", QuantityText.Format(Frequency.FromMegahertz(168)));
        Assert.Equal("0.5 Hz", QuantityText.Format(Frequency.FromHertz(0.5)));
        Assert.Equal("5000 GHz", QuantityText.Format(Frequency.FromHertz(5e12)));
        Assert.Equal("12 uA", QuantityText.Format(ElectricCurrent.FromMicroamperes(12)));
        Assert.Equal("3.3 V", QuantityText.Format(ElectricPotential.FromVolts(3.3)));
        Assert.Equal("3.6 C", QuantityText.Format(ElectricCharge.FromMilliampereHours(1)));
        Assert.Equal("18 J", QuantityText.Format(Energy.FromWattHours(0.005)));
        Assert.Equal("40 mW", QuantityText.Format(Power.FromMilliwatts(40)));
        Assert.Equal("296.45 K", QuantityText.Format(Temperature.FromDegreesCelsius(23.3)));
        Assert.Equal("4.7 kohm", QuantityText.Format(ElectricResistance.FromKiloohms(4.7)));
        Assert.Equal("20 %", QuantityText.Format(Ratio.FromDecimalFractions(0.2)));
        Assert.Equal("25000 %", QuantityText.Format(Ratio.FromDecimalFractions(250)));
        Assert.Equal("0.41 %", QuantityText.Format(Ratio.FromDecimalFractions(0.0041)));
        Assert.Equal("0.01 %", QuantityText.Format(Ratio.FromDecimalFractions(0.0001)));
        Assert.Equal("99 ppm", QuantityText.Format(Ratio.FromDecimalFractions(0.000099)));
        Assert.Equal("0 %", QuantityText.Format(Ratio.FromDecimalFractions(0)));
    }

    [Fact]
    public void Format_Typographic_HasMicroMinusOmegaAndThinSpace()
    {
        Assert.Equal(
            "\u22123.3\u202F\u00B5s",
            QuantityText.Format(Duration.FromMicroseconds(-3.3), TextForm.Typographic)
        );
        Assert.Equal(
            "4.7\u202Fk\u03A9",
            QuantityText.Format(ElectricResistance.FromKiloohms(4.7), TextForm.Typographic)
        );
        Assert.Equal("4.7e\u221215\u202Fs", QuantityText.Format(Duration.FromSeconds(4.7e-15), TextForm.Typographic));
    }

    [Property(MaxTest = 1000)]
    public void Format_AnyDouble_ReadsBackTheSameBits(long bits, bool typographic)
    {
        // Small numbers spread over all bit patterns, so that every exponent is as likely as another.
        var si = BitConverter.UInt64BitsToDouble(unchecked((ulong)bits * 0x9E3779B97F4A7C15));
        var form = typographic ? TextForm.Typographic : TextForm.Ascii;
        if (!double.IsFinite(si))
        {
            return;
        }

        AssertSame(si, QuantityText.ParseDuration(QuantityText.Format(Si.Duration(si), form)).Value);
        AssertSame(si, QuantityText.ParseFrequency(QuantityText.Format(Si.Frequency(si), form)).Value);
        AssertSame(si, QuantityText.ParseCurrent(QuantityText.Format(Si.Current(si), form)).Value);
        AssertSame(si, QuantityText.ParseVoltage(QuantityText.Format(Si.Voltage(si), form)).Value);
        AssertSame(si, QuantityText.ParseCharge(QuantityText.Format(Si.Charge(si), form)).Value);
        AssertSame(si, QuantityText.ParseEnergy(QuantityText.Format(Si.Energy(si), form)).Value);
        AssertSame(si, QuantityText.ParseTemperature(QuantityText.Format(Si.Temperature(si), form)).Value);
        AssertSame(si, QuantityText.ParseResistance(QuantityText.Format(Si.Resistance(si), form)).Value);
        AssertSame(si, QuantityText.ParseRatio(QuantityText.Format(Si.Ratio(si), form)).Value);
    }

    [Property]
    public void Format_AnyDenormal_ReadsBackTheSameBits(ushort bits, byte shift)
    {
        var seconds = BitConverter.Int64BitsToDouble((long)bits << (shift % 36));

        AssertSame(seconds, QuantityText.ParseDuration(QuantityText.Format(Si.Duration(seconds))).Value);
    }

    [Property(MaxTest = 1000)]
    public void Format_DoublesOfTheBench_HaveAMantissaFromOneToAThousand(int mantissa, byte decade)
    {
        var seconds = mantissa / 7.0 * Math.Pow(10, (decade % 16) - 18);
        if (Math.Abs(seconds) is < 1e-9 or >= 1000)
        {
            return;
        }

        var text = QuantityText.Format(Duration.FromSeconds(seconds));

        Assert.InRange(Math.Abs(double.Parse(text.Split(' ')[0], null)), 1, Math.BitDecrement(1000));
        AssertSame(seconds, QuantityText.ParseDuration(text).Value);
    }

    [Property(MaxTest = 1000)]
    public void Format_AnyNormalizedPower_ReadsBackTheSame(int mantissa, byte decade)
    {
        var power = Si.Power(mantissa / 7.0 * Math.Pow(10, (decade % 40) - 25));

        Assert.Equal(power, QuantityText.ParsePower(QuantityText.Format(power)));
    }

    [Fact]
    public void Format_QuantityWithoutNotation_Throws() =>
        Assert.Throws<NotSupportedException>(() => QuantityText.Format(Length.FromMeters(1)));

    private static void AssertSame(double expected, double actual) =>
        Assert.Equal(BitConverter.DoubleToInt64Bits(expected), BitConverter.DoubleToInt64Bits(actual));
}
