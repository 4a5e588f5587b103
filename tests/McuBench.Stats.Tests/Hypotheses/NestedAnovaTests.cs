using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class NestedAnovaTests
{
    [Fact]
    public void Of_Dyestuff_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("anova", "cl-dyestuff");
        ComponentAnalysis result = NestedAnova.Of(NestedData.Of(OneWayTests.GroupsOf(reference, "batches")));

        Agree.Relative(reference.Number("expected", "MS_between"), result.Rows[0].MeanSquare, 1e-12);
        Agree.Relative(reference.Number("expected", "MS_within"), result.Rows[1].MeanSquare, 1e-12);
        Agree.Relative(reference.Number("recomputed", "F"), result.Tests[0]!.Statistic, 1e-11);
        Agree.Relative(
            reference.Number("recomputed", "variance_batch_anova_and_reml"),
            result.Components[0].Variance.Value,
            1e-12
        );
        Agree.Relative(reference.Number("recomputed", "variance_residual"), result.Components[1].Variance.Value, 1e-12);
        Agree.Relative(reference.Number("expected", "mean"), result.Mean.Value, 1e-15);
        Agree.Relative(reference.Number("recomputed", "se_mean_reml"), result.Mean.StandardError!.Value, 1e-11);
        Assert.Equal(5, result.Mean.DegreesOfFreedom!.Value, 1e-12);
        Assert.True(result.IsBalanced);
        Assert.Empty(result.Mean.Notes);
    }

    [Fact]
    public void Of_HandbookDesign_AgreesWithTheReferenceAndShowsTheNegativeComponent()
    {
        var reference = ReferenceCase.Of("anova", "hb-anova-nested");
        double[][] day = reference.Rows("input", "day_operator_by_machine");
        double[][] night = reference.Rows("input", "night_operator_by_machine");
        double[] values = [.. day.Zip(night, (a, b) => a.Concat(b)).SelectMany(machine => machine)];
        int[] machines = [.. values.Select((_, i) => i / 10)];
        int[] operators = [.. values.Select((_, i) => i / 5 % 2)];
        ComponentAnalysis result = NestedAnova.Of(NestedData.Of(values, machines, operators));

        Agree.Relative(
            [
                reference.Number("recomputed", "SS_machine"),
                reference.Number("recomputed", "SS_operator_in_machine"),
                reference.Number("recomputed", "SS_error"),
            ],
            [.. result.Rows.Select(row => row.SumOfSquares)],
            1e-11
        );
        Assert.Equal(reference.Numbers("expected", "df"), result.Rows.Select(row => (double)row.DegreesOfFreedom));
        // The reference has nine digits.
        Agree.Relative(
            [
                reference.Number("recomputed", "F_machine_over_operator"),
                reference.Number("recomputed", "F_operator_over_error"),
            ],
            [.. result.Tests.Select(test => test!.Statistic)],
            1e-8
        );
        Agree.Relative(
            [
                reference.Number("recomputed", "variance_machine"),
                reference.Number("recomputed", "variance_operator"),
                reference.Number("recomputed", "variance_error"),
            ],
            [.. result.Components.Select(component => component.MomentEstimate)],
            1e-11
        );
        Assert.Equal(0, result.Components[1].Variance.Value);
        Assert.Equal(0, result.Components[1].StandardDeviation);
        Assert.Equal(
            ["The mean squares ask for a variance below 0, for which 0 stands: the source is too small to be seen."],
            result.Components[1].Variance.Notes
        );
        Assert.Equal(0, result.Components[1].Variance.Interval!.Lower);
    }

    [Theory]
    [InlineData("balanced")]
    [InlineData("unbalanced")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("small")]
    public void Of_DataSets_AgreeWithRAndNumPy(string set)
    {
        AgreeWithBoth("two_factors", set, NestedAnova.Of(NestedReference.TwoFactors(set), 0.9));
        AgreeWithBoth("one_factor", set, NestedAnova.Of(NestedReference.OneFactor(set), 0.9));
    }

    [Fact]
    public void Of_ThreeFactors_PartsAllOfTheSumOfSquares()
    {
        double[] values = NestedReference.Values("unbalanced");
        int[] halves = [.. NestedReference.Outer("unbalanced").Select(outer => outer / 3)];
        var data = NestedData.Of(
            values,
            halves,
            NestedReference.Outer("unbalanced"),
            NestedReference.Inner("unbalanced")
        );
        ComponentAnalysis result = NestedAnova.Of(data);
        ComponentAnalysis two = NestedAnova.Of(NestedReference.TwoFactors("unbalanced"));

        Assert.Equal([1, 3, 8, 22], result.Rows.Select(row => row.DegreesOfFreedom));
        Assert.Equal(
            ["factor 1", "factor 2", "factor 3", "within"],
            result.Components.Select(component => component.Source)
        );
        // What is below the new factor stays; what it takes is taken from the old first one.
        Agree.Relative(two.Rows[1].SumOfSquares, result.Rows[2].SumOfSquares, 1e-13);
        Agree.Relative(two.Rows[2].SumOfSquares, result.Rows[3].SumOfSquares, 1e-13);
        Agree.Relative(two.Rows[0].SumOfSquares, result.Rows[0].SumOfSquares + result.Rows[1].SumOfSquares, 1e-13);
        Agree.Relative(two.Components[1].MomentEstimate, result.Components[2].MomentEstimate, 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_OneFactor_IsTheOneWayAnalysis(Dyadic a, Dyadic b, Dyadic c)
    {
        Sample[] groups = [.. new[] { a, b, c }.Select(d => Sample.Of([.. d.Values, 0, 1, 5]))];
        AnovaResult expected = OneWay.Anova(groups);
        ComponentAnalysis result = NestedAnova.Of(NestedData.Of(groups));

        double f = expected.Test.Statistic;
        Assert.Equal(f, result.Tests[0]!.Statistic, 1e-10 * (1 + f));
        Assert.Equal(expected.Test.PValue, result.Tests[0]!.PValue, 1e-6);
        Agree.Relative(expected.Within.MeanSquare, result.Components[1].Variance.Value, 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_ShuffledShiftedAndRelabelled_StaysTheSame(Dyadic data, int seed)
    {
        double[] values = [.. data.Values, 0, 1, 5, 9, 2, 3, 7.5, 4];
        int[] outer = [.. values.Select((_, i) => i % 3)];
        int[] inner = [.. values.Select((_, i) => i / 3 % 2)];
        ComponentAnalysis plain = NestedAnova.Of(NestedData.Of(values, outer, inner));
        int[] order = [.. Enumerable.Range(0, values.Length)];
        new Random(seed).Shuffle(order);
        ComponentAnalysis changed = NestedAnova.Of(
            NestedData.Of(
                [.. order.Select(i => values[i] + 1e6)],
                [.. order.Select(i => -outer[i])],
                [.. order.Select(i => 7 - 3 * inner[i] + outer[i])]
            )
        );

        double total = plain.Rows.Sum(row => row.SumOfSquares);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(plain.Rows[i].SumOfSquares, changed.Rows[i].SumOfSquares, 1e-10 * total);
            Assert.Equal(plain.Components[i].MomentEstimate, changed.Components[i].MomentEstimate, 1e-9 * total);
            Estimate variance = plain.Components[i].Variance;
            Assert.True(variance.Interval is null || variance.Interval.Contains(variance.Value));
        }
    }

    [Fact]
    public void Of_NothingSpreadsWithin_HasNoTestAndSaysWhy()
    {
        ComponentAnalysis result = NestedAnova.Of(NestedData.Of(Sample.Of(1, 1), Sample.Of(2, 2), Sample.Of(4, 4)));

        Assert.Null(result.Tests[0]);
        Assert.Equal(0, result.Components[1].Variance.Value);
        Assert.Null(result.Components[1].Variance.Interval);
        Assert.Equal(
            ["There is no interval: its upper end would not be above 0."],
            result.Components[1].Variance.Notes
        );
        Agree.Relative(7.0 / 3, result.Components[0].Variance.Value, 1e-14);
    }

    [Fact]
    public void Of_DenominatorNearlyCancels_HasNoTest()
    {
        // The mean squares leave the outer factor's denominator 1e-5 degrees of freedom.
        int[] outer = [0, 0, 0, 1, 1, 1, 1, 2, 2];
        int[] inner = [0, 0, 1, 0, 0, 0, 1, 0, 1];
        ComponentAnalysis result = NestedAnova.Of(NestedData.Of([0, 11, 12, 15, 15, 1, 6, 1, 1], outer, inner));

        Assert.Null(result.Tests[0]);
        Assert.NotNull(result.Tests[1]);
    }

    [Fact]
    public void Of_NearTheEndsOfTheRange_IsThatOfScaledData()
    {
        double[] values = NestedReference.Values("unbalanced");
        ComponentAnalysis plain = NestedAnova.Of(NestedReference.TwoFactors("unbalanced"));
        foreach (int exponent in new[] { -500, 500 })
        {
            var data = NestedData.Of(
                [.. values.Select(v => Math.ScaleB(v, exponent))],
                NestedReference.Outer("unbalanced"),
                NestedReference.Inner("unbalanced")
            );
            ComponentAnalysis scaled = NestedAnova.Of(data);
            Agree.Relative(plain.Tests[0]!.Statistic, scaled.Tests[0]!.Statistic, 1e-13);
            Agree.Relative(
                Math.ScaleB(plain.Mean.StandardError!.Value, exponent),
                scaled.Mean.StandardError!.Value,
                1e-13
            );
            Agree.Relative(
                Math.ScaleB(plain.Components[1].StandardDeviation, exponent),
                scaled.Components[1].StandardDeviation,
                1e-13
            );
        }
    }

    [Fact]
    public void Of_Refusals_SayWhatWouldDo()
    {
        double[] values = [1, 2, 3, 4];
        int[] one = [0, 0, 0, 0];
        int[] two = [0, 0, 1, 1];
        int[] each = [0, 1, 2, 3];
        Refused("Count of groups of factor 1 must be at least 2; was 1.", NestedData.Of(values, one));
        Refused(
            "Count of values must be at least 2 within at least one group of factor 1; was 1.",
            NestedData.Of(values, each)
        );
        Refused(
            "Count of groups of factor 2 must be at least 2 within at least one group of factor 1; was 1.",
            NestedData.Of(values, two, one)
        );
        Refused(
            "Values must differ; all were equal, which leaves no variance to part.",
            NestedData.Of([5, 5, 5, 5], two)
        );
        Assert.Equal(
            "confidence",
            Assert.Throws<ArgumentOutOfRangeException>(() => NestedAnova.Of(NestedData.Of(values, two), 1)).ParamName
        );

        static void Refused(string message, NestedData data)
        {
            var refusal = Assert.Throws<ArgumentException>(() => NestedAnova.Of(data));
            Assert.Equal("data", refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void NestedData_Refusals_SayWhatWouldDo()
    {
        double[] values = [1, 2];
        Refused("Count of factors must be at least 1; was 0.", "factors", () => NestedData.Of(values));
        Refused("Count of labels must be 2, one for each value; was 1.", "factors", () => NestedData.Of(values, [0]));
        Refused("Count of groups must be at least 1; was 0.", "groups", () => NestedData.Of(Array.Empty<Sample>()));
        Assert.Equal(
            "factor",
            Assert.Throws<ArgumentOutOfRangeException>(() => NestedData.Of(values, [0, 1]).GroupCount(1)).ParamName
        );

        static void Refused(string message, string name, Action act)
        {
            var refusal = Assert.Throws<ArgumentException>(act);
            Assert.Equal(name, refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }

    private static void AgreeWithBoth(string part, string set, ComponentAnalysis result)
    {
        // R and NumPy themselves differ by 1e-13.
        foreach (string file in new[] { "nested-r", "nested-scipy" })
        {
            var reference = ReferenceCase.Of(file, part);
            Agree.Relative(
                reference.Numbers(set, "ss_df"),
                [
                    .. result.Rows.Select(row => row.SumOfSquares),
                    .. result.Rows.Select(row => (double)row.DegreesOfFreedom),
                ],
                1e-11
            );
            Agree.Relative(
                reference.Numbers(set, "components"),
                [.. result.Components.Select(component => component.MomentEstimate)],
                1e-11
            );
            Agree.Relative(
                reference.Numbers(set, "tests_f_df_p"),
                [
                    .. result.Tests.SelectMany(test =>
                        new[] { test!.Statistic, test.DenominatorDegreesOfFreedom, test.PValue }
                    ),
                ],
                1e-11
            );
            Agree.Relative(
                reference.Numbers(set, "mean_se_df"),
                [result.Mean.Value, result.Mean.StandardError!.Value, result.Mean.DegreesOfFreedom!.Value],
                1e-11
            );
            double[] ends = reference.Numbers(set, "intervals_90");
            for (int i = 0; i < result.Components.Length; i++)
            {
                Interval interval = result.Components[i].Variance.Interval!;
                Assert.Equal(Math.Max(0, ends[2 * i]), interval.Lower, 1e-10 * interval.Upper);
                Agree.Relative(ends[2 * i + 1], interval.Upper, 1e-10);
            }
        }
    }
}
