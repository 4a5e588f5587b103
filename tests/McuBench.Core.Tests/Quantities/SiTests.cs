using System.Globalization;
using FsCheck.Xunit;
using McuBench.Core.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace McuBench.Core.Tests.Quantities;

public class SiTests
{
    [Fact]
    public void Doubles_OfTheTradesUnits_AreTheNearestToTheDecimal()
    {
        Assert.Equal(0.4121, Si.Seconds(Duration.FromMilliseconds(412.1)));
        Assert.Equal(0.0011, Si.Seconds(Duration.FromMilliseconds(1.1)));
        Assert.Equal(3.3e-6, Si.Seconds(Duration.FromMicroseconds(3.3)));
        Assert.Equal(7.7e-9, Si.Seconds(Duration.FromNanoseconds(7.7)));
        Assert.Equal(90, Si.Seconds(Duration.FromMinutes(1.5)));
        Assert.Equal(360, Si.Seconds(Duration.FromHours(0.1)));
        Assert.Equal(86400, Si.Seconds(Duration.FromDays(1)));
        Assert.Equal(168e6, Si.Hertz(Frequency.FromMegahertz(168)));
        Assert.Equal(32768, Si.Hertz(Frequency.FromKilohertz(32.768)));
        Assert.Equal(1.1e9, Si.Hertz(Frequency.FromGigahertz(1.1)));
        Assert.Equal(0.0011, Si.Amperes(ElectricCurrent.FromMilliamperes(1.1)));
        Assert.Equal(3.3e-6, Si.Amperes(ElectricCurrent.FromMicroamperes(3.3)));
        Assert.Equal(7.7e-9, Si.Amperes(ElectricCurrent.FromNanoamperes(7.7)));
        Assert.Equal(0.0011, Si.Volts(ElectricPotential.FromMillivolts(1.1)));
        Assert.Equal(3.3e-6, Si.Volts(ElectricPotential.FromMicrovolts(3.3)));
        Assert.Equal(1100, Si.Volts(ElectricPotential.FromKilovolts(1.1)));
        Assert.Equal(0.0011, Si.Coulombs(ElectricCharge.FromMillicoulombs(1.1)));
        Assert.Equal(3.6, Si.Coulombs(ElectricCharge.FromMilliampereHours(1)));
        Assert.Equal(3960, Si.Coulombs(ElectricCharge.FromAmpereHours(1.1)));
        Assert.Equal(0.0011, Si.Joules(Energy.FromMillijoules(1.1)));
        Assert.Equal(3960, Si.Joules(Energy.FromWattHours(1.1)));
        Assert.Equal(3.96e6, Si.Joules(Energy.FromKilowattHours(1.1)));
        Assert.Equal(3.96e9, Si.Joules(Energy.FromMegawattHours(1.1)));
        Assert.Equal(0.0011, Si.Watts(Power.FromMilliwatts(1.1)));
        Assert.Equal(3.3e-6, Si.Watts(Power.FromMicrowatts(3.3)));
        Assert.Equal(296.45, Si.Kelvins(Temperature.FromDegreesCelsius(23.3)));
        Assert.Equal(0, Si.Kelvins(Temperature.FromDegreesCelsius(-273.15)));
        Assert.Equal(0.0011, Si.Ohms(ElectricResistance.FromMilliohms(1.1)));
        Assert.Equal(4700, Si.Ohms(ElectricResistance.FromKiloohms(4.7)));
        Assert.Equal(0.011, Si.Fraction(Ratio.FromPercent(1.1)));
        Assert.Equal(1.1e-6, Si.Fraction(Ratio.FromPartsPerMillion(1.1)));
        Assert.Equal(3.3e-9, Si.Fraction(Ratio.FromPartsPerBillion(3.3)));
    }

    [Property]
    public void Seconds_OfAnyDecimalNumberOfMilliseconds_AgreeWithSystemDecimal(int tenths)
    {
        var milliseconds = tenths / 10m;
        var expected = ExactRounding.Nearest(tenths, -4);

        Assert.Equal(expected, Si.Seconds(Duration.FromMilliseconds((double)milliseconds)));
    }

    [Fact]
    public void Doubles_OfAUnitOutsideTheTable_TakeTheLibrarysConversion()
    {
        Assert.Equal(604800, Si.Seconds(Duration.FromWeeks(1)));
        Assert.Equal(1e12, Si.Hertz(Frequency.FromTerahertz(1)));
        Assert.Equal(310.15, Si.Kelvins(Temperature.FromDegreesFahrenheit(98.6)), 1e-12);
        Assert.Equal(1e9, Si.Watts(Power.FromGigawatts(1)));
    }

