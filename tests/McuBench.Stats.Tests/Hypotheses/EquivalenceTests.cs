using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class EquivalenceTests
{
    private static readonly EquivalenceMargin Three = EquivalenceMargin.Within(3);

    [Fact]
    public void WelchAndPooled_Yields_AgreeWithTheReference()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-tost-yield");
        var first = Sample.Of(reference.Numbers("input", "A"));
        var second = Sample.Of(reference.Numbers("input", "B"));
        var margin = EquivalenceMargin.Of(reference.Number("input", "lower"), reference.Number("input", "upper"));
        EquivalenceResult pooled = Equivalence.Pooled(first, second, margin);
        EquivalenceResult welch = Equivalence.Welch(first, second, margin);

        // The source prints 95 % intervals; ours is the 90 % one that decides, so it is not compared here.
        Agree.Relative(
            reference.Numbers("recomputed", "pooled_diff_se_df_plower_pupper_ci").AsSpan(0, 5),
            DifferenceErrorAndPValues(pooled),
            1e-11
        );
        Agree.Relative(
            reference.Numbers("recomputed", "welch_diff_se_df_plower_pupper_ci").AsSpan(0, 5),
            DifferenceErrorAndPValues(welch),
            1e-11
        );
        Assert.Equal(reference.Number("expected", "welch", "p_lower"), welch.PValueAgainstLower, 5e-6);
        Assert.True(pooled.IsEquivalent);
        Assert.True(welch.IsEquivalent);
        Assert.Equal(welch.PValueAgainstLower, welch.PValue);
    }

    [Theory]
    [InlineData("ties/outliers")]
    [InlineData("triple/pair")]
    [InlineData("skewed/triple")]
    [InlineData("odd/offset")]
    public void All_DataSets_AgreeWithRAndStatsmodels(string pair)
    {
        (Sample first, Sample second) = HypothesisReference.Pair(pair);
        foreach (
            (string part, EquivalenceResult result) in new[]
            {
                ("tost_welch_3_lower_t_p_upper_t_p", Equivalence.Welch(first, second, Three)),
                ("tost_pooled_3_lower_t_p_upper_t_p", Equivalence.Pooled(first, second, Three)),
                (
                    "tost_logs_half_to_2_lower_t_p_upper_t_p",
                    Equivalence.WelchOnLogs(first, second, EquivalenceMargin.WithinFactor(2))
                ),
            }
        )
        {
            // Far tails of t lose digits as t itself does, times its size.
            HypothesisReference.AgreeWithBoth(part, pair, Statistics(result), 1e-10, 1e-10);
        }
    }

    [Fact]
    public void WelchOnLogs_Estimate_IsTheRatioWithItsInterval()
    {
        (Sample first, Sample second) = HypothesisReference.Pair("ties/outliers");
        EquivalenceResult result = Equivalence.WelchOnLogs(first, second, EquivalenceMargin.Of(0.8, 1.25), 0.1);

        Assert.Equal(RatioInterval.WelchOnLogs(first, second, 0.8), result.Estimate);
        Assert.Equal(EquivalenceMargin.Of(0.8, 1.25), result.Margin);
    }

    [Theory]
    [InlineData("ties/outliers")]
    [InlineData("ties1/ties2")]
    [InlineData("ties2/ties3")]
    [InlineData("offset1/offset2")]
    [InlineData("skewed1/skewed2")]
    [InlineData("skewed3/skewed4")]
    public void MannWhitney_DataSets_AgreesWithRAndSciPy(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);

        Agree.Relative(
            OrderReference.Expected("tost_ranks_1_5_lower_u_p_upper_u_p", pair),
            Statistics(
                Equivalence.MannWhitney(
                    first,
                    second,
                    EquivalenceMargin.Within(1.5),
                    distribution: NullDistribution.Normal
                )
            ),
            1e-12
        );
        Agree.Relative(
            OrderReference.Expected("tost_rank_logs_1_7_lower_u_p_upper_u_p", pair),
            Statistics(
                Equivalence.MannWhitneyOnLogs(
                    first,
                    second,
                    EquivalenceMargin.WithinFactor(1.7),
                    distribution: NullDistribution.Normal
                )
            ),
            1e-12
        );
    }

    [Theory]
    [InlineData("skewed1/skewed2")]
    [InlineData("skewed3/skewed4")]
    public void MannWhitney_Exact_AgreesWithRAndSciPy(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);
        EquivalenceResult result = Equivalence.MannWhitney(first, second, EquivalenceMargin.Within(1.53));

        Agree.Relative(
            OrderReference.Expected("tost_ranks_exact_lower_p_upper_p", pair),
            [result.PValueAgainstLower, result.PValueAgainstUpper],
            1e-12
        );
        Assert.Equal(HodgesLehmannInterval.Shift(first, second, 0.9), result.Estimate);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MannWhitney_DecisionWithoutTies_IsThatOfTheInterval(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values.Distinct(), 101, 102, 103]);
        var second = Sample.Of([.. b.Values.Distinct(), 105, 107, 108]);
        // Differences are eighths, so that none equals the margin.
        var margin = EquivalenceMargin.Within(7.3);
        EquivalenceResult result = Equivalence.MannWhitney(first, second, margin);
        Interval interval = result.Estimate.Interval!;
        EquivalenceResult back = Equivalence.MannWhitney(second, first, margin);

        Assert.Equal(interval.Lower >= margin.Lower && interval.Upper <= margin.Upper, result.IsEquivalent);
        Assert.Equal(result.PValueAgainstLower, back.PValueAgainstUpper, 1e-12);
    }

    [Fact]
    public void MannWhitneyOnLogs_Estimate_IsTheRatioWithItsInterval()
    {
        (Sample first, Sample second) = RankReference.Pair("ties/outliers");
        EquivalenceResult result = Equivalence.MannWhitneyOnLogs(first, second, EquivalenceMargin.Of(0.8, 1.25), 0.1);

        Assert.Equal(HodgesLehmannInterval.Ratio(first, second, 0.8), result.Estimate);
        Assert.Equal(EquivalenceMargin.Of(0.8, 1.25), result.Margin);
        Assert.False(result.IsEquivalent);
    }

    [Fact]
    public void MannWhitney_TooFewValuesEver_IsRefusedWithTheNumberThatWouldDo() =>
        Assert.StartsWith(
            "Count of values must be at least 3 a side for a two-sample rank interval with confidence 90 %; was 2 and 2.",
            Assert
                .Throws<ArgumentException>(() => Equivalence.MannWhitney(Sample.Of(1, 2), Sample.Of(1, 2), Three))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void MannWhitneyOnLogs_MarginFromZero_IsRefused() =>
        Assert.StartsWith(
            "Lower end of a margin for a ratio must be a finite number above 0; was -3.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    Equivalence.MannWhitneyOnLogs(Sample.Of(1, 2), Sample.Of(1, 2), Three)
                )
                .Message,
            StringComparison.Ordinal
        );

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Welch_Decision_IsThatOfTheInterval(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values, 1, 2]);
        var second = Sample.Of([.. b.Values, 1, 2]);
        var margin = EquivalenceMargin.Within(7.3);
        EquivalenceResult result = Equivalence.Welch(first, second, margin);
        Interval interval = result.Estimate.Interval!;

        Assert.Equal(0.9, interval.Confidence, 1e-15);
        Assert.Equal(interval.Lower >= margin.Lower && interval.Upper <= margin.Upper, result.IsEquivalent);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Welch_Swapped_SwapsTheTests(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values, 1, 2]);
        var second = Sample.Of([.. b.Values, 1, 2]);
        EquivalenceResult forth = Equivalence.Welch(first, second, Three);
        EquivalenceResult back = Equivalence.Welch(second, first, Three);

        Assert.Equal(forth.PValueAgainstLower, back.PValueAgainstUpper, 1e-12);
        Assert.Equal(forth.StatisticAgainstUpper, -back.StatisticAgainstLower, 1e-9);
    }

    [Fact]
    public void Margin_WithoutWidth_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => EquivalenceMargin.Of(1, 1));

        Assert.Equal("upper", refusal.ParamName);
        Assert.StartsWith(
            "Upper end of the margin must be above the lower end; was 1.",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => EquivalenceMargin.Within(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => EquivalenceMargin.WithinFactor(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EquivalenceMargin.Of(double.NaN, 1));
    }

    [Fact]
    public void WelchOnLogs_MarginFromZero_IsRefused() =>
        Assert.StartsWith(
            "Lower end of a margin for a ratio must be a finite number above 0; was -3.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    Equivalence.WelchOnLogs(Sample.Of(1, 2), Sample.Of(1, 2), Three)
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Welch_SignificanceOfAHalf_IsRefused() =>
        Assert.StartsWith(
            "Significance must be above 0 and below 0.5; was 0.5.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    Equivalence.Welch(Sample.Of(1, 2), Sample.Of(1, 2), Three, 0.5)
                )
                .Message,
            StringComparison.Ordinal
        );

    private static double[] DifferenceErrorAndPValues(EquivalenceResult result) =>
        [
            result.Estimate.Value,
            result.Estimate.StandardError!.Value,
            result.Estimate.DegreesOfFreedom!.Value,
            result.PValueAgainstLower,
            result.PValueAgainstUpper,
        ];

    private static double[] Statistics(EquivalenceResult result) =>
        [
            result.StatisticAgainstLower,
            result.PValueAgainstLower,
            result.StatisticAgainstUpper,
            result.PValueAgainstUpper,
        ];
}
