using System.Numerics;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class MannWhitneyTests
{
    [Fact]
    public void MannWhitney_TenAndFiveValues_AgreesWithTheBook()
    {
        var reference = ReferenceCase.Of("ranks", "cl-hollander-wolfe");
        var first = Sample.Of(reference.Numbers("input", "rank_sum_x"));
        var second = Sample.Of(reference.Numbers("input", "rank_sum_y"));
        RankTestResult greater = TwoSample.MannWhitney(
            first,
            second,
            new RankTestOptions { Alternative = Alternative.Greater }
        );

        Assert.Equal(reference.Number("expected", "W"), greater.Statistic);
        Agree.Relative(reference.Number("recomputed", "p_greater"), greater.PValue, 1e-11);
        Agree.Relative(
            reference.Number("recomputed", "p_two_sided"),
            TwoSample.MannWhitney(first, second).PValue,
            1e-11
        );
        Assert.Equal("Mann-Whitney, exact", greater.Method);
        Assert.Equal(15, greater.Count);
    }

    [Fact]
    public void MannWhitney_MouseSurvival_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("resampling-data", "cl-mouse");
        RankTestResult test = TwoSample.MannWhitney(
            Sample.Of(reference.Numbers("input", "treatment")),
            Sample.Of(reference.Numbers("input", "control"))
        );

        Agree.Relative(reference.Numbers("recomputed", "mann_whitney_U_p_exact"), [test.Statistic, test.PValue], 1e-11);
    }

    [Theory]
    [MemberData(nameof(RankReference.Pairs), MemberType = typeof(RankReference))]
    public void MannWhitney_DataSets_AgreesWithRAndSciPy(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);
        foreach (
            (string part, double nullValue) in new[]
            {
                ("mann_whitney_u_exact_less_greater_two_normal_corrected_two_less_greater_plain", 0.0),
                ("mann_whitney_shifted_1", 1),
            }
        )
        {
            RankTestResult Test(RankTestOptions options) =>
                TwoSample.MannWhitney(first, second, options with { NullValue = nullValue });
            double[] found = [Test(RankReference.Exact).Statistic, .. RankReference.PValues(Test, true)];

            // Normal tails of a z that both compute by another order of operations.
            RankReference.AgreeWithBoth(part, pair, found, 1e-12, 1e-12);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 60)]
    public void MannWhitney_UpToEightValues_IsTheCountOverAllSplits(Dyadic a, Dyadic b)
    {
        // Levels of four, so that ties are common.
        double[] first = [.. a.Values.Take(4).Select(value => Math.Floor(value / 25))];
        double[] second = [.. b.Values.Take(4).Select(value => Math.Floor(value / 25))];
        double[] all = [.. first, .. second];
        double observed = U(first, second);
        int splits = 0;
        int less = 0;
        int greater = 0;
        for (int bits = 0; bits < 1 << all.Length; bits++)
        {
            if (BitOperations.PopCount((uint)bits) == first.Length)
            {
                double u = U(
                    [.. all.Where((_, i) => (bits >> i & 1) == 1)],
                    [.. all.Where((_, i) => (bits >> i & 1) == 0)]
                );
                splits++;
                less += u <= observed ? 1 : 0;
                greater += u >= observed ? 1 : 0;
            }
        }

        RankTestResult Test(Alternative alternative) =>
            TwoSample.MannWhitney(
                Sample.Of(first),
                Sample.Of(second),
                new RankTestOptions { Alternative = alternative }
            );
        Assert.Equal(observed, Test(Alternative.TwoSided).Statistic);
        Agree.Relative((double)less / splits, Test(Alternative.Less).PValue, 1e-12);
        Agree.Relative((double)greater / splits, Test(Alternative.Greater).PValue, 1e-12);
        Agree.Relative(Math.Min(1, 2.0 * Math.Min(less, greater) / splits), Test(Alternative.TwoSided).PValue, 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MannWhitney_SwappedShiftedAndScaled_FollowsTheData(Dyadic a, Dyadic b)
    {
        var first = Sample.Of(a.Values);
        var second = Sample.Of(b.Values);
        foreach (RankTestOptions options in (RankTestOptions[])[RankReference.Normal, RankTestOptions.Default])
        {
            RankTestResult forth = TwoSample.MannWhitney(first, second, options);
            RankTestResult back = TwoSample.MannWhitney(second, first, options);
            RankTestResult moved = TwoSample.MannWhitney(
                Sample.Of(a.Map(value => 4 * value + 1000)),
                Sample.Of([.. b.Shuffled(1).Select(value => 4 * value)]),
                options with
                {
                    NullValue = 1000,
                }
            );

            Assert.Equal((double)first.Count * second.Count - forth.Statistic, back.Statistic);
            Agree.Relative(forth.PValue, back.PValue, 1e-12);
            Assert.Equal(forth.Statistic, moved.Statistic);
            Assert.Equal(forth.PValue, moved.PValue);
            Assert.InRange(forth.PValue, 0, 1);
        }
    }

    [Fact]
    public void MannWhitney_Automatic_IsExactUpToFiftyAndFifty()
    {
        var fifty = Sample.Of([.. Enumerable.Range(0, 50).Select(i => i + 0.25)]);
        var more = Sample.Of([.. Enumerable.Range(0, 51).Select(i => i + 0.75)]);

        Assert.Equal(
            "Mann-Whitney, exact",
            TwoSample.MannWhitney(fifty, Sample.Of([.. Enumerable.Range(0, 50).Select(i => i + 0.75)])).Method
        );
        Assert.Equal("Mann-Whitney, exact given the ties", TwoSample.MannWhitney(fifty, fifty).Method);
        Assert.Equal(
            "Mann-Whitney, normal approximation, corrected for continuity",
            TwoSample.MannWhitney(fifty, more).Method
        );
        Assert.Equal(
            "Mann-Whitney, normal approximation, corrected for ties",
            TwoSample.MannWhitney(fifty, fifty, RankReference.Normal with { CorrectsForContinuity = false }).Method
        );
    }

    [Fact]
    public void MannWhitney_AllEqual_ShowsNothing()
    {
        var same = Sample.Of([.. Enumerable.Repeat(7.0, 60)]);
        RankTestResult exact = TwoSample.MannWhitney(Sample.Of(7, 7), Sample.Of(7, 7, 7));
        RankTestResult normal = TwoSample.MannWhitney(same, same);

        Assert.Equal((3, 1), (exact.Statistic, exact.PValue));
        Assert.Equal((1800, 1), (normal.Statistic, normal.PValue));
        Assert.Null(normal.Z);
    }

    [Fact]
    public void MannWhitney_OneValueEach_HasAPValueOfOne() =>
        Assert.Equal(1, TwoSample.MannWhitney(Sample.Of(1), Sample.Of(2)).PValue);

    [Fact]
    public void MannWhitney_ExactOfTooManyPairs_IsRefusedWithTheLimit()
    {
        var many = Sample.Of([.. Enumerable.Range(0, 200).Select(i => (double)i)]);
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            TwoSample.MannWhitney(many, many, RankReference.Exact)
        );

        Assert.Equal("second", refusal.ParamName);
        Assert.StartsWith(
            "Product of the sample sizes must be at most 20000 for the exact distribution; was 40000.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void MannWhitney_DistanceBeyondTheGreatestNumber_IsRefused() =>
        Assert.StartsWith(
            "Distance from the null value of the values must be below 1.8E308",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    TwoSample.MannWhitney(
                        Sample.Of(-1.7e308),
                        Sample.Of(0),
                        new RankTestOptions { NullValue = 1.7e308 }
                    )
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        Assert.Equal(
            "NullValue",
            Assert.Throws<ArgumentOutOfRangeException>(() => new RankTestOptions { NullValue = double.NaN }).ParamName
        );
        Assert.Equal(
            "Alternative",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => new RankTestOptions { Alternative = (Alternative)3 })
                .ParamName
        );
        Assert.Equal(
            "Distribution",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => new RankTestOptions { Distribution = (NullDistribution)3 })
                .ParamName
        );
    }

    private static double U(double[] first, double[] second) =>
        first.Sum(x => second.Sum(y => (1 + Math.Sign(x - y)) / 2.0));
}
