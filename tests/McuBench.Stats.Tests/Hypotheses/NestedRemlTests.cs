using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class NestedRemlTests
{
    [Fact]
    public void Of_Dyestuff_AgreesWithThePrintedFit()
    {
        var reference = ReferenceCase.Of("anova", "cl-dyestuff");
        RemlResult result = NestedReml.Of(NestedData.Of(OneWayTests.GroupsOf(reference, "batches")));

        Agree.Relative(
            reference.Number("recomputed", "variance_batch_anova_and_reml"),
            result.Components[0].Value,
            1e-7
        );
        Agree.Relative(reference.Number("recomputed", "variance_residual"), result.Components[1].Value, 1e-8);
        Agree.Relative(reference.Number("recomputed", "reml_criterion"), result.Criterion, 1e-8);
        Agree.Relative(reference.Number("recomputed", "se_mean_reml"), result.Mean.StandardError!.Value, 1e-8);
        Assert.Equal(["factor 1", "within"], result.Sources);
    }

    [Theory]
    [InlineData("balanced")]
    [InlineData("unbalanced")]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("small")]
    public void Of_DataSets_AgreeWithRAndDenseMatrices(string set)
    {
        Agreement("reml_two_factors", set, NestedReml.Of(NestedReference.TwoFactors(set), 0.9));
        Agreement("reml_one_factor", set, NestedReml.Of(NestedReference.OneFactor(set), 0.9));
    }

    [Fact]
    public void Of_Balanced_IsTheAnalysisOfVariance()
    {
        ComponentAnalysis moments = NestedAnova.Of(NestedReference.TwoFactors("balanced"), 0.9);
        RemlResult result = NestedReml.Of(NestedReference.TwoFactors("balanced"), 0.9);

        for (int i = 0; i < 3; i++)
        {
            Agree.Relative(moments.Components[i].Variance.Value, result.Components[i].Value, 1e-6);
        }

        // Within and for the mean the degrees of freedom are exact, and the intervals with them.
        Agree.Relative(moments.Mean.DegreesOfFreedom!.Value, result.Mean.DegreesOfFreedom!.Value, 1e-5);
        Agree.Relative(moments.Mean.Interval!.Width, result.Mean.Interval!.Width, 1e-5);
        Agree.Relative(24, result.Components[2].DegreesOfFreedom!.Value, 1e-5);
        Agree.Relative(moments.Components[2].Variance.Interval!.Upper, result.Components[2].Interval!.Upper, 1e-5);
    }

    [Fact]
    public void Of_ComponentAtZero_HasNoIntervalAndSaysWhy()
    {
        RemlResult result = NestedReml.Of(NestedReference.TwoFactors("ties"));

        Assert.Equal(0, result.Components[0].Value);
        Assert.Null(result.Components[0].Interval);
        Assert.Equal(
            ["The likelihood is largest at 0: the source is too small to be seen."],
            result.Components[0].Notes
        );
        // With no factor left it is the variance of all values, and the mean is the plain one.
        double[] values = NestedReference.Values("ties");
        double mean = values.Average();
        Agree.Relative(values.Sum(value => (value - mean) * (value - mean)) / 31, result.Components[2].Value, 1e-12);
        Agree.Relative(mean, result.Mean.Value, 1e-14);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_ShuffledAndShifted_StaysTheSameAndIsNoWorseThanTheMeanSquares(Dyadic data, int seed)
    {
        double[] values = [.. data.Values, 0, 1, 5, 9, 2, 3, 7.5, 4];
        int[] outer = [.. values.Select((_, i) => i % 3)];
        int[] inner = [.. values.Select((_, i) => i / 3 % 2)];
        RemlResult plain = NestedReml.Of(NestedData.Of(values, outer, inner));
        int[] order = [.. Enumerable.Range(0, values.Length)];
        new Random(seed).Shuffle(order);
        RemlResult changed = NestedReml.Of(
            NestedData.Of(
                [.. order.Select(i => values[i] + 4096)],
                [.. order.Select(i => -outer[i])],
                [.. order.Select(i => 7 - 3 * inner[i])]
            )
        );

        Assert.Equal(plain.Criterion, changed.Criterion, 1e-9 * (1 + Math.Abs(plain.Criterion)));
        double total = plain.Components.Sum(component => component.Value);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(plain.Components[i].Value, changed.Components[i].Value, 1e-4 * total);
            Assert.True(plain.Components[i].Value >= 0);
        }

        Assert.True(plain.Mean.Interval is null || plain.Mean.Interval.Contains(plain.Mean.Value));
    }

    [Fact]
    public void Of_ExtremeUnit_IsThatOfScaledData()
    {
        double[] values = NestedReference.Values("unbalanced");
        RemlResult plain = NestedReml.Of(NestedReference.TwoFactors("unbalanced"));
        var data = NestedData.Of(
            [.. values.Select(v => Math.ScaleB(v, -500))],
            NestedReference.Outer("unbalanced"),
            NestedReference.Inner("unbalanced")
        );
        RemlResult scaled = NestedReml.Of(data);

        Agree.Relative(Math.ScaleB(plain.Components[0].Value, -1000), scaled.Components[0].Value, 1e-9);
        Agree.Relative(plain.Criterion - 2 * 500 * 34 * Math.Log(2), scaled.Criterion, 1e-11);
    }

    [Theory]
    [InlineData(1e-3)]
    [InlineData(1)]
    [InlineData(1e5)]
    [InlineData(1e8)]
    public void Of_BalancedAtAnyRatio_FindsTheClosedForm(double apart)
    {
        Sample[] groups = [.. new[] { 0.0, 1, 4, 2 }.Select(centre => Sample.Of(Around(centre * apart)))];
        ComponentAnalysis moments = NestedAnova.Of(NestedData.Of(groups));
        RemlResult result = NestedReml.Of(NestedData.Of(groups));

        // A component below 0 goes into the one within.
        double outer = Math.Max(0, moments.Components[0].MomentEstimate);
        double within =
            outer > 0
                ? moments.Components[1].Variance.Value
                : moments.Rows.Sum(row => row.SumOfSquares) / moments.Rows.Sum(row => row.DegreesOfFreedom);
        Agree.Relative([outer, within], [.. result.Components.Select(component => component.Value)], 1e-7);

        static double[] Around(double centre) => [centre - 1, centre + 0.5, centre + 0.75, centre];
    }

    [Fact]
    public void Of_NothingSpreadsWithin_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            NestedReml.Of(NestedData.Of(Sample.Of(1, 1), Sample.Of(2, 2)))
        );

        Assert.Equal("data", refusal.ParamName);
        Assert.StartsWith(
            "Values must differ within at least one innermost group; all were equal in each",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    // Both references search for the largest likelihood, whose place they have to half the digits of a double.
    private static void Agreement(string part, string set, RemlResult result)
    {
        double[] r = ReferenceCase.Of("nested-r", part).Numbers(set);
        double[] dense = ReferenceCase.Of("nested-scipy", part).Numbers(set);
        double[] variances = [.. result.Components.Select(component => component.Value)];
        int n = variances.Length;
        Agree.Relative(r.AsSpan(0, n), variances, 1e-6);
        Agree.Relative(dense.AsSpan(0, n), variances, 1e-6);
        Agree.Relative([r[n], r[n + 1]], [result.Mean.StandardError!.Value, result.Criterion], 1e-7);
        Agree.Relative([dense[n + 1], dense[n]], [result.Mean.StandardError!.Value, result.Criterion], 1e-7);
        Assert.Equal(dense[n], result.Criterion, 1e-11 * Math.Abs(dense[n]));
        double[] df =
        [
            result.Mean.DegreesOfFreedom!.Value,
            .. result.Components.Where(component => component.Value > 0).Select(c => c.DegreesOfFreedom!.Value),
        ];
        Agree.Relative(dense.AsSpan(n + 2), df, 1e-5);
    }
}
