using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class TrimmedMeanIntervalTests
{
    [Theory]
    [MemberData(nameof(IntervalReference.Sets), MemberType = typeof(IntervalReference))]
    public void Yuen_DataSets_AgreesWithRAndSciPy(string set)
    {
        Estimate mean = TrimmedMeanInterval.Yuen(Sample.Of(Datasets.Values(set)), 0.2, 0.9);

        IntervalReference.AgreeWithBoth(
            "trimmed_20_value_error_low_high_90",
            set,
            [mean.Value, mean.StandardError!.Value, .. IntervalReference.Ends(mean)],
            // SciPy's error comes from a difference of means, on the offset data of nearly equal ones.
            set is "offset"
                ? 1e-8
                : 1e-11
        );
        Assert.Equal("trimmed mean (20 % at each end), Yuen t", mean.Method);
    }

    [Fact]
    public void Yuen_NothingTrimmed_IsTheTInterval()
    {
        var sample = Sample.Of(Datasets.Values("odd"));
        Estimate plain = MeanInterval.StudentT(sample);
        Estimate trimmed = TrimmedMeanInterval.Yuen(sample, 0);

        Agree.Relative(plain.Interval!.Lower, trimmed.Interval!.Lower, 1e-15);
        Agree.Relative(plain.StandardError!.Value, trimmed.StandardError!.Value, 1e-15);
    }

    [Fact]
    public void Yuen_ValuesLeftEqual_HasNoInterval()
    {
        Estimate mean = TrimmedMeanInterval.Yuen(Sample.Of(1, 5, 5, 5, 900), 0.2);

        Assert.Equal(5, mean.Value);
        Assert.Null(mean.Interval);
        Assert.Single(mean.Notes);
    }

    [Fact]
    public void Yuen_OneValueLeft_IsRefused() =>
        Assert.StartsWith(
            "Count of values left by trimming must be at least 2; was 1, of 3 values.",
            Assert.Throws<ArgumentException>(() => TrimmedMeanInterval.Yuen(Sample.Of(1, 2, 3), 0.4)).Message,
            StringComparison.Ordinal
        );
}
