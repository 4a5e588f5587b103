using System.Numerics;
using FsCheck.Xunit;
using McuBench.Core.Quantities;

namespace McuBench.Core.Tests.Quantities;

public class DecimalNumberTests
{
    [Theory]
    [InlineData("412.1", false, "4121", -1)]
    [InlineData("-0.50", true, "50", -2)]
    [InlineData("+7", false, "7", 0)]
    [InlineData("\u22123", true, "3", 0)]
    [InlineData(".5", false, "5", -1)]
    [InlineData("5.", false, "5", 0)]
    [InlineData("1e3", false, "1", 3)]
    [InlineData("1.25E\u22126", false, "125", -8)]
    [InlineData("1e999999999999", false, "1", 9999)]
    [InlineData("12345678901234567890123", false, "12345678901234567890123", 0)]
    [InlineData("0.12345678901234567890", false, "12345678901234567890", -20)]
    public void ReadPrefix_NumberAlone_ReadsAll(string text, bool negative, string magnitude, int power)
    {
        var read = DecimalNumber.ReadPrefix(text, out var number);

        Assert.Equal(text.Length, read);
        Assert.Equal(new DecimalNumber(negative, BigInteger.Parse(magnitude, null), power), number);
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("ms", 0)]
    [InlineData(".", 0)]
    [InlineData("-", 0)]
    [InlineData("e3", 0)]
    [InlineData("1.2.3", 3)]
    [InlineData("1 ms", 1)]
    [InlineData("1e", 1)]
    [InlineData("1e+", 1)]
    [InlineData("1eV", 1)]
    [InlineData("--1", 0)]
    [InlineData("١", 0)]
    public void ReadPrefix_OtherText_StopsWhereTheNumberEnds(string text, int expected) =>
        Assert.Equal(expected, DecimalNumber.ReadPrefix(text, out _));

    [Property]
    public void ToDouble_AnyDouble_ReadsBackTheSameBits(double value)
    {
        if (double.IsFinite(value))
        {
            Assert.Equal(
                BitConverter.DoubleToInt64Bits(value),
                BitConverter.DoubleToInt64Bits(DecimalNumber.Of(value).ToDouble())
            );
        }
    }

    [Property]
    public void Scaled_AnyFactor_IsRoundedOnce(long magnitude, byte factor, sbyte power, sbyte shift)
    {
        var size = BigInteger.Abs(magnitude);
        var expected = ExactRounding.Nearest(size * factor, power + shift);

        var scaled = new DecimalNumber(magnitude < 0, size, power).Scaled(factor, shift).ToDouble();

        Assert.Equal(magnitude < 0 ? -expected : expected, scaled);
    }

    [Fact]
    public void ToDouble_HalfwayBetweenDoubles_TiesToEven()
    {
        // 2^53 + 1 lies halfway between two doubles; a crumb more, 30 digits on, decides otherwise.
        Assert.Equal(9007199254740992.0, new DecimalNumber(false, 9007199254740993, 0).ToDouble());
        Assert.Equal(
            9007199254740994.0,
            new DecimalNumber(false, (9007199254740993 * BigInteger.Pow(10, 30)) + 1, -30).ToDouble()
        );
    }

    [Property]
    public void Plus_WithinDecimal_AgreesWithSystemDecimal(int left, byte leftPlaces, int right, byte rightPlaces)
    {
        var a = Of(left, leftPlaces % 10);
        var b = Of(right, rightPlaces % 10);

        Assert.Equal(DecimalNumber.Of(a + b).ToDouble(), DecimalNumber.Of(a).Plus(DecimalNumber.Of(b)).ToDouble());

        static decimal Of(int value, int places) => value / (decimal)Math.Pow(10, places);
    }

    [Fact]
    public void ToDouble_BeyondTheRange_IsInfinityOrZero()
    {
        Assert.Equal(double.NegativeInfinity, new DecimalNumber(true, 1, 9999).ToDouble());
        Assert.Equal(0, new DecimalNumber(false, 1, -9999).ToDouble());
        Assert.True(double.IsNegative(DecimalNumber.Of(-0.0).ToDouble()));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Of_NotFinite_Throws(double given) =>
        Assert.Throws<ArgumentOutOfRangeException>("value", () => DecimalNumber.Of(given));
}