    [Fact]
    public void Normalized_EqualValuesInOtherUnits_AreEqual()
    {
        AssertSame(Duration.FromSeconds(2.4), Duration.FromMilliseconds(2400), q => Si.Normalized(q));
        AssertSame(Frequency.FromHertz(48e6), Frequency.FromMegahertz(48), q => Si.Normalized(q));
        AssertSame(ElectricCurrent.FromAmperes(0.031), ElectricCurrent.FromMilliamperes(31), q => Si.Normalized(q));
        AssertSame(ElectricPotential.FromVolts(3.3), ElectricPotential.FromMillivolts(3300), q => Si.Normalized(q));
        AssertSame(ElectricCharge.FromCoulombs(3.6), ElectricCharge.FromMilliampereHours(1), q => Si.Normalized(q));
        AssertSame(Energy.FromJoules(3600), Energy.FromWattHours(1), q => Si.Normalized(q));
        AssertSame(Power.FromWatts(0.0310m), Power.FromMilliwatts(31), q => Si.Normalized(q));
        AssertSame(Temperature.FromKelvins(293.15), Temperature.FromDegreesCelsius(20), q => Si.Normalized(q));
        AssertSame(ElectricResistance.FromOhms(0.1), ElectricResistance.FromMilliohms(100), q => Si.Normalized(q));
        AssertSame(Ratio.FromDecimalFractions(0.2), Ratio.FromPercent(20), q => Si.Normalized(q));

        static void AssertSame<T>(T si, T other, Func<T, T> normalized)
            where T : IQuantity
        {
            Assert.Equal(si, normalized(other));
            Assert.Equal(si, normalized(si));
            Assert.Equal(si.QuantityInfo.BaseUnitInfo.Value, normalized(other).Unit);
        }
    }

    [Property]
    public void Quantities_OfAnyDouble_KeepItsBits(double value)
    {
        if (!double.IsFinite(value))
        {
            return;
        }

        Assert.Equal(value, Si.Seconds(Si.Duration(value)));
        Assert.Equal(value, Si.Hertz(Si.Frequency(value)));
        Assert.Equal(value, Si.Amperes(Si.Current(value)));
        Assert.Equal(value, Si.Volts(Si.Voltage(value)));
        Assert.Equal(value, Si.Coulombs(Si.Charge(value)));
        Assert.Equal(value, Si.Joules(Si.Energy(value)));
        Assert.Equal(value, Si.Kelvins(Si.Temperature(value)));
        Assert.Equal(value, Si.Ohms(Si.Resistance(value)));
        Assert.Equal(value, Si.Fraction(Si.Ratio(value)));
    }

    [Property]
    public void Power_OfADoubleThatADecimalCanHold_KeepsItsBits(int mantissa, byte decade)
    {
        // Full 17 digits from 1e-11 W to 1e12 W.
        var watts = mantissa / 3.0 * Math.Pow(10, (decade % 15) - 10);

        Assert.Equal(watts, Si.Watts(Si.Power(watts)));
    }

    [Theory]
    [InlineData(double.NaN, "Power in watts must be finite; was NaN.")]
    [InlineData(1e29, "Power must be zero or between 1e-28 W and 7.9e28 W in size; was 1E+29 W.")]
    [InlineData(-9e-29, "Power must be zero or between 1e-28 W and 7.9e28 W in size; was -9E-29 W.")]
    public void Power_BeyondADecimal_Throws(double watts, string message) =>
        AssertRefused(message, () => Si.Power(watts, "draw"), "draw");

    [Theory]
    [InlineData(double.NaN, "NaN")]
    [InlineData(double.PositiveInfinity, "Infinity")]
    [InlineData(double.NegativeInfinity, "-Infinity")]
    public void Quantities_NotFinite_Throw(double value, string was)
    {
        AssertRefused($"Duration in seconds must be finite; was {was}.", () => Si.Duration(value));
        AssertRefused($"Frequency in hertz must be finite; was {was}.", () => Si.Frequency(value));
        AssertRefused($"Current in amperes must be finite; was {was}.", () => Si.Current(value));
        AssertRefused($"Voltage in volts must be finite; was {was}.", () => Si.Voltage(value));
        AssertRefused($"Charge in coulombs must be finite; was {was}.", () => Si.Charge(value));
        AssertRefused($"Energy in joules must be finite; was {was}.", () => Si.Energy(value));
        AssertRefused($"Temperature in kelvins must be finite; was {was}.", () => Si.Temperature(value));
        AssertRefused($"Resistance in ohms must be finite; was {was}.", () => Si.Resistance(value));
        AssertRefused($"Ratio must be finite; was {was}.", () => Si.Ratio(value));
    }

    [Fact]
    public void Normalized_OverflowsInSi_ThrowsUnderTheCallersName() =>
        AssertRefused(
            "Duration must be within the range of a double in seconds; was 1E+308 Hour.",
            () => Si.Normalized(Duration.FromHours(1e308), "runTime"),
            "runTime"
        );

    private static void AssertRefused(string message, Func<object> action, string name = "value")
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(name, action);
        Assert.StartsWith(message, fault.Message, StringComparison.Ordinal);
    }
}
