using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class OutliersTests
{
    [Fact]
    public void Grubbs_Uranium_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("outliers", "hb-grubbs-uranium");
        var sample = Sample.Of(reference.Numbers("input", "y"));
        GrubbsResult greater = Outliers.Grubbs(sample, Alternative.Greater);

        Assert.Equal(reference.Number("expected", "G"), greater.Statistic, 1e-4);
        Agree.Relative(reference.Number("recomputed", "G"), greater.Statistic, 1e-11);
        Agree.Relative(reference.Number("recomputed", "critical_one_sided_0.05"), greater.CriticalValue, 1e-11);
        Assert.Equal((7, 245.57, true), (greater.Index, greater.Value, greater.IsOutlier));

        GrubbsResult both = Outliers.Grubbs(sample);
        Agree.Relative(reference.Number("recomputed", "critical_two_sided_0.05"), both.CriticalValue, 1e-11);
        Agree.Relative(greater.PValue * 2, both.PValue, 1e-14);
        Assert.False(Outliers.Grubbs(sample, Alternative.Less).IsOutlier);
    }

    [Fact]
    public void Grubbs_HandbookCases_AgreeWithTheReference()
    {
        double[] heat = ReferenceCase.Of("nist-handbook", "hb-mean-ci-zarr13").Numbers("input", "y");
        double[] random = ReferenceCase.Of("ranks", "hb-case-randn").Numbers("input", "y");
        foreach (var (key, values) in new[] { ("hb-case-zarr13", heat), ("hb-case-randn", random) })
        {
            var reference = ReferenceCase.Of("outliers", key);
            GrubbsResult test = Outliers.Grubbs(Sample.Of(values));

            // The printed 2.918673 of the first comes from single precision, the critical value from SciPy's t quantile.
            Assert.Equal(reference.Number("expected", "grubbs_g"), test.Statistic, 5e-5);
            Agree.Relative(reference.Number("recomputed", "grubbs_g"), test.Statistic, 1e-10);
            Agree.Relative(reference.Number("recomputed", "grubbs_critical_two_sided_0.05"), test.CriticalValue, 1e-9);
            Assert.False(test.IsOutlier);
        }
    }

    [Fact]
    public void Grubbs_CriticalValues_AgreeWithThePublishedTable()
    {
        var table = ReferenceCase.Of("outliers", "cv-grubbs");
        double[] counts = table.Numbers("input", "n");
        double[] levels = table.Numbers("input", "level");
        double[][] printed = table.Rows("expected", "rows");
        double[][] rows = table.Rows("recomputed", "rows");
        double[] oneSided = table.Numbers("recomputed", "one_sided_0.05");
        for (int i = 0; i < counts.Length; i++)
        {
            var sample = Sample.Of([.. Enumerable.Range(0, (int)counts[i]).Select(v => (double)v)]);
            for (int j = 0; j < levels.Length; j++)
            {
                double critical = Outliers.Grubbs(sample, level: levels[j]).CriticalValue;
                Assert.Equal(printed[i][j], critical, 5e-4);
                // Nine digits were kept.
                Agree.Relative(rows[i][j], critical, 1e-8);
            }

            Agree.Relative(oneSided[i], Outliers.Grubbs(sample, Alternative.Less).CriticalValue, 1e-8);
        }
    }

    [Theory]
    [InlineData("triple")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    [InlineData("hundred")]
    public void Grubbs_DataSets_AgreeWithRAndSciPy(string set)
    {
        var sample = Sample.Of(NormalityTests.Values(set));
        double[] actual =
        [
            .. new[] { Alternative.TwoSided, Alternative.Greater, Alternative.Less }.SelectMany(side =>
            {
                GrubbsResult test = Outliers.Grubbs(sample, side);
                return new[] { test.Index, test.Statistic, test.CriticalValue, test.PValue };
            }),
        ];

        AgreeWithBoth("grubbs_two_greater_less_index_g_critical_p", set, actual);
    }

    [Fact]
    public void Grubbs_GrossOutlier_KeepsTheDigitsOfItsPValue()
    {
        double[] values = [20.1, 19.8, 20.4, 20, 19.9, 1e9];
        GrubbsResult near = Outliers.Grubbs(Sample.Of(values));
        GrubbsResult far = Outliers.Grubbs(Sample.Of([.. values[..5], 1e10]));

        // Four degrees of freedom: the tail falls with the fourth power of the distance.
        Agree.Relative(1e-4, far.PValue / near.PValue, 1e-6);
        Assert.Equal(5 / Math.Sqrt(6), far.Statistic, 1e-12);
        Assert.Equal(0, Outliers.Grubbs(Sample.Of(1, 1, 1, 2)).PValue);
    }

    [Fact]
    public void GeneralizedEsd_Rosner_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("outliers", "hb-gesd-rosner");
        ExtremeDeviateResult result = Outliers.GeneralizedEsd(Sample.Of(reference.Numbers("input", "y")), 10);

        Agree.Relative(reference.Numbers("recomputed", "R"), [.. result.Steps.Select(step => step.Statistic)], 1e-11);
        Agree.Relative(
            reference.Numbers("recomputed", "lambda"),
            [.. result.Steps.Select(step => step.CriticalValue)],
            1e-11
        );
        Assert.Equal(reference.Numbers("recomputed", "removed_in_order"), result.Steps.Select(step => step.Value));
        // The printed values are cut off, not rounded.
        double[] printed = reference.Numbers("expected", "R");
        for (int i = 0; i < printed.Length; i++)
        {
            Assert.InRange(result.Steps[i].Statistic, printed[i], printed[i] + 0.001);
        }

        // Neither the first nor the second is beyond its critical value, but the third is.
        Assert.Equal(3, result.OutlierCount);
        Assert.Equal([53, 52, 51], result.Outliers);
        Assert.Empty(result.Notes);
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    [InlineData("hundred")]
    public void GeneralizedEsd_DataSets_AgreeWithRAndSciPy(string set)
    {
        ExtremeDeviateResult result = Outliers.GeneralizedEsd(Sample.Of(NormalityTests.Values(set)), 3, 0.1);
        double[] actual =
        [
            result.OutlierCount,
            .. result.Steps.SelectMany(step => new[] { step.Statistic, step.CriticalValue }),
        ];

        AgreeWithBoth("esd_3_found_r_lambda", set, actual);
    }

    [Fact]
    public void GeneralizedEsd_RestIsAllEqual_EndsWithANote()
    {
        ExtremeDeviateResult result = Outliers.GeneralizedEsd(Sample.Of(5, 5, 9, 5, 5, 5), 3);

        Assert.Equal((1, 1), (result.Steps.Length, result.OutlierCount));
        Assert.Equal([2], result.Outliers);
        Assert.Equal(
            [
                "After 1 of 3 steps the values that are left are all equal, and the search ends.",
                "The level is approximate: it needs 15 values, better 25; there were 6.",
            ],
            result.Notes
        );
    }

    [Theory]
    [InlineData("triple")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    [InlineData("most")]
    public void MedianRule_DataSets_AgreeWithRAndSciPy(string set)
    {
        MedianRuleResult result = Outliers.MedianRule(Sample.Of(NormalityTests.Values(set)));
        double[] actual = [result.Median, result.Deviation, .. result.Outliers.Select(i => (double)i)];

        Agree.Relative(
            ReferenceCase.Of("normality-r", "median_rule_median_deviation_indices").Numbers(set),
            actual,
            1e-14
        );
        Agree.Relative(
            ReferenceCase.Of("normality-scipy", "median_rule_median_deviation_indices").Numbers(set),
            actual,
            1e-14
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void AllRules_ShiftedAndScaled_FindTheSame(Dyadic data)
    {
        Dyadic values = new([.. data.Values, 0, 1, 5, 9, 2, 3, 7.5]);
        var plain = Sample.Of(values.Values);
        var changed = Sample.Of(values.Map(v => 4 * v + 1e6));

        GrubbsResult grubbs = Outliers.Grubbs(plain);
        Agree.Relative(grubbs.Statistic, Outliers.Grubbs(changed).Statistic, 1e-12);
        ExtremeDeviateResult esd = Outliers.GeneralizedEsd(plain, 4);
        ExtremeDeviateResult other = Outliers.GeneralizedEsd(changed, 4);
        Agree.Relative(
            [.. esd.Steps.Select(step => step.Statistic)],
            [.. other.Steps.Select(step => step.Statistic)],
            1e-11
        );
        // The first step is Grubbs' two-sided test.
        Agree.Relative(grubbs.Statistic, esd.Steps[0].Statistic, 1e-13);
        Agree.Relative(grubbs.CriticalValue, esd.Steps[0].CriticalValue, 1e-14);
        Assert.Equal(grubbs.PValue <= 0.05, grubbs.IsOutlier);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Grubbs_Mirrored_ExchangesTheSides(Dyadic data)
    {
        Dyadic values = new([.. data.Values, 0, 1, 5]);
        var mirrored = Sample.Of(values.Map(v => -v));

        GrubbsResult greater = Outliers.Grubbs(Sample.Of(values.Values), Alternative.Greater);
        GrubbsResult less = Outliers.Grubbs(mirrored, Alternative.Less);
        Agree.Relative(greater.Statistic, less.Statistic, 1e-12);
        Assert.Equal(greater.Value, -less.Value);
    }

    [Fact]
    public void AllRules_Refusals_SayWhatWouldDo()
    {
        Refused("Count of values must be at least 3; was 2.", "sample", () => Outliers.Grubbs(Sample.Of(1, 2)));
        Refused(
            "Values must differ; all were equal, which leaves G undefined.",
            "sample",
            () => Outliers.Grubbs(Sample.Of(2, 2, 2))
        );
        Refused(
            "Count of values must be at least 5; was 4.",
            "sample",
            () => Outliers.GeneralizedEsd(Sample.Of(1, 2, 3, 4), 3)
        );
        Refused(
            "Count of values must be at least 2147483647; was 3.",
            "sample",
            () => Outliers.GeneralizedEsd(Sample.Of(1, 2, 3), int.MaxValue)
        );
        Refused(
            "Values must differ; all were equal, which leaves R undefined.",
            "sample",
            () => Outliers.GeneralizedEsd(Sample.Of(2, 2, 2), 1)
        );
        Refused(
            "Median absolute deviation must be above 0; was 0, since more than half of the values are equal.",
            "sample",
            () => Outliers.MedianRule(Sample.Of(2, 2, 2, 5))
        );
        OutOfRange(
            "Level must be above 0 and below 1; was 1.",
            "level",
            () => Outliers.Grubbs(Sample.Of(1, 2), level: 1)
        );
        OutOfRange(
            "Number of outliers must be at least 1; was 0.",
            "most",
            () => Outliers.GeneralizedEsd(Sample.Of(1, 2, 4), 0)
        );
        OutOfRange(
            "Cut-off must be a finite number above 0; was 0.",
            "cutoff",
            () => Outliers.MedianRule(Sample.Of(1, 2, 4), 0)
        );

        static void Refused(string message, string name, Action act)
        {
            var refusal = Assert.Throws<ArgumentException>(act);
            Assert.Equal(name, refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }

        static void OutOfRange(string message, string name, Action act)
        {
            var refusal = Assert.Throws<ArgumentOutOfRangeException>(act);
            Assert.Equal(name, refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }

    // SciPy's t quantile is off by up to 5e-9.
    private static void AgreeWithBoth(string part, string set, double[] actual)
    {
        Agree.Relative(ReferenceCase.Of("normality-r", part).Numbers(set), actual, 1e-11);
        Agree.Relative(ReferenceCase.Of("normality-scipy", part).Numbers(set), actual, 1e-8);
    }
}
