using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class NormalityTests
{
    [Theory]
    [InlineData("triple")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    [InlineData("eleven")]
    [InlineData("twelve")]
    [InlineData("hundred")]
    [InlineData("most")]
    public void ShapiroWilk_DataSets_AgreeWithRMpmathAndSciPy(string set)
    {
        NormalityResult test = Normality.ShapiroWilk(Sample.Of(Values(set)));
        double[] actual = [test.Statistic, test.PValue];

        // The script takes the 5000 normal quantiles of the largest set in double precision.
        double tolerance = set == "most" ? 1e-11 : 1e-12;
        Agree.Relative(ReferenceCase.Of("normality-r", "shapiro_w_p").Numbers(set), actual, tolerance);
        Agree.Relative(ReferenceCase.Of("normality-scipy", "shapiro_w_p").Numbers(set), actual, tolerance);
        // SciPy's routine takes single precision; a p-value of 1e-36 keeps three digits there.
        Agree.Relative(
            ReferenceCase.Of("normality-scipy", "shapiro_w_p_single").Numbers(set),
            actual,
            set == "most" ? 3e-3 : 1e-4
        );
        Assert.Equal("Shapiro-Wilk", test.Method);
        Assert.False(test.IsPValueBound);
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    [InlineData("eleven")]
    [InlineData("twelve")]
    [InlineData("hundred")]
    public void AndersonDarling_DataSets_AgreeWithRAndStatsmodels(string set)
    {
        NormalityResult test = Normality.AndersonDarling(Sample.Of(Values(set)));
        double[] actual = [test.Statistic, test.PValue];

        Agree.Relative(ReferenceCase.Of("normality-r", "anderson_a_p").Numbers(set), actual, 1e-11);
        Agree.Relative(ReferenceCase.Of("normality-scipy", "anderson_a_p").Numbers(set), actual, 1e-11);
        Assert.Equal("Anderson-Darling", test.Method);
        Assert.False(test.IsPValueBound);
    }

    [Fact]
    public void AndersonDarling_BeyondTheCurve_IsABound()
    {
        double[] expected = ReferenceCase.Of("normality-r", "anderson_a_p").Numbers("most");
        NormalityResult test = Normality.AndersonDarling(Sample.Of(Values("most")));

        Agree.Relative(expected[0], test.Statistic, 1e-11);
        // R gives the same bound, cut off after two digits: 3.7E-24.
        Assert.InRange(test.PValue, expected[1], expected[1] + 0.1e-24);
        Assert.True(test.IsPValueBound);
    }

    [Fact]
    public void AndersonDarling_HandbookCases_AgreeWithTheReference()
    {
        var flow = ReferenceCase.Of("outliers", "hb-case-zarr13");
        double[] heat = ReferenceCase.Of("nist-handbook", "hb-mean-ci-zarr13").Numbers("input", "y");
        NormalityResult test = Normality.AndersonDarling(Sample.Of(heat));
        Agree.Relative(flow.Number("recomputed", "A2"), test.Statistic, 1e-9);
        double n = heat.Length;
        // The handbook prints it times a factor of its own here, and the plain one in the other case.
        Assert.Equal(
            flow.Number("expected", "anderson_darling_adjusted"),
            test.Statistic * (1 + 4 / n - 25 / (n * n)),
            5e-4
        );

        var random = ReferenceCase.Of("outliers", "hb-case-randn");
        test = Normality.AndersonDarling(Sample.Of(ReferenceCase.Of("ranks", "hb-case-randn").Numbers("input", "y")));
        Agree.Relative(random.Number("recomputed", "A2"), test.Statistic, 1e-10);
        Assert.Equal(random.Number("expected", "anderson_darling"), test.Statistic, 5e-5);
        // R's package gives 0.008626.
        Assert.Equal(0.008626, test.PValue, 5e-7);
    }

    [Fact]
    public void AndersonDarling_OneGrossOutlier_StaysFinite()
    {
        double[] values = [.. Enumerable.Range(0, 3000).Select(i => i % 7 / 10.0), 1e9];
        NormalityResult test = Normality.AndersonDarling(Sample.Of(values));

        // The outlier lies 54.8 deviations out, where the normal tail is below the least double; the rest lie in the middle.
        Assert.InRange(test.Statistic, 1000, 3000);
        Assert.True(test.IsPValueBound);
    }

    [Fact]
    public void ShapiroWilk_ThreeValues_AreExact()
    {
        // Evenly spaced is the most normal that three values can be, two equal ones the least.
        NormalityResult most = Normality.ShapiroWilk(Sample.Of(1, 2, 3));
        NormalityResult least = Normality.ShapiroWilk(Sample.Of(1, 1, 3));

        Assert.Equal((1, 1), (most.Statistic, most.PValue));
        Assert.Equal(0.75, least.Statistic, 1e-15);
        Assert.Equal(0, least.PValue, 1e-7);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void BothTests_ShiftedScaledAndTurned_StayTheSame(Dyadic data, int seed)
    {
        Dyadic values = new([.. data.Values, 0, 1, 5, 9, 2, 3, 7.5]);
        var plain = Sample.Of(values.Values);
        var changed = Sample.Of([.. values.Shuffled(seed).Select(v => -4 * v + 1e6)]);

        Agree.Relative(Normality.ShapiroWilk(plain).Statistic, Normality.ShapiroWilk(changed).Statistic, 1e-12);
        Agree.Relative(Normality.ShapiroWilk(plain).PValue, Normality.ShapiroWilk(changed).PValue, 1e-9);
        Agree.Relative(Normality.AndersonDarling(plain).Statistic, Normality.AndersonDarling(changed).Statistic, 1e-10);
        Assert.InRange(Normality.ShapiroWilk(plain).Statistic, 0, 1);
        Assert.InRange(Normality.AndersonDarling(plain).PValue, 0, 1);
    }

    [Theory]
    [InlineData(-1060)]
    [InlineData(-500)]
    [InlineData(1018)]
    public void BothTests_NearTheEndsOfTheRange_AreThoseOfScaledData(int exponent)
    {
        double[] values = Values("ties");
        var scaled = Sample.Of([.. values.Select(v => Math.ScaleB(v, exponent))]);

        Agree.Relative(Normality.ShapiroWilk(Sample.Of(values)).PValue, Normality.ShapiroWilk(scaled).PValue, 1e-13);
        Agree.Relative(
            Normality.AndersonDarling(Sample.Of(values)).PValue,
            Normality.AndersonDarling(scaled).PValue,
            1e-13
        );
    }

    [Fact]
    public void BothTests_Refusals_SayWhatWouldDo()
    {
        Refused("Count of values must be at least 3; was 2.", () => Normality.ShapiroWilk(Sample.Of(1, 2)));
        Refused(
            "Count of values must be at most 5000, as far as the approximation goes; was 5001",
            () => Normality.ShapiroWilk(Sample.Of(new double[5001]))
        );
        Refused(
            "Values must differ; all were equal, which leaves W undefined.",
            () => Normality.ShapiroWilk(Sample.Of(4, 4, 4))
        );
        Refused(
            "Count of values must be at least 8; was 7.",
            () => Normality.AndersonDarling(Sample.Of(1, 2, 3, 4, 5, 6, 7))
        );
        Refused(
            "Values must differ; all were equal, which leaves A² undefined.",
            () => Normality.AndersonDarling(Sample.Of(new double[8]))
        );

        static void Refused(string message, Action act)
        {
            var refusal = Assert.Throws<ArgumentException>(act);
            Assert.Equal("sample", refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>The small data sets, and the four that the scripts make by a formula.</summary>
    internal static double[] Values(string set)
    {
        int n = set switch
        {
            "eleven" => 11,
            "twelve" => 12,
            "hundred" => 100,
            "most" => 5000,
            _ => 0,
        };
        return n == 0
            ? Datasets.Values(set)
            : [.. Enumerable.Range(1, n).Select(i => (double)((long)i * i * 7919 % 10007) / 100)];
    }
}
