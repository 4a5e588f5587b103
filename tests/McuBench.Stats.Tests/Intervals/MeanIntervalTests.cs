using FsCheck.Xunit;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class MeanIntervalTests
{
    [Fact]
    public void StudentT_HeatFlowMeter_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("nist-handbook", "hb-mean-ci-zarr13");
        Estimate mean = MeanInterval.StudentT(Sample.Of(reference.Numbers("input", "y")));

        // Printed to six decimals, some from single precision; then the recomputed digits.
        Assert.Equal(reference.Number("expected", "lower"), mean.Interval!.Lower, 1e-6);
        Assert.Equal(reference.Number("expected", "upper"), mean.Interval.Upper, 1e-6);
        Agree.Relative(reference.Number("recomputed", "mean"), mean.Value, 1e-13);
        Agree.Relative(reference.Number("recomputed", "lower"), mean.Interval.Lower, 1e-12);
        Agree.Relative(reference.Number("recomputed", "upper"), mean.Interval.Upper, 1e-12);
        Assert.Equal(194, mean.DegreesOfFreedom);
        Assert.Equal(195, mean.Count);
        Assert.Equal("mean, Student t", mean.Method);
        Assert.Empty(mean.Notes);
    }

    [Theory]
    [InlineData("pair")]
    [InlineData("triple")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    public void StudentT_DataSets_AgreeWithRAndSciPy(string set)
    {
        Estimate mean = MeanInterval.StudentT(Sample.Of(Datasets.Values(set)), 0.9);
        double[] actual = [mean.Value, mean.StandardError!.Value, mean.Interval!.Lower, mean.Interval.Upper];

        // R's own variance loses digits on the offset data. SciPy 1.10 has t quantiles to 5e-9 only.
        Agree.Relative(ReferenceCase.Of("tmeans-r", "mean_error_low_high_90").Numbers(set), actual, 1e-12);
        Agree.Relative(ReferenceCase.Of("tmeans-scipy", "mean_error_low_high_90").Numbers(set), actual, 1e-8);
    }

    [Fact]
    public void StudentT_OneValue_HasNoIntervalAndSaysWhy()
    {
        Estimate mean = MeanInterval.StudentT(Sample.Of(4.5));

        Assert.Equal(4.5, mean.Value);
        Assert.Null(mean.StandardError);
        Assert.Null(mean.Interval);
        Assert.Equal("One value shows no spread: no interval.", Assert.Single(mean.Notes));
    }

    [Fact]
    public void StudentT_AllEqual_HasNoIntervalAndSaysWhy()
    {
        Estimate mean = MeanInterval.StudentT(Sample.Of(0.1, 0.1, 0.1));

        Assert.Equal(0.1, mean.Value);
        Assert.Null(mean.StandardError);
        Assert.Null(mean.Interval);
        Assert.Equal("All values are equal: the spread is not resolved, so no interval.", Assert.Single(mean.Notes));
    }

    [Fact]
    public void StudentT_EndAboveTheGreatestNumber_IsRefused() =>
        Assert.Equal(
            "sample",
            Assert.Throws<ArgumentOutOfRangeException>(() => MeanInterval.StudentT(Sample.Of(1e307, 1e308))).ParamName
        );

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(95)]
    [InlineData(double.NaN)]
    public void StudentT_NotAConfidence_IsRefused(double confidence)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            MeanInterval.StudentT(Sample.Of(1, 2), confidence)
        );

        Assert.Equal("confidence", refusal.ParamName);
        Assert.StartsWith("Confidence must be above 0 and below 1; was ", refusal.Message, StringComparison.Ordinal);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void StudentT_ShiftedScaledAndPermuted_FollowsTheData(Dyadic data, int seed)
    {
        Estimate before = MeanInterval.StudentT(Sample.Of(data.Values));
        double[] moved = [.. data.Shuffled(seed).Select(value => -2 * (value + 64))];
        Estimate after = MeanInterval.StudentT(Sample.Of(moved));

        Assert.Equal(-2 * (before.Value + 64), after.Value, 1e-12);
        Assert.Equal(before.Interval is null, after.Interval is null);
        if (before.Interval is { } interval)
        {
            Assert.True(interval.Contains(before.Value));
            Assert.Equal(-2 * (interval.Upper + 64), after.Interval!.Lower, 1e-9);
            Assert.Equal(-2 * (interval.Lower + 64), after.Interval.Upper, 1e-9);
        }
    }
}
