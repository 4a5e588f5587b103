using FsCheck.Xunit;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Quantities;

public class QuantityColumnTests
{
    [Theory]
    [InlineData("time [ms]", "time", "ms")]
    [InlineData("  run time  [ \u00B5s ] ", "run time", "us")]
    [InlineData("t[min]", "t", "min")]
    public void OfHead_NameAndUnit_GivesBoth(string head, string name, string unit)
    {
        var column = QuantityColumn.OfHead<Duration>(head);

        Assert.Equal(name, column.Name);
        Assert.Equal(unit, column.Unit);
        Assert.Equal($"{name} [{unit}]", column.ToString());
    }

    [Fact]
    public void Parse_BareNumber_IsTheNearestDoubleInSi()
    {
        Assert.Equal(Duration.FromSeconds(0.4121), QuantityColumn.OfHead<Duration>("time [ms]").Parse(" 412.1 "));
        Assert.Equal(
            ElectricCharge.FromCoulombs(3.96),
            QuantityColumn.OfHead<ElectricCharge>("drawn [mA\u00B7h]").Parse("1.1")
        );
        Assert.Equal(
            Temperature.FromKelvins(296.45),
            QuantityColumn.OfHead<Temperature>("room [\u00B0C]").Parse("23.3")
        );
        Assert.Equal(Power.FromWatts(0.0011m), QuantityColumn.OfHead<Power>("draw [mW]").Parse("1.1"));
    }

    [Property]
    public void Parse_AnyCell_ReadsAsTheSameTextWithItsUnit(double value)
    {
        if (double.IsFinite(value) && Math.Abs(value) is > 1e-300 or 0)
        {
            Assert.Equal(
                QuantityText.ParseCurrent($"{value:R} uA"),
                QuantityColumn.OfHead<ElectricCurrent>("i [uA]").Parse($"{value:R}")
            );
        }
    }

    [Theory]
    [InlineData("time")]
    [InlineData("time []")]
    [InlineData("time [ ]")]
    public void OfHead_NoUnit_IsRefused(string head) =>
        AssertRefused(
            QuantityTextErrorKind.NoUnit,
            $"Head \"{head}\" has no unit; that of a duration was expected. "
                + "Write the unit in brackets behind the name, such as \"time [ms]\".",
            head
        );

    [Theory]
    [InlineData("")]
    [InlineData("[ms]")]
    [InlineData("time [ms")]
    [InlineData("time ms]")]
    [InlineData("time [ms] x")]
    [InlineData("a [b] [ms]")]
    [InlineData("time ]ms[")]
    public void OfHead_Malformed_IsRefused(string head) =>
        AssertRefused(
            QuantityTextErrorKind.MalformedHead,
            $"Head \"{head}\" is malformed; a name and a unit in brackets were expected. Write \"name [ms]\".",
            head
        );

    [Theory]
    [InlineData("time [MS]", "MS", "Write \"time [ms]\"; capitals count in units.")]
    [InlineData("time [sec]", "sec", "Write \"time [s]\".")]
    [InlineData("time [xyz]", "xyz", "Give the unit as one of s, ms, us, ns, min, h, d.")]
    public void OfHead_UnknownUnit_IsRefused(string head, string unit, string mend) =>
        AssertRefused(
            QuantityTextErrorKind.UnknownUnit,
            $"Head \"{head}\" has the unknown unit \"{unit}\"; that of a duration was expected. {mend}",
            head
        );

    [Fact]
    public void OfHead_UnitOfAnotherKind_IsRefused() =>
        AssertRefused(
            QuantityTextErrorKind.WrongQuantity,
            "Head \"time [Hz]\" has Hz, the unit of a frequency; that of a duration was expected. "
                + "Give the unit as one of s, ms, us, ns, min, h, d.",
            "time [Hz]"
        );

    [Fact]
    public void OfHead_TwoHundredAndOneCharacters_IsRefused()
    {
        Assert.Equal(195, QuantityColumn.OfHead<Duration>(new string('n', 195) + " [ms]").Name.Length);
        AssertRefused(
            QuantityTextErrorKind.TooLong,
            $"Head \"{new string('n', 40)}\u2026\" has 201 characters; at most 200 were expected. Shorten the name.",
            new string('n', 196) + " [ms]"
        );
    }

    [Theory]
    [InlineData(
        "",
        QuantityTextErrorKind.Empty,
        "Nothing was given; a duration was expected. Write one bare number, in the ms of the column's head."
    )]
    [InlineData(
        "x",
        QuantityTextErrorKind.NoNumber,
        "\"x\" does not begin with one plain number; a duration was expected. Write one bare number, in the ms of the column's head."
    )]
    [InlineData(
        "412,1",
        QuantityTextErrorKind.DecimalComma,
        "\"412,1\" has a decimal comma; a decimal point was expected. Write \"412.1\"."
    )]
    [InlineData(
        "NaN",
        QuantityTextErrorKind.NotFinite,
        "\"NaN\" is no finite number; a duration was expected. Leave out what was not measured."
    )]
    [InlineData(
        "412.1 s",
        QuantityTextErrorKind.UnitInCell,
        "\"412.1 s\" has \"s\" behind the number; a bare number was expected, as the column's head gives ms. Write \"412.1\" if it is in ms, or convert it."
    )]
    [InlineData(
        "1e400",
        QuantityTextErrorKind.OutOfRange,
        "\"1e400\" cannot be held; a duration of size 0 or 4.9e-324 to 1.8e+308 in the SI unit was expected. Check the exponent."
    )]
    public void Parse_NoBareNumber_IsRefused(string cell, QuantityTextErrorKind kind, string message)
    {
        var column = QuantityColumn.OfHead<Duration>("time [ms]");

        var error = Assert.Throws<QuantityFormatException>(() => column.Parse(cell)).Error;

        Assert.Equal(message, error.Message);
        Assert.Equal(kind, error.Kind);
        Assert.False(column.TryParse(cell, out var value, out var sameError));
        Assert.Equal(default, value);
        Assert.Equal(error, sameError);
    }

    [Fact]
    public void OfHead_QuantityWithoutNotation_Throws() =>
        Assert.Equal(
            "Quantity must be one of Duration, Frequency, ElectricCurrent, ElectricPotential, ElectricCharge, Energy, "
                + "Power, Temperature, ElectricResistance, Ratio; was Length.",
            Assert.Throws<NotSupportedException>(() => QuantityColumn.OfHead<Length>("length [m]")).Message
        );

    private static void AssertRefused(QuantityTextErrorKind kind, string message, string head)
    {
        var error = Assert.Throws<QuantityFormatException>(() => QuantityColumn.OfHead<Duration>(head)).Error;

        Assert.Equal(message, error.Message);
        Assert.Equal(kind, error.Kind);
        Assert.False(QuantityColumn.TryOfHead<Duration>(head, out var column, out var sameError));
        Assert.Null(column);
        Assert.Equal(error, sameError);
    }
}
