using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class YuenWelchTests
{
    [Fact]
    public void YuenWelch_PublishedPairs_AgreeWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-yuen-welch");
        double[] t = reference.Numbers("expected", "t");
        double[] p = reference.Numbers("expected", "p");
        double[] df = reference.Numbers("recomputed", "df");
        double[][] means = reference.Rows("recomputed", "trimmed_means");
        for (int i = 0; i < t.Length; i++)
        {
            (double[] x, double[] y, double trim) = Input(i);
            TTestResult test = TwoSample.YuenWelch(Sample.Of(x), Sample.Of(y), trim);

            Agree.Relative(t[i], test.Statistic, 1e-9);
            Agree.Relative(p[i], test.PValue, 1e-9);
            Agree.Relative(df[i], test.Estimate.DegreesOfFreedom!.Value, 1e-9);
            Agree.Relative(means[i][0] - means[i][1], test.Estimate.Value, 1e-9);
        }
    }

    [Theory]
    [InlineData("ties/outliers")]
    [InlineData("skewed/triple")]
    [InlineData("odd/offset")]
    public void YuenWelch_DataSets_AgreeWithRAndSciPy(string pair)
    {
        (Sample first, Sample second) = HypothesisReference.Pair(pair);
        foreach (int percent in new[] { 10, 20 })
        {
            TTestResult test = TwoSample.YuenWelch(first, second, percent / 100.0);
            Agree.Relative(
                ReferenceCase.Of("hypotheses-r", $"yuen_{percent}_t_df_p").Numbers(pair),
                HypothesisReference.All(test).AsSpan(1, 3),
                1e-11
            );
            Agree.Relative(
                ReferenceCase.Of("hypotheses-scipy", $"yuen_{percent}_t_p").Numbers(pair),
                [test.Statistic, test.PValue],
                1e-10
            );
        }
    }

    [Fact]
    public void YuenWelch_NothingTrimmed_IsWelch()
    {
        (Sample first, Sample second) = HypothesisReference.Pair("ties/outliers");

        Agree.Relative(
            HypothesisReference.All(TwoSample.Welch(first, second)),
            HypothesisReference.All(TwoSample.YuenWelch(first, second, 0)),
            1e-13
        );
    }

    [Fact]
    public void YuenWelch_OneValueLeft_IsRefusedWithTheNumberThatWouldDo()
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            TwoSample.YuenWelch(Sample.Of(1, 2, 3), Sample.Of(1, 2, 3, 4), 0.4)
        );

        Assert.Equal("first", refusal.ParamName);
        Assert.StartsWith(
            "Count of values left by trimming must be at least 2; was 1, of 3 values.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void YuenWelch_HalfTrimmed_IsRefused() =>
        Assert.StartsWith(
            "Fraction at each end must be from 0 to below 0.5; was 0.5.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => TwoSample.YuenWelch(Sample.Of(1, 2), Sample.Of(1, 2), 0.5))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void YuenWelch_NothingLeftSpreads_IsRefused() =>
        Assert.StartsWith(
            "Values must differ within at least one of the samples",
            Assert
                .Throws<ArgumentException>(() =>
                    TwoSample.YuenWelch(Sample.Of(0, 1, 1, 1, 9), Sample.Of(-4, 2, 2, 2, 5))
                )
                .Message,
            StringComparison.Ordinal
        );

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void YuenWelch_OneValueRunsAway_ChangesNothing(Dyadic data)
    {
        double[] ten = [.. data.Values, 60, 61, 62, 63, 64, 65, 66, 67, 68];
        var other = Sample.Of(1, 2, 3, 4, 5);

        Assert.Equal(
            TwoSample.YuenWelch(Sample.Of([.. ten, 1e3]), other),
            TwoSample.YuenWelch(Sample.Of([.. ten, 1e9]), other)
        );
    }

    private static (double[] X, double[] Y, double Trim) Input(int pair)
    {
        var input = ReferenceCase.Of("classic-data", "cl-yuen-welch");
        string[] pairs = ["input", "pairs"];
        return (
            input.NumbersIn("x", pair, pairs),
            input.NumbersIn("y", pair, pairs),
            input.NumberIn("trim", pair, pairs)
        );
    }
}
