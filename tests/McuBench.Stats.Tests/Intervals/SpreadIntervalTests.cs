using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class SpreadIntervalTests
{
    [Theory]
    [MemberData(nameof(IntervalReference.Sets), MemberType = typeof(IntervalReference))]
    public void Variance_DataSets_AgreesWithRAndSciPy(string set)
    {
        Estimate variance = SpreadInterval.Variance(Sample.Of(Datasets.Values(set)), 0.9);
        Estimate deviation = SpreadInterval.StandardDeviation(Sample.Of(Datasets.Values(set)), 0.9);

        IntervalReference.AgreeWithBoth("variance_low_high_90", set, IntervalReference.Ends(variance), 1e-11);
        Agree.Relative(variance.Value, deviation.Value * deviation.Value, 1e-15);
        Agree.Relative(Math.Sqrt(variance.Interval!.Lower), deviation.Interval!.Lower, 1e-15);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void StandardDeviation_GearDiameters_AgreesWithTheHandbook(int level)
    {
        var reference = ReferenceCase.Of("nist-handbook", "hb-gear");
        Estimate deviation = SpreadInterval.StandardDeviation(
            Sample.Of([.. reference.Rows("input", "batches_of_10").SelectMany(batch => batch)]),
            reference.Numbers("input", "levels")[level]
        );

        // Kept to nine digits.
        Agree.Relative(reference.Numbers("recomputed", "sd_limits", "lower")[level], deviation.Interval!.Lower, 1e-8);
        Agree.Relative(reference.Numbers("recomputed", "sd_limits", "upper")[level], deviation.Interval.Upper, 1e-8);
    }

    [Fact]
    public void BothSpreads_AllEqual_HaveNoInterval()
    {
        Assert.Null(SpreadInterval.Variance(Sample.Of(2, 2)).Interval);
        Assert.Single(SpreadInterval.StandardDeviation(Sample.Of(2, 2)).Notes);
    }

    [Fact]
    public void StandardDeviation_OneValue_IsRefused() =>
        Assert.StartsWith(
            "Count of values must be at least 2; was 1.",
            Assert.Throws<ArgumentException>(() => SpreadInterval.StandardDeviation(Sample.Of(2))).Message,
            StringComparison.Ordinal
        );
}
