using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using McuBench.Core.Quantities;

namespace McuBench.Core.Tests.Quantities;

public class QuantityTextRefusalTests
{
    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" \t\u00A0")]
    public void ParseCurrent_Nothing_IsRefused(string? text) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.Empty,
            "Nothing was given; a current was expected. Write one number and its unit, such as 12 mA."
        );

    [Fact]
    public void ParseCurrent_SixtyFourCharacters_IsRead() =>
        Assert.Equal(0.001, QuantityText.ParseCurrent("1".PadRight(62, ' ') + "mA").Amperes);

    [Fact]
    public void ParseCurrent_SixtyFiveCharacters_IsRefused() =>
        AssertCurrentRefused(
            new string('1', 63) + "mA",
            QuantityTextErrorKind.TooLong,
            $"\"{new string('1', 40)}\u2026\" has 65 characters; a current of at most 64 was expected. "
                + "Write fewer digits: a double holds 17."
        );

    [Theory]
    [InlineData("abc")]
    [InlineData("mA")]
    [InlineData("- mA")]
    [InlineData("1.2.3 mA")]
    [InlineData("1 2 mA")]
    [InlineData("12 .5 mA")]
    [InlineData("1,2,3 mA")]
    [InlineData("1,000,00 mA")]
    [InlineData("1,000 000 mA")]
    [InlineData("1.000'5 mA")]
    [InlineData("--1 mA")]
    [InlineData(",123.456 mA")]
    [InlineData("\u0661 mA")]
    public void ParseCurrent_NoPlainNumber_IsRefused(string text) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.NoNumber,
            $"\"{text}\" does not begin with one plain number; a current was expected. "
                + "Write one number and its unit, such as 12 mA."
        );

    [Theory]
    [InlineData("NaN mA")]
    [InlineData("nan")]
    [InlineData("-inf mA")]
    [InlineData("+Infinity A")]
    [InlineData("\u2212\u221E A")]
    public void ParseCurrent_WordForNoFiniteNumber_IsRefused(string text) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.NotFinite,
            $"\"{text}\" is no finite number; a current was expected. Leave out what was not measured."
        );

    [Theory]
    [InlineData("31,5 mA", "31.5 mA")]
    [InlineData("-31,5 mA", "-31.5 mA")]
    [InlineData("0,125 mA", "0.125 mA")]
    [InlineData("1234,567 mA", "1234.567 mA")]
    [InlineData("1.234,5 mA", "1234.5 mA")]
    [InlineData("1 234,5 mA", "1234.5 mA")]
    [InlineData("1.234.567,8 mA", "1234567.8 mA")]
    [InlineData("1,5e3 mA", "1.5e3 mA")]
    [InlineData("31,5", "31.5")]
    public void ParseCurrent_DecimalComma_IsRefused(string text, string mended) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.DecimalComma,
            $"\"{text}\" has a decimal comma; a decimal point was expected. Write \"{mended}\"."
        );

    [Theory]
    [InlineData("1,000 mA", "\"1000 mA\", or \"1.000 mA\" if the comma is a decimal one")]
    [InlineData("1,234,567 mA", "\"1234567 mA\"")]
    [InlineData("1,234.5 mA", "\"1234.5 mA\"")]
    [InlineData("12 345.5 mA", "\"12345.5 mA\"")]
    [InlineData("-1 000 mA", "\"-1000 mA\"")]
    [InlineData("1\u202F000\u202F000 mA", "\"1000000 mA\"")]
    [InlineData("1'000 mA", "\"1000 mA\"")]
    [InlineData("1\u2019000 mA", "\"1000 mA\"")]
    [InlineData("1_000 mA", "\"1000 mA\"")]
    [InlineData("1.234.567 mA", "\"1234567 mA\"")]
    public void ParseCurrent_GroupedDigits_IsRefused(string text, string mend) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.DigitGrouping,
            $"\"{text}\" has grouped digits; digits without marks between them were expected. Write {mend}."
        );

    [Fact]
    public void ParseCurrent_BareNumber_IsRefused() =>
        AssertCurrentRefused(
            "12.5",
            QuantityTextErrorKind.NoUnit,
            "\"12.5\" has no unit; a current was expected. Write the unit behind the number, such as \"12.5 mA\"."
        );

    [Fact]
    public void ParseRatio_BareFraction_IsRefused() =>
        AssertRefused(
            QuantityTextErrorKind.NoUnit,
            "\"0.05\" has no unit; a ratio was expected. Write the unit behind the number, such as \"0.05 ppm\".",
            () => QuantityText.ParseRatio("0.05")
        );

    [Theory]
    [InlineData("12 Ma", "Ma", "\"12 mA\"; capitals count in units")]
    [InlineData("12 ma", "ma", "\"12 mA\"; capitals count in units")]
    [InlineData("12 \u00B5a", "\u00B5a", "\"12 uA\"; capitals count in units")]
    [InlineData("12 mAA", "mAA", "\"12 mA\"")]
    [InlineData("12 amps", "amps", "\"12 A\"")]
    [InlineData("12 mAxx", "mAxx", "one of A, mA, uA, nA, pA")]
    [InlineData("12 xyz", "xyz", "one of A, mA, uA, nA, pA")]
    [InlineData("12,mA", ",mA", "\"12 mA\"")]
    public void ParseCurrent_UnknownUnit_IsRefusedWithTheNearest(string text, string unit, string mend) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.UnknownUnit,
            $"\"{text}\" has the unknown unit \"{unit}\"; a current was expected. Write {mend}."
        );

    [Theory]
    [InlineData("160 mhz", "160 MHz")]
    [InlineData("160 mHz", "160 MHz")]
    [InlineData("160 MHZ", "160 MHz")]
    [InlineData("32 KHz", "32 kHz")]
    public void ParseFrequency_CapitalsWrong_IsRefusedWithTheRightOnes(string text, string mended) =>
        AssertRefused(
            QuantityTextErrorKind.UnknownUnit,
            $"\"{text}\" has the unknown unit \"{text.Split(' ')[1]}\"; a frequency was expected. "
                + $"Write \"{mended}\"; capitals count in units.",
            () => QuantityText.ParseFrequency(text)
        );

    [Fact]
    public void ParseEnergy_CapitalsThatCouldBeEither_AreRefusedWithBoth() =>
        AssertRefused(
            QuantityTextErrorKind.UnknownUnit,
            "\"5 MWH\" has the unknown unit \"MWH\"; an energy was expected. "
                + "Write \"5 MWh\" or \"5 mWh\"; capitals count in units.",
            () => QuantityText.ParseEnergy("5 MWH")
        );

    [Fact]
    public void ParseDuration_BareM_IsRefusedWithBothMeanings() =>
        AssertRefused(
            QuantityTextErrorKind.UnknownUnit,
            "\"2 m\" has the unknown unit \"m\"; a duration was expected. Write \"2 min\" or \"2 ms\".",
            () => QuantityText.ParseDuration("2 m")
        );

    [Fact]
    public void Parse_AnotherKindOfQuantity_IsRefusedByName()
    {
        AssertWrong("12 mAh", "a charge", "a current", () => QuantityText.ParseCurrent("12 mAh"));
        AssertWrong("12 mA h", "a charge", "a current", () => QuantityText.ParseCurrent("12 mA h"));
        AssertWrong("40 mWh", "an energy", "a power", () => QuantityText.ParsePower("40 mWh"));
        AssertWrong("12 mA", "a current", "a charge", () => QuantityText.ParseCharge("12 mA"));
        AssertWrong("40 mW", "a power", "an energy", () => QuantityText.ParseEnergy("40 mW"));
        AssertWrong("1 ms", "a duration", "a frequency", () => QuantityText.ParseFrequency("1 ms"));
        AssertWrong("1 Hz", "a frequency", "a duration", () => QuantityText.ParseDuration("1 Hz"));
        AssertWrong("1 ohm", "a resistance", "a voltage", () => QuantityText.ParseVoltage("1 ohm"));
        AssertWrong("4.7 K", "a temperature", "a resistance", () => QuantityText.ParseResistance("4.7 K"));
        AssertWrong("23 C", "a charge", "a temperature", () => QuantityText.ParseTemperature("23 C"));
        AssertWrong("5 V", "a voltage", "a ratio", () => QuantityText.ParseRatio("5 V"));
        AssertWrong("5 %", "a ratio", "a duration", () => QuantityText.ParseDuration("5 %"));

        static void AssertWrong(string text, string given, string expected, Func<object> parse) =>
            AssertRefused(
                QuantityTextErrorKind.WrongQuantity,
                $"\"{text}\" is {given}; {expected} was expected. ",
                parse
            );
    }

    [Fact]
    public void Parse_AnotherKindOfQuantity_SaysTheMend()
    {
        Assert.Equal("Write \"12 mA\" if that is meant, or divide by the time it took.", Mend("12 mAh"));
        Assert.Equal("Write a current, such as 12 mA.", Mend("1 V"));
        Assert.Equal(
            "Write \"40 mWh\" if that is meant, or multiply by the time it lasted.",
            Refusal(() => QuantityText.ParseEnergy("40 mW")).Mend
        );
        Assert.Equal("Write \"4.7 kohm\" if that is meant.", Refusal(() => QuantityText.ParseResistance("4.7 K")).Mend);

        static string Mend(string text) => Refusal(() => QuantityText.ParseCurrent(text)).Mend;
    }

    [Theory]
    [InlineData("12 mA mA")]
    [InlineData("12 mA V")]
    [InlineData("12 mA/h")]
    [InlineData("12 mA 3")]
    [InlineData("12 mA 3 uA")]
    [InlineData("12 mA h h")]
    [InlineData("5 - 6 mA")]
    [InlineData("12 \u00B1 1 mA")]
    public void ParseCurrent_TwoUnitsOrValues_IsRefused(string text) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.TwoUnits,
            $"\"{text}\" has more than one unit or value; a current was expected. "
                + "Write one number and one unit, such as 12 mA."
        );

    [Theory]
    [InlineData("12 mA;", ";")]
    [InlineData("12 mA (typ.)", "(typ.)")]
    [InlineData("12 mA approx", "approx")]
    public void ParseCurrent_TrailingText_IsRefused(string text, string trailing) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.TrailingText,
            $"\"{text}\" goes on behind the unit, with \"{trailing}\"; nothing was expected there. Write \"12 mA\"."
        );

    [Theory]
    [InlineData("1e400 A")]
    [InlineData("-1e400 A")]
    [InlineData("1e-400 A")]
    [InlineData("1e-320 nA")]
    [InlineData("1e99999999999999999999 A")]
    public void ParseCurrent_BeyondADouble_IsRefused(string text) =>
        AssertCurrentRefused(
            text,
            QuantityTextErrorKind.OutOfRange,
            $"\"{text}\" cannot be held; a current of size 0 or 4.9e-324 to 1.8e+308 in the SI unit was expected. "
                + "Check the exponent."
        );

    [Theory]
    [InlineData("1e29 W")]
    [InlineData("1e-20 nW")]
    public void ParsePower_BeyondADecimal_IsRefused(string text) =>
        AssertRefused(
            QuantityTextErrorKind.OutOfRange,
            $"\"{text}\" cannot be held; a power of size 0 or 1.0e-28 to 7.9e+28 in the SI unit was expected. "
                + "Check the exponent.",
            () => QuantityText.ParsePower(text)
        );

    [Fact]
    public void Parse_HostileCharacters_AreEscapedInTheMessage()
    {
        var error = Refusal(() => QuantityText.ParseCurrent("12 \u001B[31m\n\u202E\uD800\u200B"));

        Assert.Equal("12 \\u001B[31m\\u000A\\u202E\\uFFFD\\u200B", error.Given);
        Assert.DoesNotContain(error.Message, c => char.IsControl(c) || char.IsSurrogate(c));
    }

    [Fact]
    public void Exception_Properties_AreThoseOfTheError()
    {
        var thrown = Assert.Throws<QuantityFormatException>(() => QuantityText.ParseCurrent("12 mAh"));

        Assert.Equal(QuantityTextErrorKind.WrongQuantity, thrown.Kind);
        Assert.Equal("12 mAh", thrown.Given);
        Assert.Equal("a current, such as 12 mA", thrown.Expected);
        Assert.Equal("Write \"12 mA\" if that is meant, or divide by the time it took.", thrown.Mend);
        Assert.Throws<ArgumentNullException>("error", () => new QuantityFormatException(null!));
    }

    [Property(MaxTest = 2000)]
    public void TryParse_AnyString_NeverThrowsAndItsMessageIsOneSafeLine(string? text)
    {
        AssertSafe(QuantityText.TryParseDuration(text, out _, out var duration), duration);
        AssertSafe(QuantityText.TryParseTemperature(text, out _, out var temperature), temperature);
        AssertSafe(QuantityText.TryParsePower(text, out _, out var power), power);
    }

    [Property(MaxTest = 2000)]
    public Property TryParse_StringsNearToRightOnes_NeverThrow()
    {
        string[] parts = ["1", "000", "31", ".", ",", " ", "\u202F", "-", "+", "e", "E9", "m", "A", "W", "h", "s"];
        string[] more = ["\u00B5", "u", "\u03A9", "ohm", "\u00B0C", "K", "%", "inf", "NaN", "'", "_", "\u00B7", "/"];
        var texts = Gen.Elements(parts.Concat(more)).ListOf().Select(string.Concat);

        return Prop.ForAll(
            texts.ToArbitrary(),
            text =>
            {
                AssertSafe(QuantityText.TryParseCharge(text, out _, out var charge), charge);
                AssertSafe(QuantityText.TryParseTemperature(text, out _, out var temperature), temperature);
                AssertSafe(QuantityText.TryParsePower(text, out _, out var power), power);
                AssertSafe(QuantityText.TryParseResistance(text, out _, out var resistance), resistance);
            }
        );
    }

    private static void AssertSafe(bool read, QuantityTextError? error)
    {
        Assert.Equal(read, error is null);
        if (error is not null)
        {
            Assert.DoesNotContain(error.Message, char.IsControl);
            Assert.InRange(error.Message.Length, 20, 900);
        }
    }

    private static void AssertCurrentRefused(string? text, QuantityTextErrorKind kind, string message)
    {
        AssertRefused(kind, message, () => QuantityText.ParseCurrent(text));
        Assert.Equal(message, Refusal(() => QuantityText.ParseCurrent(text)).Message);
    }

    private static void AssertRefused(QuantityTextErrorKind kind, string message, Func<object> parse)
    {
        var error = Refusal(parse);
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
        Assert.Equal(kind, error.Kind);
    }

    private static QuantityTextError Refusal(Func<object> parse) => Assert.Throws<QuantityFormatException>(parse).Error;
}
