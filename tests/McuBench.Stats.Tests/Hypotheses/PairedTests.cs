using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class PairedTests
{
    [Fact]
    public void StudentT_TwoDrugs_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-sleep");
        TTestResult test = Paired.StudentT(
            Sample.Of(reference.Numbers("input", "drug1")),
            Sample.Of(reference.Numbers("input", "drug2"))
        );

        Agree.Relative(
            reference.Numbers("recomputed", "paired_t_df_p_low_high"),
            HypothesisReference.All(test).AsSpan(1),
            1e-11
        );
        Assert.Equal(10, test.Estimate.Count);
    }

    [Theory]
    [InlineData("ties/outliers")]
    [InlineData("triple/pair")]
    [InlineData("skewed/triple")]
    [InlineData("odd/offset")]
    public void StudentT_DataSets_AgreeWithRAndStatsmodels(string pair)
    {
        (Sample first, Sample second) = HypothesisReference.Pair(pair);
        int n = Math.Min(first.Count, second.Count);
        TTestResult test = Paired.StudentT(
            Sample.Of(first.Values[..n]),
            Sample.Of(second.Values[..n]),
            HypothesisReference.Ninety
        );

        HypothesisReference.AgreeWithBoth(
            "paired_mean_t_df_p_low_high_90",
            pair,
            HypothesisReference.All(test),
            1e-11,
            1e-8
        );
    }

    [Fact]
    public void StudentT_CountsDiffer_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Paired.StudentT(Sample.Of(1, 2), Sample.Of(1, 2, 3)));

        Assert.Equal("second", refusal.ParamName);
        Assert.StartsWith(
            "Count of second readings must be 2, one for each first reading; was 3.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void StudentT_AllDifferencesEqual_IsRefused() =>
        Assert.StartsWith(
            "Differences must differ; all were equal, which leaves t undefined.",
            Assert.Throws<ArgumentException>(() => Paired.StudentT(Sample.Of(1, 2), Sample.Of(3, 4))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void StudentT_DifferenceAboveTheGreatestNumber_IsRefused() =>
        Assert.StartsWith(
            "Difference of the values must be below 1.8E308",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => Paired.StudentT(Sample.Of(1e308, 1), Sample.Of(-1e308, 2)))
                .Message,
            StringComparison.Ordinal
        );

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void StudentT_Swapped_TurnsTheSigns(Dyadic data, int seed)
    {
        double[] other = data.Shuffled(seed);
        var first = Sample.Of([.. data.Values, 100, 101]);
        var second = Sample.Of([.. other, 100, 102]);
        TTestResult forth = Paired.StudentT(first, second);
        TTestResult back = Paired.StudentT(second, first);

        Assert.Equal(-forth.Statistic, back.Statistic);
        Assert.Equal(forth.PValue, back.PValue);
    }
}
