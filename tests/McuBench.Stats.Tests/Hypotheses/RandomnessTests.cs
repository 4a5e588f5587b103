using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Tests.Descriptive;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class RandomnessTests
{
    private static readonly RunsOptions AsAbove = new()
    {
        MedianTies = MedianTies.CountAsAbove,
        Distribution = NullDistribution.Normal,
    };

    [Fact]
    public void Runs_HandbookSeries_AgreeWithTheHandbook()
    {
        var flow = ReferenceCase.Of("ranks", "hb-case-zarr13");
        var random = ReferenceCase.Of("ranks", "hb-case-randn");
        var beam = ReferenceCase.Of("ranks", "hb-lew");
        var flowValues = Sample.Of(ReferenceCase.Of("nist-handbook", "hb-mean-ci-zarr13").Numbers("input", "y"));
        RunsResult flowRuns = Randomness.Runs(flowValues, AsAbove);
        RunsResult randomRuns = Randomness.Runs(Sample.Of(random.Numbers("input", "y")), AsAbove);
        RunsResult beamRuns = Randomness.Runs(Sample.Of(NistUnivariate.Values("Lew")), AsAbove);

        Assert.Equal(flow.Number("expected", "runs_z"), flowRuns.Z!.Value, 5e-5);
        Agree.Relative(
            [
                flow.Number("recomputed", "runs"),
                flow.Number("recomputed", "n_at_or_above_median"),
                flow.Number("recomputed", "n_below"),
                flow.Number("recomputed", "runs_expected"),
                flow.Number("recomputed", "runs_z"),
            ],
            [flowRuns.Runs, flowRuns.Above, flowRuns.Below, flowRuns.Expected, flowRuns.Z.Value],
            1e-11
        );
        // What the handbook's source says of the other rule.
        Assert.Equal(-3.1030, Randomness.Runs(flowValues).Z!.Value, 5e-5);
        Agree.Relative(random.Number("recomputed", "runs_z"), randomRuns.Z!.Value, 1e-11);
        Assert.Equal(random.Number("expected", "runs_z"), randomRuns.Z.Value, 5e-5);
        Agree.Relative(beam.Number("recomputed", "runs", "z"), beamRuns.Z!.Value, 1e-11);
        Assert.Equal(beam.Number("expected", "runs", "z"), beamRuns.Z.Value, 5e-5);
    }

    [Theory]
    [MemberData(nameof(OrderReference.Series), MemberType = typeof(OrderReference))]
    public void Runs_DataSets_AgreeWithRAndStatsmodels(string series)
    {
        var sample = Sample.Of(OrderReference.Values(series));
        foreach (
            (string part, MedianTies ties) in new[]
            {
                ("runs_left_out_runs_above_below_expected_z_less_greater_two_normal", MedianTies.LeaveOut),
                ("runs_as_above", MedianTies.CountAsAbove),
            }
        )
        {
            var options = new RunsOptions { MedianTies = ties };
            RunsResult test = Randomness.Runs(sample, options);

            Agree.Relative(
                OrderReference.Expected(part, series),
                [
                    test.Runs,
                    test.Above,
                    test.Below,
                    test.Expected,
                    test.Z ?? 0,
                    Randomness.Runs(sample, options with { Alternative = Alternative.Less }).PValue,
                    Randomness.Runs(sample, options with { Alternative = Alternative.Greater }).PValue,
                    test.PValue,
                    Randomness.Runs(sample, options with { Distribution = NullDistribution.Normal }).PValue,
                ],
                1e-12
            );
        }
    }

    [Property(MaxTest = 40)]
    public void RunsDistribution_UpToEight_IsTheCountOverAllOrders(byte first, byte second)
    {
        int a = 1 + first % 4;
        int b = 1 + second % 4;
        int[] runs =
        [
            .. Enumerable
                .Range(0, 1 << (a + b))
                .Where(bits => int.PopCount(bits) == a)
                .Select(bits =>
                    1 + Enumerable.Range(1, a + b - 1).Count(i => (bits >> i & 1) != (bits >> (i - 1) & 1))
                ),
        ];
        var law = RankDistribution.Runs(a, b);
        for (int value = 1; value <= a + b + 1; value++)
        {
            Agree.Relative(runs.Average(r => r == value ? 1.0 : 0), law.Mass(value), 1e-13);
        }
    }

    [Fact]
    public void RunsDistribution_OfAThousand_AddsUpToOne()
    {
        var law = RankDistribution.Runs(500, 500);

        Agree.Relative(0.5, law.Cdf(500) + 0.5 * law.Mass(501), 1e-12);
        Assert.Equal((2, 1000), (law.Smallest, law.Largest));
        Assert.Equal(
            "second",
            Assert.Throws<ArgumentOutOfRangeException>(() => RankDistribution.Runs(500, 501)).ParamName
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Runs_ReversedOrMirrored_StayTheSame(Dyadic data)
    {
        RunsResult before = Randomness.Runs(Sample.Of(data.Values));
        RunsResult reversed = Randomness.Runs(Sample.Of([.. data.Values.Reverse()]));
        RunsResult mirrored = Randomness.Runs(Sample.Of(data.Map(value => 5 - 2 * value)));

        Assert.Equal(before, reversed);
        Assert.Equal((before.Runs, before.Above, before.Below), (mirrored.Runs, mirrored.Below, mirrored.Above));
        Assert.Equal(before.PValue, mirrored.PValue, 1e-12);
        Assert.Equal(data.Values.Length, before.Above + before.Below + before.LeftOut);
    }

    [Fact]
    public void Runs_AllEqualOrOneSideOnly_ShowNothing()
    {
        RunsResult none = Randomness.Runs(Sample.Of(4, 4, 4));
        RunsResult oneSide = Randomness.Runs(Sample.Of(4, 4, 4), AsAbove);

        Assert.Equal((0, 3, 1, null), (none.Runs, none.LeftOut, none.PValue, none.Z));
        Assert.Equal((1, 3, 1, null), (oneSide.Runs, oneSide.Above, oneSide.PValue, oneSide.Z));
    }

    [Fact]
    public void Runs_ExactOfTooManyValues_IsRefusedWithTheLimit()
    {
        var many = Sample.Of([.. Enumerable.Range(0, 1001).Select(i => (double)i)]);

        Assert.StartsWith("runs about the median, exact", Randomness.Runs(many).Method, StringComparison.Ordinal);
        Assert.Equal(
            "runs about the median, normal approximation",
            Randomness.Runs(Sample.Of([.. many.Values, 5000])).Method
        );
        Assert.StartsWith(
            "Count of values for the exact distribution must be at most 1000; was 1002.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    Randomness.Runs(
                        Sample.Of([.. many.Values, 5000]),
                        new RunsOptions { Distribution = NullDistribution.Exact }
                    )
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [MemberData(nameof(OrderReference.Series), MemberType = typeof(OrderReference))]
    public void VonNeumann_DataSets_AgreesWithRAndNumPy(string series)
    {
        var sample = Sample.Of(OrderReference.Values(series));
        VonNeumannResult test = Randomness.VonNeumann(sample);
        if (sample.Count == 2)
        {
            Assert.Equal((2, null, 1), (Math.Round(test.Ratio, 12), test.Z, test.PValue));
            return;
        }

        Agree.Relative(
            OrderReference.Expected("von_neumann_ratio_z_two_less_greater", series),
            [
                test.Ratio,
                test.Z!.Value,
                test.PValue,
                Randomness.VonNeumann(sample, Alternative.Less).PValue,
                Randomness.VonNeumann(sample, Alternative.Greater).PValue,
            ],
            1e-11
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void VonNeumann_OverAllOrders_IsTwoOnAverage(Dyadic data)
    {
        // All orders of up to five values.
        double[] values = [.. data.Values.Distinct().Take(4), 77];
        if (values.Length < 2)
        {
            return;
        }

        double[] ratios = [.. Orders(values).Select(order => Randomness.VonNeumann(Sample.Of(order)).Ratio)];
        Assert.Equal(2, ratios.Average(), 1e-11);
    }

    [Theory]
    [MemberData(nameof(OrderReference.Series), MemberType = typeof(OrderReference))]
    public void LjungBox_DataSets_AgreesWithRAndStatsmodels(string series)
    {
        var sample = Sample.Of(OrderReference.Values(series));
        ChiSquaredTestResult one = Randomness.LjungBox(sample, 1);

        Agree.Relative(OrderReference.Expected("ljung_box_1_q_p", series), [one.Statistic, one.PValue], 1e-11);
        if (sample.Count > 3)
        {
            ChiSquaredTestResult three = Randomness.LjungBox(sample, 3);
            ChiSquaredTestResult fitted = Randomness.LjungBox(sample, 3, 1);
            Agree.Relative(OrderReference.Expected("ljung_box_3_q_p", series), [three.Statistic, three.PValue], 1e-11);
            Agree.Relative(
                OrderReference.Expected("ljung_box_3_less_1_q_p", series),
                [fitted.Statistic, fitted.PValue],
                1e-11
            );
            Assert.Equal((3, 2), (three.DegreesOfFreedom, fitted.DegreesOfFreedom));
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void VonNeumannAndLjungBox_ReversedShiftedAndScaled_StayTheSame(Dyadic data)
    {
        double[] values = [.. data.Values, 1, -2, 3.5];
        double[] other = [.. values.Reverse().Select(value => 1000 - 4 * value)];

        Assert.Equal(
            Randomness.VonNeumann(Sample.Of(values)).Ratio,
            Randomness.VonNeumann(Sample.Of(other)).Ratio,
            1e-9
        );
        Assert.Equal(
            Randomness.LjungBox(Sample.Of(values), 2).Statistic,
            Randomness.LjungBox(Sample.Of(other), 2).Statistic,
            1e-9
        );
    }

    [Fact]
    public void VonNeumannAndLjungBox_WhatCantBeDone_IsRefused()
    {
        var equal = Assert.Throws<ArgumentException>(() => Randomness.VonNeumann(Sample.Of(2, 2, 2)));
        var few = Assert.Throws<ArgumentException>(() => Randomness.LjungBox(Sample.Of(1, 2, 3), 3));
        var noFreedom = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Randomness.LjungBox(Sample.Of(1, 2, 3, 4), 2, 2)
        );

        Assert.Equal("sample", equal.ParamName);
        Assert.StartsWith("Values must differ; all were equal", equal.Message, StringComparison.Ordinal);
        Assert.StartsWith("Count of values must be at least 4; was 3.", few.Message, StringComparison.Ordinal);
        Assert.Equal("lags", noFreedom.ParamName);
        Assert.StartsWith(
            "Greatest lag must be above the number of fitted parameters, 2; was 2.",
            noFreedom.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "fitted",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => Randomness.LjungBox(Sample.Of(1, 2, 3, 4), 2, -1))
                .ParamName
        );
        Assert.Throws<ArgumentException>(() => Randomness.VonNeumann(Sample.Of(2)));
    }

    private static IEnumerable<double[]> Orders(double[] values) =>
        values.Length == 1
            ? [values]
            : values.SelectMany(
                (value, i) => Orders([.. values.Where((_, k) => k != i)]).Select(rest => (double[])[value, .. rest])
            );
}
