using McuBench.Core.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace McuBench.Core.Tests.Quantities;

/// <summary>A unit means the same whether a program gives it or a text does.</summary>
public class SiAgainstTextTests
{
    [Theory]
    [InlineData(DurationUnit.Nanosecond, "ns")]
    [InlineData(DurationUnit.Microsecond, "us")]
    [InlineData(DurationUnit.Millisecond, "ms")]
    [InlineData(DurationUnit.Second, "s")]
    [InlineData(DurationUnit.Minute, "min")]
    [InlineData(DurationUnit.Hour, "h")]
    [InlineData(DurationUnit.Day, "d")]
    public void Normalized_DurationInAnyUnitOfTheTable_IsWhatTheTextGives(DurationUnit unit, string symbol) =>
        Assert.Equal(QuantityText.ParseDuration($"7.7 {symbol}"), Si.Normalized(new Duration(7.7, unit)));

    [Theory]
    [InlineData(FrequencyUnit.Hertz, "Hz")]
    [InlineData(FrequencyUnit.Kilohertz, "kHz")]
    [InlineData(FrequencyUnit.Megahertz, "MHz")]
    [InlineData(FrequencyUnit.Gigahertz, "GHz")]
    public void Normalized_FrequencyInAnyUnitOfTheTable_IsWhatTheTextGives(FrequencyUnit unit, string symbol) =>
        Assert.Equal(QuantityText.ParseFrequency($"7.7 {symbol}"), Si.Normalized(new Frequency(7.7, unit)));

    [Theory]
    [InlineData(ElectricCurrentUnit.Picoampere, "pA")]
    [InlineData(ElectricCurrentUnit.Nanoampere, "nA")]
    [InlineData(ElectricCurrentUnit.Microampere, "uA")]
    [InlineData(ElectricCurrentUnit.Milliampere, "mA")]
    [InlineData(ElectricCurrentUnit.Ampere, "A")]
    public void Normalized_ElectricCurrentInAnyUnitOfTheTable_IsWhatTheTextGives(
        ElectricCurrentUnit unit,
        string symbol
    ) => Assert.Equal(QuantityText.ParseCurrent($"7.7 {symbol}"), Si.Normalized(new ElectricCurrent(7.7, unit)));

    [Theory]
    [InlineData(ElectricPotentialUnit.Nanovolt, "nV")]
    [InlineData(ElectricPotentialUnit.Microvolt, "uV")]
    [InlineData(ElectricPotentialUnit.Millivolt, "mV")]
    [InlineData(ElectricPotentialUnit.Volt, "V")]
    [InlineData(ElectricPotentialUnit.Kilovolt, "kV")]
    public void Normalized_ElectricPotentialInAnyUnitOfTheTable_IsWhatTheTextGives(
        ElectricPotentialUnit unit,
        string symbol
    ) => Assert.Equal(QuantityText.ParseVoltage($"7.7 {symbol}"), Si.Normalized(new ElectricPotential(7.7, unit)));

    [Theory]
    [InlineData(ElectricChargeUnit.Picocoulomb, "pC")]
    [InlineData(ElectricChargeUnit.Nanocoulomb, "nC")]
    [InlineData(ElectricChargeUnit.Microcoulomb, "uC")]
    [InlineData(ElectricChargeUnit.Millicoulomb, "mC")]
    [InlineData(ElectricChargeUnit.Coulomb, "C")]
    [InlineData(ElectricChargeUnit.Kilocoulomb, "kC")]
    [InlineData(ElectricChargeUnit.MilliampereHour, "mAh")]
    [InlineData(ElectricChargeUnit.AmpereHour, "Ah")]
    public void Normalized_ElectricChargeInAnyUnitOfTheTable_IsWhatTheTextGives(
        ElectricChargeUnit unit,
        string symbol
    ) => Assert.Equal(QuantityText.ParseCharge($"7.7 {symbol}"), Si.Normalized(new ElectricCharge(7.7, unit)));

    [Theory]
    [InlineData(EnergyUnit.Nanojoule, "nJ")]
    [InlineData(EnergyUnit.Microjoule, "uJ")]
    [InlineData(EnergyUnit.Millijoule, "mJ")]
    [InlineData(EnergyUnit.Joule, "J")]
    [InlineData(EnergyUnit.Kilojoule, "kJ")]
    [InlineData(EnergyUnit.Megajoule, "MJ")]
    [InlineData(EnergyUnit.WattHour, "Wh")]
    [InlineData(EnergyUnit.KilowattHour, "kWh")]
    [InlineData(EnergyUnit.MegawattHour, "MWh")]
    public void Normalized_EnergyInAnyUnitOfTheTable_IsWhatTheTextGives(EnergyUnit unit, string symbol) =>
        Assert.Equal(QuantityText.ParseEnergy($"7.7 {symbol}"), Si.Normalized(new Energy(7.7, unit)));

    [Theory]
    [InlineData(PowerUnit.Picowatt, "pW")]
    [InlineData(PowerUnit.Nanowatt, "nW")]
    [InlineData(PowerUnit.Microwatt, "uW")]
    [InlineData(PowerUnit.Milliwatt, "mW")]
    [InlineData(PowerUnit.Watt, "W")]
    [InlineData(PowerUnit.Kilowatt, "kW")]
    [InlineData(PowerUnit.Megawatt, "MW")]
    public void Normalized_PowerInAnyUnitOfTheTable_IsWhatTheTextGives(PowerUnit unit, string symbol) =>
        Assert.Equal(QuantityText.ParsePower($"7.7 {symbol}"), Si.Normalized(new Power(7.7m, unit)));

    [Theory]
    [InlineData(TemperatureUnit.Kelvin, "K")]
    [InlineData(TemperatureUnit.DegreeCelsius, "degC")]
    public void Normalized_TemperatureInAnyUnitOfTheTable_IsWhatTheTextGives(TemperatureUnit unit, string symbol) =>
        Assert.Equal(QuantityText.ParseTemperature($"7.7 {symbol}"), Si.Normalized(new Temperature(7.7, unit)));

    [Theory]
    [InlineData(ElectricResistanceUnit.Microohm, "uohm")]
    [InlineData(ElectricResistanceUnit.Milliohm, "mohm")]
    [InlineData(ElectricResistanceUnit.Ohm, "ohm")]
    [InlineData(ElectricResistanceUnit.Kiloohm, "kohm")]
    [InlineData(ElectricResistanceUnit.Megaohm, "Mohm")]
    public void Normalized_ElectricResistanceInAnyUnitOfTheTable_IsWhatTheTextGives(
        ElectricResistanceUnit unit,
        string symbol
    ) => Assert.Equal(QuantityText.ParseResistance($"7.7 {symbol}"), Si.Normalized(new ElectricResistance(7.7, unit)));

    [Theory]
    [InlineData(RatioUnit.PartPerBillion, "ppb")]
    [InlineData(RatioUnit.PartPerMillion, "ppm")]
    [InlineData(RatioUnit.Percent, "%")]
    public void Normalized_RatioInAnyUnitOfTheTable_IsWhatTheTextGives(RatioUnit unit, string symbol) =>
        Assert.Equal(QuantityText.ParseRatio($"7.7 {symbol}"), Si.Normalized(new Ratio(7.7, unit)));
}
