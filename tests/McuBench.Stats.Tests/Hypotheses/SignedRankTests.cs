using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class SignedRankTests
{
    private static readonly Dictionary<string, double> Centres = new(StringComparer.Ordinal)
    {
        ["pair"] = 412.5,
        ["triple"] = 2.5,
        ["ties"] = 9,
        ["offset"] = 10000000.3,
        ["skewed"] = 0.5,
        ["outliers"] = 20,
        ["odd"] = 56,
    };

    public static TheoryData<string> Sets => [.. Centres.Keys];

    [Fact]
    public void SignedRank_NinePairs_AgreesWithTheBook()
    {
        var reference = ReferenceCase.Of("ranks", "cl-hollander-wolfe");
        var first = Sample.Of(reference.Numbers("input", "pairs_x"));
        var second = Sample.Of(reference.Numbers("input", "pairs_y"));
        RankTestResult greater = Paired.SignedRank(
            first,
            second,
            options: new RankTestOptions { Alternative = Alternative.Greater }
        );

        Assert.Equal(reference.Number("expected", "V"), greater.Statistic);
        Agree.Relative(reference.Number("recomputed", "p_greater_paired"), greater.PValue, 1e-12);
        Agree.Relative(
            reference.Number("recomputed", "p_two_sided_paired"),
            Paired.SignedRank(first, second).PValue,
            1e-12
        );
        Assert.Equal("signed rank, exact", greater.Method);
    }

    [Fact]
    public void SignedRank_Maize_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-darwin-maize");
        var sample = Sample.Of(reference.Numbers("input", "difference"));
        RankTestResult exact = OneSample.SignedRank(sample);
        RankTestResult normal = OneSample.SignedRank(sample, options: RankReference.Normal);
        RankTestResult plain = OneSample.SignedRank(
            sample,
            options: RankReference.Normal with
            {
                CorrectsForContinuity = false,
            }
        );

        Assert.Equal(reference.Number("recomputed", "wilcoxon_V"), exact.Statistic);
        Agree.Relative(reference.Number("recomputed", "wilcoxon_p_exact_with_ties"), exact.PValue, 1e-12);
        Agree.Relative(reference.Number("recomputed", "wilcoxon_p_normal_continuity"), normal.PValue, 1e-10);
        Agree.Relative(reference.Number("recomputed", "wilcoxon_p_normal_no_continuity"), plain.PValue, 1e-10);
        Assert.Equal("signed rank, exact", exact.Method);
        Assert.Equal("signed rank, normal approximation, corrected for continuity", normal.Method);
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void SignedRank_DataSets_AgreesWithRAndSciPy(string set)
    {
        var sample = Sample.Of(Datasets.Values(set));
        foreach (
            (string part, ZeroRule zeros) in new[]
            {
                ("signed_rank_left_out_v_exact_less_greater_two_normal_two_less_greater", ZeroRule.LeaveOut),
                ("signed_rank_ranked_first", ZeroRule.RankFirst),
            }
        )
        {
            RankTestResult Test(RankTestOptions options) =>
                OneSample.SignedRank(sample, zeros, options with { NullValue = Centres[set] });
            double[] found = [Test(RankReference.Exact).Statistic, .. RankReference.PValues(Test, false)];

            RankReference.AgreeWithBoth(part, set, found, 1e-12, 1e-12);
            if (zeros == ZeroRule.LeaveOut)
            {
                RankReference.AgreeWithBoth(
                    "signed_rank_continuity_two_less_greater",
                    set,
                    RankReference.NormalPValues(Test, true),
                    1e-12,
                    1e-12
                );
            }
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 60)]
    public void SignedRank_UpToEightValues_IsTheCountOverAllSigns(Dyadic data, bool rankZerosFirst)
    {
        double[] values = [.. data.Values.Take(8).Select(value => Math.Floor(value / 20))];
        ZeroRule zeros = rankZerosFirst ? ZeroRule.RankFirst : ZeroRule.LeaveOut;
        double[] ranked = rankZerosFirst ? values : [.. values.Where(value => value != 0)];
        double[] ranks =
        [
            .. ranked
                .Where(value => value != 0)
                .Select(value =>
                    ranked.Count(other => Math.Abs(other) < Math.Abs(value))
                    + (ranked.Count(other => Math.Abs(other) == Math.Abs(value)) + 1) / 2.0
                ),
        ];
        double observed = ranked.Where(value => value != 0).Zip(ranks, (v, r) => v > 0 ? r : 0).Sum();
        double[] sums =
        [
            .. Enumerable.Range(0, 1 << ranks.Length).Select(bits => ranks.Where((_, i) => (bits >> i & 1) == 1).Sum()),
        ];
        RankTestResult Test(Alternative alternative) =>
            OneSample.SignedRank(Sample.Of(values), zeros, new RankTestOptions { Alternative = alternative });

        Assert.Equal(observed, Test(Alternative.TwoSided).Statistic);
        Assert.Equal(ranks.Length, Test(Alternative.TwoSided).Count);
        Assert.Equal(values.Length - ranks.Length, Test(Alternative.TwoSided).LeftOut);
        Agree.Relative(sums.Average(sum => sum <= observed ? 1.0 : 0), Test(Alternative.Less).PValue, 1e-12);
        Agree.Relative(sums.Average(sum => sum >= observed ? 1.0 : 0), Test(Alternative.Greater).PValue, 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void SignedRank_MirroredAndMoved_FollowsTheData(Dyadic data, bool rankZerosFirst)
    {
        ZeroRule zeros = rankZerosFirst ? ZeroRule.RankFirst : ZeroRule.LeaveOut;
        foreach (RankTestOptions options in (RankTestOptions[])[RankReference.Normal, RankTestOptions.Default])
        {
            RankTestResult forth = OneSample.SignedRank(Sample.Of(data.Values), zeros, options);
            RankTestResult back = OneSample.SignedRank(Sample.Of(data.Map(value => -value)), zeros, options);
            RankTestResult moved = OneSample.SignedRank(
                Sample.Of([.. data.Shuffled(3).Select(value => 2 * value - 64)]),
                zeros,
                options with
                {
                    NullValue = -64,
                }
            );

            Agree.Relative(forth.PValue, back.PValue, 1e-12);
            Assert.Equal(-forth.Z ?? 0, back.Z ?? 0, 1e-12);
            Assert.Equal(forth with { Options = options }, moved with { Options = options });
            Assert.InRange(forth.PValue, 0, 1);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void SignedRank_Pairs_AreTheirDifferences(Dyadic data)
    {
        var first = Sample.Of(data.Map(value => 3 * value));
        var second = Sample.Of(data.Map(value => 2 * value));

        Assert.Equal(OneSample.SignedRank(Sample.Of(data.Values)), Paired.SignedRank(first, second));
    }

    [Fact]
    public void SignedRank_NothingLeftToRank_ShowsNothing()
    {
        RankTestResult test = OneSample.SignedRank(Sample.Of(3, 3), options: new RankTestOptions { NullValue = 3 });

        Assert.Equal((0, 1, 0, 2), (test.Statistic, test.PValue, test.Count, test.LeftOut));
        Assert.Null(test.Z);
    }

    [Fact]
    public void SignedRank_ExactOfTooManyValues_IsRefusedWithTheLimit()
    {
        var many = Sample.Of([.. Enumerable.Range(1, 1001).Select(i => (double)i)]);
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            OneSample.SignedRank(many, options: RankReference.Exact)
        );

        Assert.Equal("sample", refusal.ParamName);
        Assert.StartsWith(
            "Count of values for the exact distribution must be at most 1000; was 1001.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void SignedRank_UnequalCountsOrAnUnknownRule_AreRefused()
    {
        Assert.Equal(
            "second",
            Assert.Throws<ArgumentException>(() => Paired.SignedRank(Sample.Of(1, 2), Sample.Of(1))).ParamName
        );
        Assert.Equal(
            "zeros",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => OneSample.SignedRank(Sample.Of(1, 2), (ZeroRule)2))
                .ParamName
        );
    }
}
