using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class KruskalWallisTests
{
    [Fact]
    public void KruskalWallis_FourFunds_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("ranks", "hb-kruskal-funds");
        ChiSquaredTestResult test = OneWay.KruskalWallis(Samples(reference.Rows("input", "groups")));

        // The handbook leaves out the correction for the one pair of equal values, 6 of 19³ − 19.
        Assert.Equal(reference.Number("expected", "H"), test.Statistic * (1 - 6.0 / 6840), 5e-4);
        Agree.Relative(
            [reference.Number("recomputed", "H_corrected_for_ties"), reference.Number("recomputed", "p_corrected")],
            [test.Statistic, test.PValue],
            1e-11
        );
        Assert.Equal((3, 19, "Kruskal-Wallis, corrected for ties"), (test.DegreesOfFreedom, test.Count, test.Method));
    }

    [Theory]
    [InlineData("anova", "cl-insectsprays", "groups", "kruskal_chi2_p")]
    [InlineData("ranks", "cl-airquality-kruskal", "months_5_to_9", "chi2_df_p")]
    public void KruskalWallis_ManyTies_AgreesWithTheReference(string file, string key, string groups, string expected)
    {
        var reference = ReferenceCase.Of(file, key);
        ChiSquaredTestResult test = OneWay.KruskalWallis(Samples(reference.Rows("input", groups)));
        double[] numbers = reference.Numbers("recomputed", expected);

        Agree.Relative([numbers[0], numbers[^1]], [test.Statistic, test.PValue], 1e-11);
    }

    [Fact]
    public void KruskalWallis_PlantWeights_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-plantgrowth");
        ChiSquaredTestResult test = OneWay.KruskalWallis(
            Sample.Of(reference.Numbers("input", "ctrl")),
            Sample.Of(reference.Numbers("input", "trt1")),
            Sample.Of(reference.Numbers("input", "trt2"))
        );

        Agree.Relative(reference.Numbers("recomputed", "kruskal_chi2_p"), [test.Statistic, test.PValue], 1e-11);
        Assert.Equal(reference.Number("expected", "kruskal_p"), test.PValue, 5e-6);
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("small")]
    [InlineData("offset")]
    [InlineData("skewed")]
    public void KruskalWallis_DataSets_AgreesWithRAndSciPy(string set)
    {
        ChiSquaredTestResult test = OneWay.KruskalWallis(HypothesisReference.Groups(set));

        RankReference.AgreeWithBoth(
            "kruskal_wallis_h_df_p",
            set,
            [test.Statistic, test.DegreesOfFreedom, test.PValue],
            1e-12,
            1e-12
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void KruskalWallis_TwoGroups_IsMannWhitney(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values, 0]);
        var second = Sample.Of([.. b.Values, 1]);
        RankTestResult ranks = TwoSample.MannWhitney(
            first,
            second,
            RankReference.Normal with
            {
                CorrectsForContinuity = false,
            }
        );
        ChiSquaredTestResult test = OneWay.KruskalWallis(first, second);

        Assert.Equal(ranks.Z!.Value * ranks.Z.Value, test.Statistic, 1e-9);
        Assert.Equal(ranks.PValue, test.PValue, 1e-9);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void KruskalWallis_OtherOrderOrScale_ChangesNothing(Dyadic a, Dyadic b, Dyadic c)
    {
        ChiSquaredTestResult before = OneWay.KruskalWallis(
            Sample.Of([.. a.Values, 1]),
            Sample.Of([.. b.Values, 2]),
            Sample.Of(c.Values)
        );
        ChiSquaredTestResult after = OneWay.KruskalWallis(
            Sample.Of([.. c.Shuffled(5).Select(value => 8 * value + 3)]),
            Sample.Of([.. a.Values.Select(value => 8 * value + 3), 11]),
            Sample.Of([19, .. b.Values.Select(value => 8 * value + 3)])
        );

        Assert.Equal(before.Statistic, after.Statistic, 1e-9);
        Assert.Equal(before.Method, after.Method);
    }

    [Fact]
    public void KruskalWallis_AllEqualOneGroupOrNone_AreRefused()
    {
        var same = Sample.Of(4, 4);
        var allEqual = Assert.Throws<ArgumentException>(() => OneWay.KruskalWallis(same, same));

        Assert.Equal("groups", allEqual.ParamName);
        Assert.StartsWith("Values must differ; all were equal", allEqual.Message, StringComparison.Ordinal);
        Assert.StartsWith(
            "Count of groups must be at least 2; was 1.",
            Assert.Throws<ArgumentException>(() => OneWay.KruskalWallis(same)).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Group at index 1 must be given; was null.",
            Assert.Throws<ArgumentException>(() => OneWay.KruskalWallis(same, null!)).Message,
            StringComparison.Ordinal
        );
    }

    private static Sample[] Samples(double[][] groups) => [.. groups.Select(group => Sample.Of(group))];
}
