using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class EffectSizeTests
{
    [Theory]
    [MemberData(nameof(RankReference.Overlapping), MemberType = typeof(RankReference))]
    public void SuperiorityAndCliffDelta_DataSets_AgreeWithRAndStatsmodels(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);
        Estimate superiority = EffectSize.Superiority(first, second, 0.9);
        Estimate delta = EffectSize.CliffDelta(first, second, 0.9);

        // SciPy's t quantile is off by up to 5e-9.
        RankReference.AgreeWithBoth("superiority_p_se_low_high_90", pair, All(superiority), 1e-11, 1e-8);
        Assert.Equal(2 * superiority.Value - 1, delta.Value, 1e-15);
        Assert.Equal(2 * superiority.StandardError!.Value, delta.StandardError!.Value, 1e-15);
        Assert.Equal(2 * superiority.Interval!.Lower - 1, delta.Interval!.Lower, 1e-15);
        Assert.Equal(2 * superiority.Interval.Upper - 1, delta.Interval.Upper, 1e-15);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void SuperiorityAndCliffDelta_AnyValues_CountPairsAndTurnRound(Dyadic a, Dyadic b)
    {
        double[] first = [.. a.Values, 100, -100];
        double[] second = [.. b.Values, 90, -110];
        Estimate superiority = EffectSize.Superiority(Sample.Of(first), Sample.Of(second));
        Estimate delta = EffectSize.CliffDelta(Sample.Of(first), Sample.Of(second));
        Estimate back = EffectSize.CliffDelta(Sample.Of(second), Sample.Of(first));
        double mean = first.Average(x => second.Average(y => (double)Math.Sign(x - y)));

        Assert.Equal(mean, delta.Value, 1e-12);
        Assert.Equal(-delta.Value, back.Value, 1e-12);
        Assert.Equal(-delta.Interval!.Lower, back.Interval!.Upper, 1e-9);
        Assert.True(superiority.Interval!.Contains(superiority.Value));
        Assert.InRange(superiority.Interval.Lower, 0, 1);
        Assert.InRange(superiority.Interval.Upper, 0, 1);
    }

    [Fact]
    public void Superiority_WithoutOverlap_HasNoIntervalAndSaysSo()
    {
        Estimate estimate = EffectSize.Superiority(Sample.Of(3, 4), Sample.Of(1, 2));

        Assert.Equal(1, estimate.Value);
        Assert.Null(estimate.Interval);
        Assert.Null(estimate.StandardError);
        Assert.StartsWith("The samples do not overlap", Assert.Single(estimate.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void CliffDelta_AllEqual_HasNoIntervalAndSaysSo()
    {
        Estimate estimate = EffectSize.CliffDelta(Sample.Of(3, 3), Sample.Of(3, 3, 3));

        Assert.Equal(0, estimate.Value);
        Assert.Null(estimate.Interval);
        Assert.StartsWith("All values are equal", Assert.Single(estimate.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Superiority_OneValueOrAConfidenceOfOne_AreRefused()
    {
        Assert.Equal(
            "first",
            Assert.Throws<ArgumentException>(() => EffectSize.Superiority(Sample.Of(1), Sample.Of(0, 2))).ParamName
        );
        Assert.Equal(
            "confidence",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => EffectSize.Superiority(Sample.Of(1, 3), Sample.Of(0, 2), 1))
                .ParamName
        );
    }

    private static double[] All(Estimate estimate) =>
        [estimate.Value, estimate.StandardError!.Value, estimate.Interval!.Lower, estimate.Interval.Upper];
}
