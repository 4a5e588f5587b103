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

    [Theory]
    [MemberData(nameof(OrderReference.Pairs), MemberType = typeof(OrderReference))]
    public void HedgesG_DataSets_AgreesWithRAndQuadrature(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);
        Estimate g = EffectSize.HedgesG(first, second, 0.9);

        Agree.Relative(
            OrderReference.Expected("hedges_g_low_high_90", pair),
            [g.Value, g.Interval!.Lower, g.Interval.Upper],
            1e-11
        );
        Assert.Equal("Hedges' g, noncentral t", g.Method);
    }

    [Fact]
    public void HedgesG_FarApart_IsThatOfTheSpreadAlone()
    {
        // t of 1e9 or more: the mean's own error is nothing beside that of s, so the limits are t √(χ²/ν) (mpmath's quantiles
        // of χ² at 6 degrees of freedom).
        Estimate g = EffectSize.HedgesG(Sample.Of(1, 2, 3, 4), Sample.Of(4e9 + 1, 4e9 + 2, 4e9 + 3, 4e9 + 4));
        double d = -4e9 / Math.Sqrt(5.0 / 3);

        Agree.Relative(d * Math.Sqrt(1.2373442457912027 / 6), g.Interval!.Upper, 1e-11);
        Agree.Relative(d * Math.Sqrt(14.449375335447920 / 6), g.Interval.Lower, 1e-11);
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 40)]
    public void HedgesG_SwappedShiftedAndScaled_FollowsTheData(Dyadic a, Dyadic b)
    {
        double[] first = [.. a.Values, 0, 3];
        double[] second = [.. b.Values, 1, 5];
        Estimate forth = EffectSize.HedgesG(Sample.Of(first), Sample.Of(second));
        Estimate back = EffectSize.HedgesG(
            Sample.Of([.. second.Select(value => 4 * value - 16)]),
            Sample.Of([.. first.Select(value => 4 * value - 16)])
        );

        Assert.Equal(-forth.Value, back.Value, 1e-11);
        Assert.Equal(-forth.Interval!.Lower, back.Interval!.Upper, 1e-9);
        Assert.True(forth.Interval.Contains(forth.Value));
    }

    [Fact]
    public void HedgesG_BothSidesOfTheChangeOfMethod_AreAlike()
    {
        // Statistics just below and above 30 roots of the degrees of freedom, where the sum changes from s to the mean.
        Estimate Of(double distance) =>
            EffectSize.HedgesG(Sample.Of(0, 1, 2), Sample.Of(distance, distance + 1, distance + 2), 0.99);
        // t = distance/√(2/3), ν = 4.
        double edge = 60 * Math.Sqrt(2.0 / 3);
        Estimate below = Of(edge * (1 - 1e-9));
        Estimate above = Of(edge * (1 + 1e-9));

        Agree.Relative(below.Interval!.Lower, above.Interval!.Lower, 3e-9);
        Agree.Relative(below.Interval.Upper, above.Interval.Upper, 3e-9);
    }

    [Fact]
    public void HedgesG_WhatCantBeDone_IsRefused()
    {
        var few = Assert.Throws<ArgumentException>(() => EffectSize.HedgesG(Sample.Of(1), Sample.Of(2, 3)));

        Assert.Equal("second", few.ParamName);
        Assert.StartsWith(
            "Count of values must be at least 4 for g, in both samples together; was 3.",
            few.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => EffectSize.HedgesG(Sample.Of(1, 1), Sample.Of(2, 2)));
        Assert.Equal(
            "confidence",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => EffectSize.HedgesG(Sample.Of(1, 3), Sample.Of(0, 2), 0))
                .ParamName
        );
    }

    private static double[] All(Estimate estimate) =>
        [estimate.Value, estimate.StandardError!.Value, estimate.Interval!.Lower, estimate.Interval.Upper];
}
