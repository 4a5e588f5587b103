using McuBench.Core.Quantities;

namespace McuBench.Core.Tests.Quantities;

public class NumberDisplayTests
{
    [Fact]
    public void Display_PlainNumbers_HaveNoPrefix()
    {
        Assert.Equal("1.83", NumberDisplay.Rounded(1.8304, 3));
        Assert.Equal("12300 blocks/s", NumberDisplay.Rounded(12345, 3, "blocks/s", TextForm.Ascii));
        Assert.Equal("1.23e7 blocks/s", NumberDisplay.Rounded(12345678, 3, "blocks/s", TextForm.Ascii));
        Assert.Equal("0.00123", NumberDisplay.Rounded(0.0012345, 3));
        Assert.Equal("1.23e\u22124", NumberDisplay.Rounded(0.00012345, 3));
        Assert.Equal("1.830 \u00B1 0.021", NumberDisplay.WithUncertainty(1.8304, 0.0207));
        Assert.Equal(
            "1.830 (95\u202F% interval 1.811 to 1.852)",
            NumberDisplay.WithInterval(1.8304, 1.8107, 1.8522, 0.95)
        );
    }

    [Fact]
    public void Display_LargeNumbers_ShareTheExponent() =>
        Assert.Equal("1.2346e7 +/- 0.0023e7", NumberDisplay.WithUncertainty(12345678, 23456, form: TextForm.Ascii));

    [Fact]
    public void Display_NotFinite_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>("value", () => NumberDisplay.Rounded(double.NaN, 3));
        Assert.Throws<ArgumentOutOfRangeException>("value", () => NumberDisplay.WithUncertainty(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(
            "expandedUncertainty",
            () => NumberDisplay.WithUncertainty(1, double.PositiveInfinity)
        );
        Assert.Throws<ArgumentOutOfRangeException>(
            "lower",
            () => NumberDisplay.WithInterval(1, double.NegativeInfinity, 2, 0.95)
        );
        Assert.Throws<ArgumentOutOfRangeException>("upper", () => NumberDisplay.WithInterval(1, 0, double.NaN, 0.95));
        Assert.Throws<ArgumentNullException>("unit", () => NumberDisplay.Rounded(1, 3, null!));
    }

    [Fact]
    public void Display_ZeroWidth_Throws()
    {
        var uncertainty = Assert.Throws<ArgumentOutOfRangeException>(
            "expandedUncertainty",
            () => NumberDisplay.WithUncertainty(1, 0)
        );
        var upper = Assert.Throws<ArgumentOutOfRangeException>(
            "upper",
            () => NumberDisplay.WithInterval(1, 1.5, 0.5, 0.95)
        );

        Assert.StartsWith(
            "Expanded uncertainty must be above zero; was 0.",
            uncertainty.Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Upper end must be above the lower end 1.5; was 0.5.",
            upper.Message,
            StringComparison.Ordinal
        );
    }
}
