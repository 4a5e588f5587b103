using System.Globalization;
using FsCheck.Xunit;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Quantities;

public class QuantityDisplayTests
{
    [Theory]
    [InlineData(4.7043, 3, "4.70 s")]
    [InlineData(0.41213, 3, "412 ms")]
    [InlineData(0.9996, 3, "1.00 s")]
    [InlineData(0.9996, 1, "1 s")]
    [InlineData(-0.0041255, 4, "-4.126 ms")]
    [InlineData(0.0041245, 4, "4.124 ms")]
    [InlineData(0.41, 1, "0.4 s")]
    [InlineData(3661, 3, "3660 s")]
    [InlineData(3661, 17, "3661.0000000000000 s")]
    [InlineData(1234567, 3, "1.23e6 s")]
    [InlineData(0, 3, "0 s")]
    public void Rounded_Seconds_ShowsTheDigits(double seconds, int digits, string expected) =>
        Assert.Equal(expected, QuantityDisplay.Rounded(Duration.FromSeconds(seconds), digits, TextForm.Ascii));

    [Theory]
    [InlineData(0)]
    [InlineData(18)]
    public void Rounded_CountOfDigitsOutOfRange_Throws(int digits)
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(
            "significantDigits",
            () => QuantityDisplay.Rounded(Duration.FromSeconds(1), digits)
        );
        Assert.StartsWith(
            $"Number of significant digits must be 1 to 17; was {digits}.",
            fault.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(4.70412, 0.0637, "4.704 s +/- 0.064 s")]
    [InlineData(0.4121, 0.00025, "412.10 ms +/- 0.25 ms")]
    [InlineData(0.4121, 0.0996, "0.41 s +/- 0.10 s")]
    [InlineData(0.4121, 0.023, "412 ms +/- 23 ms")]
    [InlineData(0.4121, 0.12, "0.41 s +/- 0.12 s")]
    [InlineData(0.99999, 0.001, "1.0000 s +/- 0.0010 s")]
    [InlineData(-0.0000002, 0.000012, "0 us +/- 12 us")]
    [InlineData(0, 1.5, "0.0 s +/- 1.5 s")]
    public void WithUncertainty_Seconds_EndInTheSamePlace(double seconds, double uncertainty, string expected) =>
        Assert.Equal(
            expected,
            QuantityDisplay.WithUncertainty(
                Duration.FromSeconds(seconds),
                Duration.FromSeconds(uncertainty),
                TextForm.Ascii
            )
        );

    [Fact]
    public void WithUncertainty_Typographic_KeepsNumberAndUnitTogether() =>
        Assert.Equal(
            "4.704\u202Fs \u00B1 0.064\u202Fs",
            QuantityDisplay.WithUncertainty(Duration.FromSeconds(4.70412), Duration.FromMilliseconds(63.7))
        );

    /// <summary>JCGM 100:2008, 7.2.6 (<c>gum-rounding</c>): 10.057 62 ohm with 27 mohm is rounded to 10.058 ohm.</summary>
    [Fact]
    public void WithUncertainty_ExampleOfTheGuide_IsRoundedAsThere() =>
        Assert.Equal(
            "10.058 ohm +/- 0.027 ohm",
            QuantityDisplay.WithUncertainty(
                ElectricResistance.FromOhms(10.05762),
                ElectricResistance.FromMilliohms(27),
                TextForm.Ascii
            )
        );

    [Fact]
    public void Display_Temperature_IsInCelsius()
    {
        var room = Temperature.FromDegreesCelsius(23.31);

        Assert.Equal("23.3 degC", QuantityDisplay.Rounded(room, 3, TextForm.Ascii));
        Assert.Equal("23.3\u202F\u00B0C", QuantityDisplay.Rounded(room, 3));
        Assert.Equal(
            "23.31 degC +/- 0.50 degC",
            QuantityDisplay.WithUncertainty(room, Temperature.FromKelvins(0.5), TextForm.Ascii)
        );
        Assert.Equal(
            "23.31 degC (95 % interval 22.80 degC to 23.80 degC)",
            QuantityDisplay.WithInterval(
                room,
                Temperature.FromDegreesCelsius(22.8),
                Temperature.FromDegreesCelsius(23.8),
                0.95,
                TextForm.Ascii
            )
        );
    }

    [Theory]
    [InlineData(0.4121, 0.41186, 0.41237, 0.95, "412.10 ms (95 % interval 411.86 ms to 412.37 ms)")]
    [InlineData(0.4121, 0.4091, 0.4152, 0.999, "412.1 ms (99.9 % interval 409.1 ms to 415.2 ms)")]
    [InlineData(0.98, 0.91, 1.06, 0.95, "0.980 s (95 % interval 0.910 s to 1.060 s)")]
    [InlineData(0.0001, -0.0012, 0.0013, 0.9, "0.1 ms (90 % interval -1.2 ms to 1.3 ms)")]
    public void WithInterval_Seconds_SharePrefixAndPlace(
        double seconds,
        double lower,
        double upper,
        double confidence,
        string expected
    ) =>
        Assert.Equal(
            expected,
            QuantityDisplay.WithInterval(
                Duration.FromSeconds(seconds),
                Duration.FromSeconds(lower),
                Duration.FromSeconds(upper),
                confidence,
                TextForm.Ascii
            )
        );

    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(-0.1, "-100 ms")]
    public void WithUncertainty_NotAboveZero_Throws(double uncertainty, string was)
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(
            "expandedUncertainty",
            () => QuantityDisplay.WithUncertainty(Duration.FromSeconds(1), Duration.FromSeconds(uncertainty))
        );
        Assert.StartsWith(
            $"Expanded uncertainty must be above zero; was {was}.",
            fault.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WithInterval_NoWidth_Throws()
    {
        var second = Duration.FromSeconds(1);
        var fault = Assert.Throws<ArgumentOutOfRangeException>(
            "upper",
            () => QuantityDisplay.WithInterval(second, second, second, 0.95)
        );
        Assert.StartsWith(
            "Upper end must be above the lower end 1 s; was 1 s.",
            fault.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void WithInterval_ConfidenceOutOfRange_Throws(double given)
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(
            "confidence",
            () => QuantityDisplay.WithInterval(Si.Duration(2), Si.Duration(1), Si.Duration(3), given)
        );
        Assert.StartsWith(
            string.Create(CultureInfo.InvariantCulture, $"Confidence must be above 0 and below 1; was {given}."),
            fault.Message,
            StringComparison.Ordinal
        );
    }

    [Property(MaxTest = 500)]
    public void WithUncertainty_AnyValue_MovesByHalfAPlaceAtMost(int value, uint uncertainty)
    {
        var u = (uncertainty + 1) / 1024.0;
        var v = value / 512.0;

        var parts = QuantityDisplay
            .WithUncertainty(Duration.FromSeconds(v), Duration.FromSeconds(u), TextForm.Ascii)
            .Split(" +/- ");

        // Two digits of the uncertainty: half a unit of its second digit is 5 % of it at most.
        Assert.Equal(u, QuantityText.ParseDuration(parts[1]).Seconds, u * 0.05001);
        Assert.Equal(v, QuantityText.ParseDuration(parts[0]).Seconds, u * 0.05001);
    }
}
