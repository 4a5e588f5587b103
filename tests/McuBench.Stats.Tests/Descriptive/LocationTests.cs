using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class LocationTests
{
    [Theory]
    [InlineData("Lew")]
    [InlineData("Lottery")]
    [InlineData("Mavro")]
    [InlineData("Michelso")]
    [InlineData("NumAcc1")]
    [InlineData("NumAcc2")]
    [InlineData("NumAcc3")]
    [InlineData("NumAcc4")]
    [InlineData("PiDigits")]
    public void Mean_NistData_HoldsAllCertifiedDigits(string set) =>
        // Printed to 15 digits, of which the last is rounded.
        Agree.Relative(NistUnivariate.Certified(set).Mean, Location.Mean(NistUnivariate.Values(set)), 1.5e-15);

    [Fact]
    public void Mean_LargeTermsCancel_KeepsTheSmallOne() => Assert.Equal(0.5, Location.Mean([1e100, 1, -1e100, 1]));

    [Fact]
    public void Mean_SumOverflows_IsRight() => Assert.Equal(1e308, Location.Mean([1.5e308, 1.7e308, -0.2e308]), 1e293);

    [Fact]
    public void Mean_Denormals_IsRight() =>
        Assert.Equal(2 * double.Epsilon, Location.Mean([double.Epsilon, 3 * double.Epsilon]));

    [Fact]
    public void Mean_AllEqual_IsThatValue() => Assert.Equal(0.1, Location.Mean(Enumerable.Repeat(0.1, 7).ToArray()));

    [Fact]
    public void Mean_Empty_IsRefused() =>
        Assert.Equal("values", Assert.Throws<ArgumentException>(() => Location.Mean([])).ParamName);

    [Fact]
    public void Mean_NaN_IsRefusedWithItsIndex()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Location.Mean([1, double.NaN]));

        Assert.StartsWith(
            "Value at index 1 must be a finite number; was NaN.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Median_OddAndEvenCounts_TakeTheMiddle()
    {
        Assert.Equal(3, Location.Median([9, 3, 1]));
        Assert.Equal(2.5, Location.Median([4, 1, 2, 3]));
        Assert.Equal(7, Location.Median([7]));
    }

    [Fact]
    public void Median_SumOfTheMiddleTwoOverflows_IsRight() =>
        Assert.Equal(1.5e308, Location.Median([1.4e308, 1.6e308]), 1e293);

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Median_AnyValues_IsThatOfTheSortedSample(Dyadic data)
    {
        double[] sorted = [.. data.Values.Order()];
        double expected = (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

        Assert.Equal(expected, Location.Median(data.Values));
        Assert.Equal(expected, Location.Median(Sample.Of(data.Values)));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MeanAndMedian_Permuted_StayTheSame(Dyadic data, int seed)
    {
        double[] shuffled = data.Shuffled(seed);

        Assert.Equal(Location.Mean(data.Values), Location.Mean(shuffled));
        Assert.Equal(Location.Median(data.Values), Location.Median(shuffled));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MeanAndMedian_ShiftedAndScaled_FollowTheData(Dyadic data)
    {
        double[] moved = data.Map(value => -4 * (value + 1024));

        Agree.Relative(-4 * (Location.Mean(data.Values) + 1024), Location.Mean(moved), 4e-16);
        Assert.Equal(-4 * (Location.Median(data.Values) + 1024), Location.Median(moved));
    }
}
