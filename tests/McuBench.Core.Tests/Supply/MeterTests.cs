using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Tests.Supply;

public sealed class MeterTests
{
    private static ElectricCurrent Milliamperes(double value) => ElectricCurrent.FromMilliamperes(value);

    [Fact]
    public void New_NoRange_IsRefused() =>
        Refusal.Is<ArgumentException>(() => new Meter("bench"), "ranges", "A meter must have at least one range");

    [Fact]
    public void New_TwoRangesOfOneFullScale_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Meter("bench", Sketch.Fifty, Sketch.Fifty),
            "ranges",
            "A meter's ranges must have distinct full scales; 50 mA stands twice."
        );

    [Fact]
    public void New_RangesInAnyOrder_AreSorted() =>
        Assert.Equal([Sketch.Fifty, Sketch.FiveHundred], new Meter("bench", Sketch.FiveHundred, Sketch.Fifty).Ranges);

    [Fact]
    public void New_BadParts_AreRefused()
    {
        Refusal.Is<ArgumentException>(() => new Meter("", Sketch.Fifty), "Name", "Meter's name must hold");
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Sketch.Bench with { AveragingTime = Duration.Zero },
            "AveragingTime",
            "Meter's averaging time must be above zero; was "
        );
    }

    [Theory]
    [InlineData(0, 50.0)]
    [InlineData(50, 50.0)]
    [InlineData(50.001, 500.0)]
    [InlineData(500.001, null)]
    public void RangeFor_Current_IsTheSmallestThatHoldsIt(double milliamperes, double? fullScale) =>
        Assert.Equal(fullScale, Sketch.Bench.RangeFor(Milliamperes(milliamperes))?.FullScale.Milliamperes);

    [Fact]
    public void MeterRange_BadParts_AreRefused()
    {
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new MeterRange(Milliamperes(0), Milliamperes(1)),
            "fullScale",
            "Meter range must be above zero; was "
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new MeterRange(Milliamperes(1), Milliamperes(0)),
            "resolution",
            "Meter's resolution must be above zero; was "
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new MeterRange(Milliamperes(1), Milliamperes(2)),
            "resolution",
            "Meter's resolution must not exceed its range of 1 mA; was 2 mA."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Sketch.Fifty with { Digits = -1 },
            "Digits",
            "Accuracy in digits must be at least 0; was -1."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Sketch.Fifty with { OfReading = Ratio.FromPercent(-1) },
            "OfReading",
            "Accuracy of reading must be at least 0 % and below 100 %; was "
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Sketch.Fifty with { OfRange = Ratio.FromPercent(100) },
            "OfRange",
            "Accuracy of range must be at least 0 % and below 100 %; was "
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = Sketch.Fifty with { BurdenAtFullScale = ElectricPotential.FromVolts(-0.1) },
            "BurdenAtFullScale",
            "Burden voltage must not be negative; was "
        );
    }

    [Fact]
    public void MeterCheck_NegativeReading_IsTakenAndNegativeExpectationRefused()
    {
        var day = new DateOnly(2026, 11, 2);

        Assert.Equal(-0.00001, new MeterCheck(day, Milliamperes(0), Milliamperes(-0.01)).Read.Amperes);
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new MeterCheck(day, Milliamperes(-1), Milliamperes(0)),
            "expected",
            "Expected current must not be negative; was "
        );
    }
}
