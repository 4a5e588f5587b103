using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class SpreadTests
{
    [Fact]
    public void VarianceRatio_CeramicStrength_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("hypotheses", "hb-ftest-ceramic");
        VarianceRatioResult test = FromSummary(reference, VarianceRatioOptions.Default);

        Assert.Equal(reference.Number("expected", "F"), test.Statistic, 5e-7);
        Agree.Relative(reference.Number("recomputed", "F"), test.Statistic, 1e-11);
        Agree.Relative(reference.Number("recomputed", "p_two_sided"), test.PValue, 1e-11);
        // The interval's ends are the ratio over the critical values.
        Agree.Relative(
            test.Statistic / reference.Number("recomputed", "critical_0.975"),
            test.Estimate.Interval!.Lower,
            1e-11
        );
        Agree.Relative(
            test.Statistic / reference.Number("recomputed", "critical_0.025"),
            test.Estimate.Interval.Upper,
            1e-11
        );
    }

    [Fact]
    public void VarianceRatio_AssemblyTimes_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("hypotheses", "hb-ftest-assembly");
        VarianceRatioResult test = FromSummary(
            reference,
            new VarianceRatioOptions { Alternative = Alternative.Greater }
        );

        Assert.Equal(reference.Number("expected", "F"), test.Statistic, 5e-6);
        Agree.Relative(reference.Number("recomputed", "p_one_sided"), test.PValue, 1e-10);
        Agree.Relative(
            test.Statistic / reference.Number("recomputed", "upper_critical_0.05"),
            test.Estimate.Interval!.Lower,
            1e-11
        );
    }

    [Theory]
    [InlineData("ties/outliers")]
    [InlineData("triple/pair")]
    [InlineData("skewed/triple")]
    [InlineData("odd/offset")]
    public void VarianceRatio_DataSets_AgreeWithRAndSciPy(string pair)
    {
        (Sample first, Sample second) = HypothesisReference.Pair(pair);
        var options = new VarianceRatioOptions { Confidence = 0.9 };
        var against2 = options with { NullValue = 2 };

        // R and SciPy themselves differ by 1.2e-11 on the offset data.
        HypothesisReference.AgreeWithBoth(
            "variance_ratio_f_p_low_high_90",
            pair,
            All(Spread.VarianceRatio(first, second, options)),
            2e-11,
            2e-11
        );
        double[] less = All(Spread.VarianceRatio(first, second, against2 with { Alternative = Alternative.Less }));
        double[] greater = All(
            Spread.VarianceRatio(first, second, against2 with { Alternative = Alternative.Greater })
        );
        Agree.Relative(
            ReferenceCase.Of("hypotheses-r", "variance_ratio_against_2_less").Numbers(pair),
            [less[0], less[1], less[2], less[4]],
            2e-11
        );
        Agree.Relative(
            ReferenceCase.Of("hypotheses-r", "variance_ratio_against_2_greater").Numbers(pair),
            greater.AsSpan(0, 4),
            2e-11
        );
        Assert.Equal(0, less[3]);
        Assert.Equal(double.PositiveInfinity, greater[4]);
    }

    [Fact]
    public void Levene_GearDiameters_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("hypotheses", "hb-gear");
        Sample[] groups = [.. reference.Rows("input", "batches_of_10").Select(row => Sample.Of(row))];
        FTestResult median = Spread.Levene(groups);
        FTestResult mean = Spread.Levene(groups, SpreadCentre.Mean);

        // The handbook prints 1.705910, from single precision; ten digits come from SciPy and R.
        Assert.Equal(reference.Number("expected", "levene", "W_median"), median.Statistic, 1e-5);
        Agree.Relative(reference.Number("recomputed", "levene", "W_median"), median.Statistic, 1e-9);
        Agree.Relative(reference.Number("recomputed", "levene", "p_median"), median.PValue, 1e-9);
        Agree.Relative(reference.Number("recomputed", "levene", "W_mean"), mean.Statistic, 1e-9);
        Agree.Relative(reference.Number("recomputed", "levene", "p_mean"), mean.PValue, 1e-9);
        Assert.Equal((9, 90), (median.NumeratorDegreesOfFreedom, median.DenominatorDegreesOfFreedom));
        Assert.Equal(("Brown-Forsythe", "Levene"), (median.Method, mean.Method));
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("small")]
    [InlineData("offset")]
    [InlineData("skewed")]
    public void Levene_GroupSets_AgreeWithRAndSciPy(string set)
    {
        Sample[] groups = HypothesisReference.Groups(set);

        HypothesisReference.AgreeWithBoth(
            "levene_f_df_df_p",
            set,
            All(Spread.Levene(groups, SpreadCentre.Mean)),
            1e-11,
            1e-11
        );
        HypothesisReference.AgreeWithBoth("brown_forsythe_f_df_df_p", set, All(Spread.Levene(groups)), 1e-11, 1e-11);
    }

    [Fact]
    public void Levene_Refusals_SayWhatWouldDo()
    {
        Assert.StartsWith(
            "Count of groups must be at least 2; was 1.",
            Assert.Throws<ArgumentException>(() => Spread.Levene([Sample.Of(1, 2)])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Count of values must be above the count of groups, 2; was 2.",
            Assert.Throws<ArgumentException>(() => Spread.Levene([Sample.Of(1), Sample.Of(2)])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Group at index 1 must be given; was null.",
            Assert.Throws<ArgumentException>(() => Spread.Levene([Sample.Of(1), null!])).Message,
            StringComparison.Ordinal
        );
        // Two values each lie equally far from their centre.
        var noSpread = Assert.Throws<ArgumentException>(() => Spread.Levene([Sample.Of(1, 2), Sample.Of(4, 9)]));
        Assert.Equal("groups", noSpread.ParamName);
        Assert.StartsWith(
            "Distances from the centre must differ within at least one group; all were equal in each",
            noSpread.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void VarianceRatio_OneSampleDoesNotSpread_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Spread.VarianceRatio(Sample.Of(1, 2), Sample.Of(3, 3)));

        Assert.Equal("second", refusal.ParamName);
        Assert.StartsWith(
            "Values must differ; all were equal, which leaves the ratio of variances undefined.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void VarianceRatio_Swapped_IsTheReciprocal(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values, 100, 101]);
        var second = Sample.Of([.. b.Values, 100, 102]);
        VarianceRatioResult forth = Spread.VarianceRatio(first, second);
        VarianceRatioResult back = Spread.VarianceRatio(second, first);

        Agree.Relative(1 / forth.Statistic, back.Statistic, 1e-14);
        Agree.Relative(1 / forth.Estimate.Interval!.Lower, back.Estimate.Interval!.Upper, 1e-12);
        Agree.Relative(forth.PValue, back.PValue, 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Levene_ShiftedScaledAndTurned_StaysTheSame(Dyadic a, Dyadic b)
    {
        Dyadic first = new([.. a.Values, 0, 1, 5]);
        Dyadic second = new([.. b.Values, 0, 2, 7]);
        FTestResult plain = Spread.Levene([Sample.Of(first.Values), Sample.Of(second.Values)]);
        FTestResult changed = Spread.Levene([
            Sample.Of(second.Map(v => 4 * v - 512)),
            Sample.Of(first.Map(v => 4 * v + 1e6)),
        ]);

        // F may be 0 up to rounding.
        Assert.Equal(plain.Statistic, changed.Statistic, 1e-10 * (1 + plain.Statistic));
    }

    [Fact]
    public void Levene_NearTheEndsOfTheRange_IsThatOfScaledData()
    {
        Sample[] groups = HypothesisReference.Groups("ties");
        double expected = Spread.Levene(groups).Statistic;
        foreach (int exponent in new[] { -600, 600, 1000 })
        {
            Sample[] scaled =
            [
                .. groups.Select(g => Sample.Of([.. g.Values.ToArray().Select(v => Math.ScaleB(v, exponent))])),
            ];
            Agree.Relative(expected, Spread.Levene(scaled).Statistic, 1e-13);
        }
    }

    private static VarianceRatioResult FromSummary(ReferenceCase reference, VarianceRatioOptions options) =>
        Spread.VarianceRatio(
            reference.Number("input", "sd1"),
            (int)reference.Number("input", "n1"),
            reference.Number("input", "sd2"),
            (int)reference.Number("input", "n2"),
            options
        );

    private static double[] All(VarianceRatioResult test) =>
        [test.Estimate.Value, test.Statistic, test.PValue, test.Estimate.Interval!.Lower, test.Estimate.Interval.Upper];

    private static double[] All(FTestResult test) =>
        [test.Statistic, test.NumeratorDegreesOfFreedom, test.DenominatorDegreesOfFreedom, test.PValue];
}
