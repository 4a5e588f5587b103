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

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void EveryLocation_DataSets_AgreesWithRAndSciPy(string set)
    {
        double[] values = Datasets.Values(set);

        RobustReference.AgreeWithBoth(set, "mean", Location.Mean(values), 1e-15);
        RobustReference.AgreeWithBoth(set, "median", Location.Median(values), 0);
        RobustReference.AgreeWithBoth(set, "trimmed_10", Location.TrimmedMean(values, 0.1), 1e-15);
        RobustReference.AgreeWithBoth(set, "trimmed_25", Location.TrimmedMean(values, 0.25), 1e-15);
        RobustReference.AgreeWithBoth(set, "harmonic", Location.HarmonicMean(values), 1e-15);
        // They average logarithms, which costs a digit at logarithms of 16.
        RobustReference.AgreeWithBoth(set, "geometric", Location.GeometricMean(values), 2e-14);
        Agree.Relative(RobustReference.R(set).Numbers("winsorized_20")[0], Location.WinsorizedMean(values, 0.2), 1e-15);
        Agree.Relative(
            RobustReference.SciPy(set).Numbers("winsorized_20")[0],
            Location.WinsorizedMean(values, 0.2),
            1e-15
        );
    }

    [Fact]
    public void GeometricMean_ExtremeValues_StaysInRange()
    {
        Agree.Relative(1, Location.GeometricMean([1e300, 1e-300, 1e300, 1e-300]), 1e-15);
        Agree.Relative(1e300, Location.GeometricMean(Enumerable.Repeat(1e300, 1000).ToArray()), 1e-15);
        Assert.Equal(8 * double.Epsilon, Location.GeometricMean([double.Epsilon, 64 * double.Epsilon]));
    }

    [Fact]
    public void HarmonicMean_ExtremeValues_StaysInRange()
    {
        Assert.Equal(double.Epsilon, Location.HarmonicMean([double.Epsilon, double.Epsilon]));
        Agree.Relative(2e-300, Location.HarmonicMean([1e-300, 1e300]), 1e-15);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void GeometricAndHarmonicMean_NotAboveZero_AreRefused(double value)
    {
        Assert.StartsWith(
            "Value at index 1 must be a finite number above 0; was ",
            Assert.Throws<ArgumentOutOfRangeException>(() => Location.GeometricMean([1, value])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Location.HarmonicMean([1, value]));
    }

    [Fact]
    public void TrimmedMean_FractionOfTheCountRoundedDown_CutsTheWholeNumber()
    {
        // 100 * 0.29 is 28.999999999999996 in binary64: 29 values a side leave 30 to 71.
        double[] values = [.. Enumerable.Range(1, 100).Select(i => (double)i * i)];

        Assert.Equal(Enumerable.Range(30, 42).Average(i => (double)i * i), Location.TrimmedMean(values, 0.29), 1e-9);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(0.5)]
    [InlineData(double.NaN)]
    public void TrimmedAndWinsorizedMean_FractionOutOfRange_AreRefused(double fraction)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Location.TrimmedMean([1, 2, 3], fraction));

        Assert.Equal("fraction", refusal.ParamName);
        Assert.StartsWith(
            "Fraction at each end must be from 0 to below 0.5; was ",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Location.WinsorizedMean([1, 2, 3], fraction));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void TrimmedAndWinsorizedMean_AnyValues_AreTheirDefinitions(Dyadic data)
    {
        double[] sorted = [.. data.Values.Order()];
        int cut = sorted.Length / 4;
        double[] middle = sorted[cut..^cut];
        double[] pulled = [.. sorted.Select(value => Math.Clamp(value, middle[0], middle[^1]))];

        Assert.Equal(middle.Average(), Location.TrimmedMean(data.Values, 0.25), 1e-12);
        Assert.Equal(pulled.Average(), Location.WinsorizedMean(data.Values, 0.25), 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Means_PositiveValues_StandInOrder(Dyadic data)
    {
        double[] values = data.Map(value => value + 51);

        Assert.True(Location.HarmonicMean(values) <= Location.GeometricMean(values) * (1 + 1e-15));
        Assert.True(Location.GeometricMean(values) <= Location.Mean(values) * (1 + 1e-15));
    }
}
