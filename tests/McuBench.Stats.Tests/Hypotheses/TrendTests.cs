using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class TrendTests
{
    private static readonly TrendOptions Normal = new() { Distribution = NullDistribution.Normal };

    [Fact]
    public void MannKendall_SevenPointsAtGivenTimes_AgreesWithThePaper()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-theil-sen");
        var options = new TrendOptions { Confidence = reference.Number("input", "confidence") };
        TrendResult test = Trend.MannKendall(
            Sample.Of(reference.Numbers("input", "x")),
            Sample.Of(reference.Numbers("input", "y")),
            options
        );
        TrendResult normal = Trend.MannKendall(
            Sample.Of(reference.Numbers("input", "y")),
            options with
            {
                Distribution = NullDistribution.Normal,
            }
        );

        Assert.Equal(reference.Number("recomputed", "mann_kendall_S"), test.S);
        Assert.Equal(reference.Number("recomputed", "kendall_tau"), test.Tau);
        Agree.Relative(reference.Number("recomputed", "p_exact_two_sided"), test.PValue, 1e-9);
        Agree.Relative(reference.Number("recomputed", "z_with_continuity"), normal.Z!.Value, 1e-9);
        Assert.Equal(reference.Number("expected", "slope"), test.Slope.Value);
        Assert.Equal(reference.Number("expected", "upper"), test.Slope.Interval!.Upper);
        Assert.Equal("Mann-Kendall, exact", test.Method);
        Assert.Equal("Mann-Kendall, normal approximation, corrected for continuity", normal.Method);
    }

    [Theory]
    [MemberData(nameof(OrderReference.Series), MemberType = typeof(OrderReference))]
    public void MannKendall_DataSets_AgreesWithRAndSciPy(string series)
    {
        var sample = Sample.Of(OrderReference.Values(series));
        double[] expected = OrderReference.Expected(
            "mann_kendall_s_tau_p_corrected_two_less_greater_plain_exact",
            series
        );
        double PValue(Alternative alternative, bool corrects) =>
            Trend
                .MannKendall(sample, Normal with { Alternative = alternative, CorrectsForContinuity = corrects })
                .PValue;
        TrendResult exact = Trend.MannKendall(sample);
        double[] found =
        [
            exact.S,
            exact.Tau!.Value,
            PValue(Alternative.TwoSided, true),
            PValue(Alternative.Less, true),
            PValue(Alternative.Greater, true),
            PValue(Alternative.TwoSided, false),
            PValue(Alternative.Less, false),
            PValue(Alternative.Greater, false),
        ];

        Agree.Relative(expected.AsSpan(0, 8), found, 1e-12);
        if (expected.Length == 9)
        {
            Agree.Relative(expected[8], exact.PValue, 1e-12);
        }

        Agree.Relative(
            ReferenceCase.Of("order-scipy", "mann_kendall_exact_less_greater_two").Numbers(series),
            [
                Trend.MannKendall(sample, new TrendOptions { Alternative = Alternative.Less }).PValue,
                Trend.MannKendall(sample, new TrendOptions { Alternative = Alternative.Greater }).PValue,
                exact.PValue,
            ],
            1e-12
        );
    }

    [Fact]
    public void MannKendall_FiveRisingValues_HasTwiceOneOrderInAHundredAndTwenty()
    {
        TrendResult test = Trend.MannKendall(Sample.Of(1, 2, 3, 4, 5));

        Agree.Relative(2.0 / 120, test.PValue, 1e-15);
        Assert.Equal((10, 1.0, 1.0), (test.S, test.Tau, test.Slope.Value));
        Assert.True(test.IsExact);
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 30)]
    public void MannKendall_UpToSixValues_IsTheCountOverAllOrders(Dyadic data)
    {
        double[] values = [.. data.Values.Take(6).Select(value => Math.Floor(value / 30)), 1];
        long observed = S(values);
        long[] all = [.. Orders(values).Select(S)];
        double less = all.Average(s => s <= observed ? 1.0 : 0);
        double greater = all.Average(s => s >= observed ? 1.0 : 0);
        if (values.Length == 1)
        {
            return;
        }

        TrendResult test = Trend.MannKendall(Sample.Of(values));
        Assert.Equal(observed, test.S);
        Agree.Relative(Math.Min(1, 2 * Math.Min(less, greater)), test.PValue, 1e-12);
        Agree.Relative(
            less,
            Trend.MannKendall(Sample.Of(values), new TrendOptions { Alternative = Alternative.Less }).PValue,
            1e-12
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MannKendall_ReversedShiftedAndAtOtherTimes_FollowsTheData(Dyadic data)
    {
        double[] values = [.. data.Values, 3];
        if (values.Length < 2)
        {
            return;
        }

        foreach (TrendOptions options in (TrendOptions[])[TrendOptions.Default, Normal])
        {
            TrendResult forth = Trend.MannKendall(Sample.Of(values), options);
            TrendResult back = Trend.MannKendall(Sample.Of([.. values.Reverse()]), options);
            double[] times = [.. values.Select((_, i) => 2.0 * i - 7)];
            int[] places = [.. Enumerable.Range(0, values.Length)];
            new Random(4).Shuffle(places);
            TrendResult timed = Trend.MannKendall(
                Sample.Of([.. places.Select(i => times[i])]),
                Sample.Of([.. places.Select(i => 4 * values[i] + 64)]),
                options
            );

            Assert.Equal(S(values), forth.S);
            Assert.Equal((-forth.S, -forth.Slope.Value), (back.S, back.Slope.Value));
            Assert.Equal(forth.PValue, back.PValue, 1e-12);
            Assert.Equal((forth.S, forth.PValue, forth.Tau), (timed.S, timed.PValue, timed.Tau));
            Assert.Equal(2 * forth.Slope.Value, timed.Slope.Value, 1e-12);
            Assert.InRange(forth.PValue, 0, 1);
        }
    }

    [Fact]
    public void MannKendall_Slope_IsThatOfTheilAndSen()
    {
        double[] values = OrderReference.Values("mixed");
        double[] places = [.. Enumerable.Range(1, values.Length).Select(i => (double)i)];

        Assert.Equal(
            RobustLine.TheilSen(places, values, 0.9).Slope,
            Trend.MannKendall(Sample.Of(values), new TrendOptions { Confidence = 0.9 }).Slope
        );
    }

    [Fact]
    public void MannKendall_AllEqual_ShowsNothing()
    {
        foreach (TrendOptions options in (TrendOptions[])[TrendOptions.Default, Normal])
        {
            TrendResult test = Trend.MannKendall(Sample.Of(7, 7, 7, 7), options);

            Assert.Equal((0, 1, 0), (test.S, test.PValue, test.Slope.Value));
            Assert.Null(test.Tau);
            Assert.Null(test.Z);
        }
    }

    [Fact]
    public void MannKendall_Automatic_IsExactUpToForty()
    {
        double[] forty = [.. Enumerable.Range(0, 40).Select(i => i * 7 % 41.0)];

        Assert.True(Trend.MannKendall(Sample.Of(forty)).IsExact);
        Assert.False(Trend.MannKendall(Sample.Of([.. forty, 99])).IsExact);
        Assert.Equal("Mann-Kendall, given the ties, exact", Trend.MannKendall(Sample.Of(1, 2, 2)).Method);
    }

    [Fact]
    public void MannKendall_WhatCantBeDone_IsRefused()
    {
        var one = Assert.Throws<ArgumentException>(() => Trend.MannKendall(Sample.Of(1)));
        var twice = Assert.Throws<ArgumentException>(() =>
            Trend.MannKendall(Sample.Of(1, 2.5, 2.5), Sample.Of(1, 2, 3))
        );
        var fewer = Assert.Throws<ArgumentException>(() => Trend.MannKendall(Sample.Of(1, 2), Sample.Of(1, 2, 3)));
        var many = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Trend.MannKendall(
                Sample.Of([.. Enumerable.Range(0, 201).Select(i => (double)i)]),
                new TrendOptions { Distribution = NullDistribution.Exact }
            )
        );

        Assert.Equal("sample", one.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", one.Message, StringComparison.Ordinal);
        Assert.Equal("times", twice.ParamName);
        Assert.StartsWith("Times must differ; 2.5 was given twice.", twice.Message, StringComparison.Ordinal);
        Assert.Equal("times", fewer.ParamName);
        Assert.StartsWith(
            "Count of values for the exact distribution must be at most 200; was 201.",
            many.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "Confidence",
            Assert.Throws<ArgumentOutOfRangeException>(() => new TrendOptions { Confidence = 1 }).ParamName
        );
    }

    private static long S(double[] values)
    {
        long s = 0;
        for (int i = 0; i < values.Length; i++)
        {
            for (int j = i + 1; j < values.Length; j++)
            {
                s += Math.Sign(values[j] - values[i]);
            }
        }

        return s;
    }

    private static IEnumerable<double[]> Orders(double[] values) =>
        values.Length == 1
            ? [values]
            : values.SelectMany(
                (value, i) => Orders([.. values.Where((_, k) => k != i)]).Select(rest => (double[])[value, .. rest])
            );
}
