using FsCheck.Xunit;
using McuBench.Stats.Tests.Distributions;
using McuBench.Stats.Uncertainty;

namespace McuBench.Stats.Tests.Uncertainty;

public sealed class UncertaintyTextTests
{
    // The first is the guide's own example in 7.2.2; the others by hand from its rules.
    [Theory]
    [InlineData(100.02147, 0.00035, "100.02147(35)")]
    [InlineData(4.7041, 0.0318, "4.704(32)")]
    [InlineData(-4.7041, 0.0318, "-4.704(32)")]
    [InlineData(9.9996, 0.00996, "10.000(10)")]
    [InlineData(12.34, 1.21, "12.3(1.2)")]
    [InlineData(12.34, 12.1, "12(12)")]
    [InlineData(0, 0.5, "0.00(50)")]
    [InlineData(-0.001, 0.5, "0.00(50)")]
    [InlineData(12345678, 6712, "1.23457(67)e7")]
    [InlineData(4704, 320, "4.70(32)e3")]
    [InlineData(0.00047041, 0.00000318, "4.704(32)e-4")]
    [InlineData(0.125, 0.45, "0.12(45)")]
    [InlineData(0.135, 0.45, "0.14(45)")]
    public void Concise_ValueAndUncertainty_RoundsBothToTheSamePlace(double value, double u, string expected) =>
        Assert.Equal(expected, UncertaintyText.Concise(value, u));

    [Theory]
    [InlineData(4.7041, 0.0636, 2.0, "4.704 \u00B1 0.064 (k = 2)")]
    [InlineData(100.02147, 0.00079, 2.262, "100.02147 \u00B1 0.00079 (k = 2.26)")]
    [InlineData(12345678, 6712, 1.96, "(1.23457 \u00B1 0.00067)e7 (k = 1.96)")]
    public void Expanded_ValueAndUncertainty_NamesTheFactor(double value, double u, double k, string expected) =>
        Assert.Equal(expected, UncertaintyText.Expanded(value, u, k));

    [Fact]
    public void Concise_OneDigit_ShowsOne() => Assert.Equal("4.70(3)", UncertaintyText.Concise(4.7041, 0.0318, 1));

    [Property]
    public void Expanded_AnyPair_ReadsBackToWithinHalfAnUnitOfTheUncertainty(int value, ushort spread, sbyte power)
    {
        double scale = Math.Pow(10, power / 4);
        double u = (spread + 1) * scale;
        double x = value * scale;
        string text = UncertaintyText.Expanded(x, u, 2);
        string[] parts = text.Replace("(k = 2)", "", StringComparison.Ordinal).Split('\u00B1', 'e');
        double exponent = parts.Length == 3 ? Math.Pow(10, Number(parts[2])) : 1;

        // Two digits of u: half a unit of the last is at most a twentieth of it, and rounding error on top.
        double room = 0.0501 * u + 1e-12 * Math.Abs(x);
        Assert.Equal(u, Number(parts[1]) * exponent, room);
        Assert.Equal(x, Number(parts[0]) * exponent, room);

        static double Number(string text) =>
            double.Parse(text.Trim(' ', '(', ')'), System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Concise_ArgumentsOutOfRange_AreRefused()
    {
        Refusal.Of(
            () => UncertaintyText.Concise(1, 0),
            "standardUncertainty",
            "Standard uncertainty must be a finite number above 0; was 0."
        );
        Refusal.Of(() => UncertaintyText.Concise(double.NaN, 1), "value", "Value must be a finite number; was NaN.");
        Refusal.Of(
            () => UncertaintyText.Expanded(1, 1, 2, 5),
            "digits",
            "Number of significant digits must be 1 to 4; was 5."
        );
    }
}
