using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class OneSampleTests
{
    [Fact]
    public void StudentT_HeatFlowMeter_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("nist-handbook", "hb-mean-ci-zarr13");
        TTestResult test = OneSample.StudentT(
            Sample.Of(reference.Numbers("input", "y")),
            new TTestOptions { NullValue = reference.Number("input", "mu0") }
        );

        Agree.Relative(reference.Number("recomputed", "t_statistic"), test.Statistic, 1e-11);
        Assert.Equal(reference.Number("expected", "df"), test.Estimate.DegreesOfFreedom);
        Assert.Equal(reference.Number("expected", "lower"), test.Estimate.Interval!.Lower, 5e-7);
        Assert.Equal(reference.Number("expected", "upper"), test.Estimate.Interval.Upper, 5e-7);
        // Some 1e-441: below the least double.
        Assert.Equal(0, test.PValue);
    }

    [Fact]
    public void StudentT_Maize_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-darwin-maize");
        TTestResult test = OneSample.StudentT(Sample.Of(reference.Numbers("input", "difference")));

        Agree.Relative(reference.Number("recomputed", "mean"), test.Estimate.Value, 1e-11);
        Agree.Relative(reference.Number("recomputed", "t"), test.Statistic, 1e-11);
        Agree.Relative(reference.Number("recomputed", "p_t"), test.PValue, 1e-11);
        Agree.Relative(
            reference.Numbers("recomputed", "ci95"),
            [test.Estimate.Interval!.Lower, test.Estimate.Interval.Upper],
            1e-10
        );
    }

    [Theory]
    [InlineData("pair")]
    [InlineData("triple")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    public void StudentT_DataSets_AgreeWithRAndStatsmodels(string set) =>
        // SciPy's t quantiles hold eight digits, and ends near 0 lose more.
        HypothesisReference.AgreeWithBoth(
            "one_sample_against_1_mean_t_df_p_low_high_90",
            set,
            HypothesisReference.All(
                OneSample.StudentT(Sample.Of(Datasets.Values(set)), HypothesisReference.Ninety with { NullValue = 1 })
            ),
            1e-11,
            1e-8
        );

    [Fact]
    public void StudentT_OneSided_HasHalfThePValueAndAnOpenInterval()
    {
        var sample = Sample.Of(Datasets.Values("odd"));
        var options = new TTestOptions { NullValue = 55 };
        TTestResult both = OneSample.StudentT(sample, options);
        TTestResult greater = OneSample.StudentT(sample, options with { Alternative = Alternative.Greater });
        TTestResult less = OneSample.StudentT(sample, options with { Alternative = Alternative.Less });

        Agree.Relative(both.PValue, 2 * Math.Min(greater.PValue, less.PValue), 1e-14);
        Agree.Relative(1, greater.PValue + less.PValue, 1e-14);
        Assert.Equal(double.PositiveInfinity, greater.Estimate.Interval!.Upper);
        Assert.Equal(double.NegativeInfinity, less.Estimate.Interval!.Lower);
    }

    [Fact]
    public void StudentT_OneValue_IsRefusedWithTheNumberThatWouldDo()
    {
        var refusal = Assert.Throws<ArgumentException>(() => OneSample.StudentT(Sample.Of(3)));

        Assert.Equal("sample", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void StudentT_AllEqual_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => OneSample.StudentT(Sample.Of(3, 3, 3)));

        Assert.Equal("sample", refusal.ParamName);
        Assert.StartsWith(
            "Values must differ; all were equal, which leaves t undefined.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void StudentT_NullValueAtAnEndOfTheInterval_GivesTheLevel(Dyadic data)
    {
        var sample = Sample.Of([.. data.Values, 100, 101]);
        TTestResult test = OneSample.StudentT(sample);
        TTestResult atTheEnd = OneSample.StudentT(
            sample,
            new TTestOptions { NullValue = test.Estimate.Interval!.Upper }
        );

        Assert.Equal(0.05, atTheEnd.PValue, 1e-10);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void StudentT_ShuffledShiftedAndScaled_KeepsT(Dyadic data, int seed)
    {
        double[] values = [.. data.Values, 100, 101];
        double t = OneSample.StudentT(Sample.Of(values)).Statistic;
        Dyadic all = new(values);

        Assert.Equal(t, OneSample.StudentT(Sample.Of(all.Shuffled(seed))).Statistic, 1e-10);
        Assert.Equal(
            t,
            OneSample.StudentT(Sample.Of(all.Map(v => 4 * v + 1024)), new TTestOptions { NullValue = 1024 }).Statistic,
            1e-9
        );
    }
}
