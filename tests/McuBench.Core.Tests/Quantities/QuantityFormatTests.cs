using FsCheck.Xunit;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Quantities;

public sealed class QuantityFormatTests
{
    [Theory]
    [InlineData(0.4121, "412.1 ms")]
    [InlineData(2.4, "2.4 s")]
    [InlineData(0, "0 s")]
    [InlineData(1e-6, "1 us")]
    [InlineData(90061, "90061 s")]
    [InlineData(-0.001, "-1 ms")]
    [InlineData(1e-12, "0.001 ns")]
    [InlineData(1e22, "1e22 s")]
    [InlineData(0.1 + 0.2, "300.00000000000004 ms")]
    public void Format_Duration_ReadsWell(double seconds, string text) =>
        Assert.Equal(text, QuantityText.Format(Duration.FromSeconds(seconds)));

    [Fact]
    public void Format_EachKind_TakesItsPrefix()
    {
        Assert.Equal("160 MHz", QuantityText.Format(Frequency.FromMegahertz(160)));
        Assert.Equal("12 mA", QuantityText.Format(ElectricCurrent.FromMilliamperes(12)));
        Assert.Equal("3.3 V", QuantityText.Format(ElectricPotential.FromVolts(3.3)));
        Assert.Equal("3.6 C", QuantityText.Format(ElectricCharge.FromMilliampereHours(1)));
        Assert.Equal("3.6 kJ", QuantityText.Format(Energy.FromWattHours(1)));
        Assert.Equal("40 mW", QuantityText.Format(Power.FromMilliwatts(40)));
        Assert.Equal("296.15 K", QuantityText.Format(Temperature.FromDegreesCelsius(23)));
        Assert.Equal("100 mohm", QuantityText.Format(ElectricResistance.FromOhms(0.1)));
        Assert.Equal("2 %", QuantityText.Format(Ratio.FromPercent(2)));
        Assert.Equal("50 ppm", QuantityText.Format(Ratio.FromPartsPerMillion(50)));
        Assert.Equal("0 %", QuantityText.Format(Ratio.Zero));
    }

    [Property]
    public bool Format_AnyDuration_ReadsBackToTheBit(double seconds) =>
        !double.IsFinite(seconds)
        || BitConverter.DoubleToInt64Bits(
            QuantityText.ParseDuration(QuantityText.Format(Duration.FromSeconds(seconds))).Seconds
        ) == BitConverter.DoubleToInt64Bits(seconds);

    [Property]
    public bool Format_AnyBitPattern_ReadsBackToTheBit(long bits)
    {
        var ohms = BitConverter.Int64BitsToDouble(bits);
        return !double.IsFinite(ohms)
            || BitConverter.DoubleToInt64Bits(
                QuantityText.ParseResistance(QuantityText.Format(ElectricResistance.FromOhms(ohms))).Ohms
            ) == bits;
    }
}
