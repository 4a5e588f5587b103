using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class BrunnerMunzelTests
{
    private static readonly BrunnerMunzelOptions Ninety = new() { Confidence = 0.9 };

    [Fact]
    public void BrunnerMunzel_PainScores_AgreesWithThePaper()
    {
        var reference = ReferenceCase.Of("ranks", "cl-brunner-munzel-pain");
        // The paper's relative effect is that of the second group above the first.
        TTestResult test = TwoSample.BrunnerMunzel(
            Sample.Of(reference.Numbers("input", "N")),
            Sample.Of(reference.Numbers("input", "Y"))
        );

        Agree.Relative(reference.Numbers("recomputed", "statistic_p"), [test.Statistic, test.PValue], 1e-12);
        Agree.Relative(reference.Number("recomputed", "relative_effect"), test.Estimate.Value, 1e-11);
        Assert.Equal(reference.Number("expected", "df"), test.Estimate.DegreesOfFreedom!.Value, 5e-4);
        Agree.Relative(
            reference.Numbers("expected", "ci95"),
            [test.Estimate.Interval!.Lower, test.Estimate.Interval.Upper],
            1e-7
        );
    }

    [Theory]
    [MemberData(nameof(RankReference.Overlapping), MemberType = typeof(RankReference))]
    public void BrunnerMunzel_DataSets_AgreesWithRAndStatsmodels(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);
        TTestResult less = TwoSample.BrunnerMunzel(
            first,
            second,
            Ninety with
            {
                NullValue = 0.6,
                Alternative = Alternative.Less,
            }
        );

        // SciPy's t quantile is off by up to 5e-9.
        RankReference.AgreeWithBoth(
            "brunner_munzel_p_t_df_p_low_high_90",
            pair,
            HypothesisReference.All(TwoSample.BrunnerMunzel(first, second, Ninety)),
            1e-11,
            1e-8
        );
        RankReference.AgreeWithBoth(
            "brunner_munzel_less_than_60_t_p_high_90",
            pair,
            [less.Statistic, less.PValue, less.Estimate.Interval!.Upper],
            1e-11,
            1e-8
        );
        Assert.Equal(0, less.Estimate.Interval.Lower);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void BrunnerMunzel_SwappedAndStretched_FollowsTheOrderAlone(Dyadic a, Dyadic b)
    {
        double[] first = [.. a.Values, -60, 60];
        double[] second = [.. b.Values, -70, 50];
        TTestResult forth = TwoSample.BrunnerMunzel(Sample.Of(first), Sample.Of(second));
        TTestResult back = TwoSample.BrunnerMunzel(Sample.Of(second), Sample.Of(first));
        TTestResult stretched = TwoSample.BrunnerMunzel(
            Sample.Of([.. first.Select(value => value * value * value)]),
            Sample.Of([.. second.Select(value => value * value * value)])
        );

        Assert.Equal(-forth.Statistic, back.Statistic, 1e-9);
        Assert.Equal(1 - forth.Estimate.Value, back.Estimate.Value, 1e-12);
        Assert.Equal(1 - forth.Estimate.Interval!.Lower, back.Estimate.Interval!.Upper, 1e-9);
        Assert.Equal(forth, stretched);
        Assert.InRange(forth.Estimate.Interval.Lower, 0, forth.Estimate.Value);
        Assert.InRange(forth.Estimate.Interval.Upper, forth.Estimate.Value, 1);
    }

    [Theory]
    [InlineData(new[] { 1.0, 2 }, new[] { 3.0, 4 })]
    [InlineData(new[] { 2.0, 2 }, new[] { 2.0, 2, 2 })]
    public void BrunnerMunzel_ApartOrEqual_IsRefusedWithWhatWouldDo(double[] first, double[] second)
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            TwoSample.BrunnerMunzel(Sample.Of(first), Sample.Of(second))
        );

        Assert.Equal("second", refusal.ParamName);
        Assert.StartsWith(
            "Samples must overlap and not be equal throughout",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("use MannWhitney", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void BrunnerMunzel_OneValue_IsRefusedWithTheNumberThatWouldDo() =>
        Assert.StartsWith(
            "Count of values must be at least 2; was 1.",
            Assert.Throws<ArgumentException>(() => TwoSample.BrunnerMunzel(Sample.Of(1), Sample.Of(0, 2))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => new BrunnerMunzelOptions { NullValue = 1 });

        Assert.Equal("NullValue", refusal.ParamName);
        Assert.StartsWith("Null value must be above 0 and below 1; was 1.", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(
            "Confidence",
            Assert.Throws<ArgumentOutOfRangeException>(() => new BrunnerMunzelOptions { Confidence = 0 }).ParamName
        );
        Assert.Equal(
            "Alternative",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => new BrunnerMunzelOptions { Alternative = (Alternative)9 })
                .ParamName
        );
    }
}
