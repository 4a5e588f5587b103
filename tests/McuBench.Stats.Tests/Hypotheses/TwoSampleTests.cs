using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class TwoSampleTests
{
    [Fact]
    public void WelchAndPooled_MilesPerGallon_AgreeWithTheHandbook()
    {
        var reference = ReferenceCase.Of("nist-handbook", "hb-ttest-auto83b");
        var first = Sample.Of(reference.Numbers("input", "sample1"));
        var second = Sample.Of(reference.Numbers("input", "sample2"));
        TTestResult pooled = TwoSample.Pooled(first, second);
        TTestResult welch = TwoSample.Welch(first, second);

        Assert.Equal(reference.Number("expected", "t_pooled"), pooled.Statistic, 5e-6);
        Assert.Equal(reference.Number("expected", "df_pooled"), pooled.Estimate.DegreesOfFreedom);
        Agree.Relative(reference.Number("recomputed", "t_pooled"), pooled.Statistic, 1e-11);
        // Kept to eight digits.
        Agree.Relative(reference.Number("recomputed", "p_pooled"), pooled.PValue, 1e-8);
        Agree.Relative(reference.Number("recomputed", "t_welch"), welch.Statistic, 1e-11);
        Agree.Relative(reference.Number("recomputed", "df_welch"), welch.Estimate.DegreesOfFreedom!.Value, 1e-11);
        Agree.Relative(reference.Number("recomputed", "p_welch"), welch.PValue, 1e-8);
        Agree.Relative(reference.Numbers("recomputed", "ci95_pooled"), Ends(pooled), 1e-11);
        Agree.Relative(reference.Numbers("recomputed", "ci95_welch"), Ends(welch), 1e-11);
    }

    [Fact]
    public void WelchAndPooled_TwoDrugs_AgreeWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-sleep");
        var first = Sample.Of(reference.Numbers("input", "drug1"));
        var second = Sample.Of(reference.Numbers("input", "drug2"));

        Agree.Relative(
            reference.Numbers("recomputed", "welch_t_df_p_low_high"),
            TestOnly(TwoSample.Welch(first, second)),
            1e-10
        );
        Agree.Relative(
            reference.Numbers("recomputed", "pooled_t_df_p_low_high"),
            TestOnly(TwoSample.Pooled(first, second)),
            1e-10
        );
    }

    [Theory]
    [InlineData("ties", "outliers")]
    [InlineData("triple", "pair")]
    [InlineData("skewed", "triple")]
    [InlineData("odd", "offset")]
    public void WelchAndPooled_DataSets_AgreeWithRAndStatsmodels(string a, string b)
    {
        var first = Sample.Of(Datasets.Values(a));
        var second = Sample.Of(Datasets.Values(b));
        var options = new TTestOptions { Confidence = 0.9 };
        foreach ((string file, double tolerance) in new[] { ("tmeans-r", 1e-11), ("tmeans-scipy", 2e-8) })
        {
            Agree.Relative(
                ReferenceCase.Of(file, "welch_difference_t_df_p_low_high_90").Numbers($"{a}/{b}"),
                All(TwoSample.Welch(first, second, options)),
                tolerance
            );
            Agree.Relative(
                ReferenceCase.Of(file, "pooled_difference_t_df_p_low_high_90").Numbers($"{a}/{b}"),
                All(TwoSample.Pooled(first, second, options)),
                tolerance
            );
        }
    }

    [Theory]
    [InlineData("ties", "outliers")]
    [InlineData("triple", "pair")]
    [InlineData("skewed", "triple")]
    public void Welch_OneSidedAgainstOne_AgreesWithR(string a, string b)
    {
        var first = Sample.Of(Datasets.Values(a));
        var second = Sample.Of(Datasets.Values(b));
        var options = new TTestOptions
        {
            Confidence = 0.9,
            NullValue = 1,
            Alternative = Alternative.Less,
        };
        TTestResult less = TwoSample.Welch(first, second, options);
        TTestResult greater = TwoSample.Welch(first, second, options with { Alternative = Alternative.Greater });

        Agree.Relative(
            ReferenceCase.Of("tmeans-r", "welch_less_than_1_t_p_high_90").Numbers($"{a}/{b}"),
            [less.Statistic, less.PValue, less.Estimate.Interval!.Upper],
            1e-11
        );
        Assert.Equal(double.NegativeInfinity, less.Estimate.Interval.Lower);
        Agree.Relative(
            ReferenceCase.Of("tmeans-r", "welch_greater_than_1_t_p_low_90").Numbers($"{a}/{b}"),
            [greater.Statistic, greater.PValue, greater.Estimate.Interval!.Lower],
            1e-11
        );
        Assert.Equal(double.PositiveInfinity, greater.Estimate.Interval.Upper);
    }

    [Fact]
    public void Welch_OneValue_IsRefusedWithTheNumberThatWouldDo()
    {
        var refusal = Assert.Throws<ArgumentException>(() => TwoSample.Welch(Sample.Of(1, 2), Sample.Of(3)));

        Assert.Equal("second", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pooled_OneValueAgainstTwo_IsPossible() =>
        // By hand: s = sqrt(1/2), error = s * sqrt(3/2), difference 1.5 - 3.
        Agree.Relative(-1.5 / Math.Sqrt(0.75), TwoSample.Pooled(Sample.Of(1, 2), Sample.Of(3)).Statistic, 1e-15);

    [Fact]
    public void Pooled_TwoValues_AreRefusedWithTheNumberThatWouldDo() =>
        Assert.StartsWith(
            "Count of values must be at least 3; was 2.",
            Assert.Throws<ArgumentException>(() => TwoSample.Pooled(Sample.Of(1), Sample.Of(3))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void WelchAndPooled_NeitherSampleSpreads_AreRefused()
    {
        var first = Sample.Of(1, 1);
        var second = Sample.Of(2, 2);

        Assert.StartsWith(
            "Values must differ within at least one of the samples",
            Assert.Throws<ArgumentException>(() => TwoSample.Welch(first, second)).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => TwoSample.Pooled(first, second));
    }

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        Assert.Equal(
            "NullValue",
            Assert.Throws<ArgumentOutOfRangeException>(() => new TTestOptions { NullValue = double.NaN }).ParamName
        );
        Assert.Equal(
            "Confidence",
            Assert.Throws<ArgumentOutOfRangeException>(() => new TTestOptions { Confidence = 1 }).ParamName
        );
        Assert.Equal(
            "Alternative",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => new TTestOptions { Alternative = (Alternative)3 })
                .ParamName
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void WelchAndPooled_Swapped_TurnTheSigns(Dyadic a, Dyadic b)
    {
        // Two values more, so that every sample spreads.
        var first = Sample.Of([.. a.Values, 100, 101]);
        var second = Sample.Of([.. b.Values, 100, 102]);
        foreach (
            Func<Sample, Sample, TTestResult> test in new Func<Sample, Sample, TTestResult>[]
            {
                (x, y) => TwoSample.Welch(x, y),
                (x, y) => TwoSample.Pooled(x, y),
            }
        )
        {
            TTestResult forth = test(first, second);
            TTestResult back = test(second, first);

            Assert.Equal(-forth.Statistic, back.Statistic, 1e-12);
            Assert.Equal(forth.PValue, back.PValue, 1e-12);
            Assert.Equal(-forth.Estimate.Interval!.Lower, back.Estimate.Interval!.Upper, 1e-9);
            Assert.InRange(forth.PValue, 0, 1);
        }
    }

    private static double[] Ends(TTestResult test) => [test.Estimate.Interval!.Lower, test.Estimate.Interval.Upper];

    private static double[] TestOnly(TTestResult test) =>
        [test.Statistic, test.Estimate.DegreesOfFreedom!.Value, test.PValue, .. Ends(test)];

    private static double[] All(TTestResult test) => [test.Estimate.Value, .. TestOnly(test)];
}
