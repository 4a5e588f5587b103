using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class PairwiseTests
{
    [Fact]
    public void Tukey_Resistance_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("anova", "hb-tukey-resistance");
        PairwiseResult result = Pairwise.Tukey(OneWayTests.GroupsOf(reference, "groups"));

        foreach (PairComparison pair in result.Pairs)
        {
            string name = $"{pair.Second + 1}-{pair.First + 1}";
            Assert.Equal(reference.Number("recomputed", "differences", name), -pair.Difference.Value, 1e-12);
            // The reference has R's quantile, which is right to eight digits.
            Agree.Relative(reference.Number("recomputed", "half_width"), pair.Difference.Interval!.Width / 2, 1e-8);
            Agree.Relative(reference.Number("recomputed", "p", name), pair.PValue, 1e-6);
        }

        // Printed with two decimals, first less second.
        (int, int, string)[] printed = [(1, 2, "2-3"), (1, 3, "2-4"), (2, 3, "3-4"), (0, 3, "1-4")];
        foreach ((int first, int second, string name) in printed)
        {
            double[] ends = reference.Numbers("expected", "intervals", name);
            PairComparison pair = Pair(result, first, second);
            Assert.Equal(ends[0], pair.Difference.Interval!.Lower, 0.01);
            Assert.Equal(ends[1], pair.Difference.Interval.Upper, 0.01);
        }

        Assert.Equal("Tukey-Kramer", result.Method);
        Assert.Equal(0.95, result.Confidence);
    }

    [Fact]
    public void Tukey_UnequalCounts_AgreesWithThePublishedIntervals()
    {
        var reference = ReferenceCase.Of("anova", "cl-tukey-kramer");
        PairwiseResult result = Pairwise.Tukey(OneWayTests.GroupsOf(reference, "groups"));

        (int First, int Second, string Name, int Sign)[] pairs =
        [
            (0, 1, "2-1", -1),
            (1, 2, "2-3", 1),
            (0, 2, "3-1", -1),
        ];
        foreach (var (first, second, name, sign) in pairs)
        {
            PairComparison pair = Pair(result, first, second);
            double[] row = reference.Numbers("expected", name);
            Assert.Equal(row[1], sign * pair.Difference.Value, 1e-12);
            Assert.Equal(row[2] - row[0], pair.Difference.Interval!.Width, 1e-4);
            Assert.Equal(reference.Number("expected", "p", name), pair.PValue, 1e-7);
        }
    }

    [Fact]
    public void Tukey_BreaksOfWarp_AgreesWithThePublishedTable()
    {
        var reference = ReferenceCase.Of("anova", "cl-warpbreaks-tukey");
        PairwiseResult result = Pairwise.Tukey(OneWayTests.ByName(reference));

        (int First, int Second, string Name)[] pairs = [(0, 1, "L-M"), (0, 2, "L-H"), (1, 2, "M-H")];
        foreach (var (first, second, name) in pairs)
        {
            PairComparison pair = Pair(result, first, second);
            double[] row = reference.Numbers("expected", name);
            Assert.Equal(row[0], pair.Difference.Value, 1e-6);
            Assert.Equal(row[1], pair.Difference.Interval!.Lower, 1e-5);
            Assert.Equal(row[2], pair.Difference.Interval.Upper, 1e-5);
            Assert.Equal(row[3], pair.PValue, 1e-6);
        }
    }

    [Fact]
    public void TukeyAndGamesHowell_Plants_AgreeWithTheReference()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-plantgrowth");
        Sample[] groups = OneWayTests.ByName(reference);
        PairwiseResult tukey = Pairwise.Tukey(groups);
        PairwiseResult games = Pairwise.GamesHowell(groups);

        (int First, int Second, string Name)[] pairs = [(0, 1, "trt1-ctrl"), (0, 2, "trt2-ctrl"), (1, 2, "trt2-trt1")];
        foreach (var (first, second, name) in pairs)
        {
            PairComparison pair = Pair(tukey, first, second);
            double[] row = reference.Numbers("recomputed", "tukey_diff_low_high", name);
            Assert.Equal(-row[0], pair.Difference.Value, 1e-12);
            Assert.Equal(-row[2], pair.Difference.Interval!.Lower, 1e-7);
            Assert.Equal(-row[1], pair.Difference.Interval.Upper, 1e-7);
            Assert.Equal(reference.Number("expected", "tukey_p", name), pair.PValue, 1e-6);

            pair = Pair(games, first, second);
            row = reference.Numbers("recomputed", "games_howell_diff_df_q_p_low_high", name);
            Assert.Equal(-row[0], pair.Difference.Value, 1e-12);
            Agree.Relative(row[1], pair.Difference.DegreesOfFreedom!.Value, 1e-8);
            Agree.Relative(row[2], pair.Statistic, 1e-8);
            Assert.Equal(row[3], pair.PValue, 1e-6);
            Assert.Equal(-row[5], pair.Difference.Interval!.Lower, 1e-6);
            Assert.Equal(-row[4], pair.Difference.Interval.Upper, 1e-6);
        }
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("small")]
    [InlineData("offset")]
    [InlineData("skewed")]
    public void TukeyAndGamesHowell_GroupSets_AgreeWithRAndSciPy(string set)
    {
        Sample[] groups = HypothesisReference.Groups(set);
        double[] tukey = [.. Pairwise.Tukey(groups, 0.9).Pairs.SelectMany(pair => Of(pair))];
        double[] games =
        [
            .. Pairwise
                .GamesHowell(groups, 0.9)
                .Pairs.SelectMany(pair =>
                    new[] { pair.Difference.Value, pair.Difference.DegreesOfFreedom!.Value, pair.Statistic }.Concat(
                        Of(pair).Skip(1)
                    )
                ),
        ];

        // SciPy's studentized range has 11 digits, R's quantile eight; R has none below two degrees of freedom.
        Agree.Relative(ReferenceCase.Of("several-groups-r", "tukey_d_p_low_high_90").Numbers(set), tukey, 1e-6);
        Agree.Relative(ReferenceCase.Of("several-groups-scipy", "tukey_d_p_low_high_90").Numbers(set), tukey, 1e-9);
        Agree.Relative(
            ReferenceCase.Of("several-groups-scipy", "games_howell_d_df_q_p_low_high_90").Numbers(set),
            games,
            1e-9
        );
        if (set != "small")
        {
            Agree.Relative(
                ReferenceCase.Of("several-groups-r", "games_howell_d_df_q_p_low_high_90").Numbers(set),
                games,
                1e-6
            );
        }

        static double[] Of(PairComparison pair) =>
            [pair.Difference.Value, pair.PValue, pair.Difference.Interval!.Lower, pair.Difference.Interval.Upper];
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("small")]
    [InlineData("offset")]
    [InlineData("skewed")]
    public void Dunn_GroupSets_AgreeWithRAndSciPy(string set)
    {
        Sample[] groups = HypothesisReference.Groups(set);
        PairwiseResult holm = Pairwise.Dunn(groups, confidence: 0.9);
        PairwiseResult rate = Pairwise.Dunn(groups, AdjustmentMethod.BenjaminiHochberg, 0.9);
        double[] actual =
        [
            .. holm.Pairs.SelectMany(
                (pair, i) =>
                    new[]
                    {
                        pair.Difference.Value,
                        pair.Statistic,
                        pair.PValue,
                        rate.Pairs[i].PValue,
                        pair.Difference.Interval!.Lower,
                        pair.Difference.Interval.Upper,
                    }
            ),
        ];

        Agree.Relative(
            ReferenceCase.Of("several-groups-r", "dunn_d_z_holm_bh_low_high_90").Numbers(set),
            actual,
            1e-11
        );
        Agree.Relative(
            ReferenceCase.Of("several-groups-scipy", "dunn_d_z_holm_bh_low_high_90").Numbers(set),
            actual,
            1e-11
        );
        Assert.Equal("Dunn, Holm", holm.Method);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Tukey_TwoGroups_IsThePooledT(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values, 100, 101]);
        var second = Sample.Of([.. b.Values, 100, 102]);
        PairComparison tukey = Pairwise.Tukey([first, second]).Pairs[0];
        TTestResult pooled = TwoSample.Pooled(first, second);
        PairComparison games = Pairwise.GamesHowell([first, second]).Pairs[0];
        TTestResult welch = TwoSample.Welch(first, second);

        AgreeWith(pooled, tukey);
        AgreeWith(welch, games);

        static void AgreeWith(TTestResult t, PairComparison pair)
        {
            double scale = t.Estimate.Interval!.Width;
            Assert.Equal(t.Estimate.Interval.Lower, pair.Difference.Interval!.Lower, 1e-11 * scale);
            Assert.Equal(t.Estimate.Interval.Upper, pair.Difference.Interval.Upper, 1e-11 * scale);
            Agree.Relative(t.Estimate.StandardError!.Value, pair.Difference.StandardError!.Value, 1e-12);
            Assert.Equal(t.PValue, pair.PValue, 1e-9);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 30)]
    public void AllMethods_Turned_ChangeTheirSignsOnly(Dyadic a, Dyadic b, Dyadic c)
    {
        Sample[] groups = [.. new[] { a, b, c }.Select(d => Sample.Of([.. d.Values, 0, 1, 5]))];
        Sample[] turned = [.. groups.Reverse()];

        Turned(Pairwise.Tukey(groups), Pairwise.Tukey(turned));
        Turned(Pairwise.GamesHowell(groups), Pairwise.GamesHowell(turned));
        Turned(Pairwise.Dunn(groups), Pairwise.Dunn(turned));

        static void Turned(PairwiseResult forth, PairwiseResult back)
        {
            foreach (PairComparison pair in forth.Pairs)
            {
                PairComparison other = Pair(back, 2 - pair.Second, 2 - pair.First);
                double scale = pair.Difference.Interval!.Width;
                Assert.Equal(-pair.Difference.Value, other.Difference.Value, 1e-11 * scale);
                Assert.Equal(-pair.Difference.Interval.Lower, other.Difference.Interval!.Upper, 1e-11 * scale);
                Assert.Equal(pair.PValue, other.PValue, 1e-9);
                Assert.True(pair.Difference.Interval.Contains(pair.Difference.Value));
            }
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 50)]
    public void Tukey_AnyGroups_IntervalMissesZeroWhereThePValueIsBelowTheLevel(Dyadic a, Dyadic b, Dyadic c)
    {
        Sample[] groups = [.. new[] { a, b, c }.Select(d => Sample.Of([.. d.Values, 0, 1, 5]))];
        foreach (PairComparison pair in Pairwise.Tukey(groups, 0.9).Pairs)
        {
            Assert.Equal(pair.PValue >= 0.1, pair.Difference.Interval!.Contains(0));
        }

        foreach (PairComparison pair in Pairwise.Dunn(groups, AdjustmentMethod.Bonferroni, 0.9).Pairs)
        {
            Assert.Equal(pair.PValue >= 0.1, pair.Difference.Interval!.Contains(0));
        }
    }

    [Fact]
    public void Equals_SameGroups_IsTrueAndOtherwiseFalse()
    {
        Sample[] groups = HypothesisReference.Groups("ties");

        Assert.Equal(Pairwise.Tukey(groups), Pairwise.Tukey(groups));
        Assert.Equal(Pairwise.Tukey(groups).GetHashCode(), Pairwise.Tukey(groups).GetHashCode());
        Assert.NotEqual(Pairwise.Tukey(groups), Pairwise.Tukey(groups, 0.9));
        Assert.NotEqual(Pairwise.Tukey(groups), Pairwise.GamesHowell(groups));
    }

    [Fact]
    public void AllMethods_Refusals_SayWhatWouldDo()
    {
        Refused(
            "Values must differ within at least one group; all were equal in each, which leaves q undefined.",
            () => Pairwise.Tukey([Sample.Of(1, 1), Sample.Of(2)])
        );
        Refused(
            "Count of values must be above the count of groups, 2; was 2.",
            () => Pairwise.Tukey([Sample.Of(1), Sample.Of(2)])
        );
        Refused(
            "Count of values must be at least 2; was 1.",
            () => Pairwise.GamesHowell([Sample.Of(1, 2), Sample.Of(2)])
        );
        Refused(
            "Values must differ within at least one group of each pair; all were equal in those at index 1 and 2",
            () => Pairwise.GamesHowell([Sample.Of(1, 2), Sample.Of(3, 3), Sample.Of(4, 4)])
        );
        Refused(
            "Values must differ; all were equal, which leaves z undefined.",
            () => Pairwise.Dunn([Sample.Of(1, 1, 1), Sample.Of(1, 1, 1, 1)])
        );
        Refused("Count of groups must be at least 2; was 0.", () => Pairwise.Dunn([]));
        var confidence = Assert.Throws<ArgumentOutOfRangeException>(() => Pairwise.Tukey([], 1));
        Assert.Equal("confidence", confidence.ParamName);

        static void Refused(string message, Action act)
        {
            var refusal = Assert.Throws<ArgumentException>(act);
            Assert.Equal("groups", refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }

    private static PairComparison Pair(PairwiseResult result, int first, int second) =>
        result.Pairs.Single(pair => pair.First == first && pair.Second == second);
}
