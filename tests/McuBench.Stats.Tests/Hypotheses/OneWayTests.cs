using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class OneWayTests
{
    private static readonly string[] CertifiedNames =
    [
        "df_between",
        "df_within",
        "ss_between",
        "ss_within",
        "ms_between",
        "ms_within",
        "F",
        "r_squared",
        "residual_sd",
    ];

    [Theory]
    [InlineData("strd-anova-sirstv")]
    [InlineData("strd-anova-atmwtag")]
    public void Anova_CertifiedData_KeepsTheDigitsOfTheRoundedData(string set)
    {
        var reference = ReferenceCase.Of("anova", set);
        AnovaResult result = OneWay.Anova(GroupsOf(reference, "groups"));

        // What exact arithmetic gives for the data as doubles hold them.
        Agree.Relative(reference.Number("rounded_data", "ss_between"), result.Between.SumOfSquares, 1e-13);
        Agree.Relative(reference.Number("rounded_data", "ss_within"), result.Within.SumOfSquares, 1e-13);
        Agree.Relative(reference.Number("rounded_data", "F"), result.Test.Statistic, 1e-13);
        // Rounding seven digits after 107.868 costs AtmWtAg's F 7e-11.
        double rounding = set == "strd-anova-atmwtag" ? 2e-10 : 1e-12;
        Agree.Relative(reference.Number("expected", "F"), result.Test.Statistic, rounding);
        AgreeWithCertified(reference, result, rounding, "expected");
    }

    [Theory]
    [InlineData("SmLs01", 1e-13)]
    [InlineData("SmLs02", 3e-13)]
    [InlineData("SmLs03", 3e-13)]
    [InlineData("SmLs04", 1e-10)]
    [InlineData("SmLs05", 2e-10)]
    [InlineData("SmLs06", 2e-10)]
    [InlineData("SmLs07", 1e-4)]
    [InlineData("SmLs08", 2e-4)]
    [InlineData("SmLs09", 2e-4)]
    public void Anova_SimonAndLesage_KeepsTheDigitsOfTheRoundedData(string set, double rounding)
    {
        var reference = ReferenceCase.Of("anova", "strd-anova-smls01-09");
        AnovaResult result = OneWay.Anova(SimonAndLesage(reference, set));

        Agree.Relative(reference.Number("rounded_data", "F", set), result.Test.Statistic, 3e-13);
        // Three times what rounding the data to doubles costs.
        AgreeWithCertified(reference, result, rounding, "expected", set);
    }

    [Theory]
    [InlineData("anova", "hb-anova-machines", "machines")]
    [InlineData("anova", "hb-anova-resistance", "groups")]
    [InlineData("anova", "cl-insectsprays", "groups")]
    [InlineData("hypotheses", "hb-gear", "batches_of_10")]
    [InlineData("classic-data", "cl-morley", "series")]
    [InlineData("hypotheses", "cl-plantgrowth", "")]
    public void Anova_PublishedData_AgreesWithTheReference(string file, string key, string groups)
    {
        var reference = ReferenceCase.Of(file, key);
        AnovaResult result = OneWay.Anova(groups.Length > 0 ? GroupsOf(reference, groups) : ByName(reference));
        (double between, double within, double f, double p) = key switch
        {
            "hb-anova-machines" => Of("SS_machine", "SS_residual"),
            "hb-anova-resistance" => Of("SS_treatments", "SS_error"),
            "hb-gear" => Of("SS_batch", "SS_residual", "anova"),
            "cl-insectsprays" => OfLists("anova_SS", "anova_F_p"),
            _ => (
                reference.Numbers("recomputed", "SS")[0],
                reference.Numbers("recomputed", "SS")[1],
                reference.Number("recomputed", "F"),
                reference.Number("recomputed", "p")
            ),
        };

        // The reference has 11 digits and more.
        Agree.Relative(between, result.Between.SumOfSquares, 1e-11);
        Agree.Relative(within, result.Within.SumOfSquares, 1e-11);
        Agree.Relative(f, result.Test.Statistic, 1e-11);
        Agree.Relative(p, result.Test.PValue, 2e-11);

        (double, double, double, double) Of(string first, string second, params string[] part) =>
            (
                reference.Number(["recomputed", .. part, first]),
                reference.Number(["recomputed", .. part, second]),
                reference.Number(["recomputed", .. part, "F"]),
                reference.Number(["recomputed", .. part, "p"])
            );

        (double, double, double, double) OfLists(string sums, string test) =>
            (
                reference.Numbers("recomputed", sums)[0],
                reference.Numbers("recomputed", sums)[1],
                reference.Numbers("recomputed", test)[0],
                reference.Numbers("recomputed", test)[1]
            );
    }

    [Fact]
    public void Anova_GearDiameters_PrintAsInTheHandbook()
    {
        var reference = ReferenceCase.Of("hypotheses", "hb-gear");
        AnovaResult result = OneWay.Anova(GroupsOf(reference, "batches_of_10"));

        Assert.Equal(reference.Number("expected", "anova", "F"), result.Test.Statistic, 5e-5);
        Assert.Equal(reference.Number("expected", "anova", "residual_sd"), result.ResidualDeviation, 5e-6);
        Assert.Equal(
            reference.Number("expected", "anova", "SS_total"),
            result.Between.SumOfSquares + result.Within.SumOfSquares,
            5e-7
        );
        Assert.Equal((9, 90), (result.Between.DegreesOfFreedom, result.Within.DegreesOfFreedom));
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("small")]
    [InlineData("offset")]
    [InlineData("skewed")]
    public void AnovaAndWelch_GroupSets_AgreeWithRAndStatsmodels(string set)
    {
        Sample[] groups = HypothesisReference.Groups(set);
        AnovaResult anova = OneWay.Anova(groups);
        FTestResult test = anova.Test;
        double[] row =
        [
            anova.Between.SumOfSquares,
            anova.Within.SumOfSquares,
            test.Statistic,
            test.NumeratorDegreesOfFreedom,
            test.DenominatorDegreesOfFreedom,
            test.PValue,
        ];

        AgreeWithBoth("anova_ss_ss_f_df_df_p", set, row);
        Assert.Equal("one-way analysis of variance", test.Method);

        FTestResult welch = OneWay.Welch(groups);
        AgreeWithBoth(
            "welch_f_df_df_p",
            set,
            [welch.Statistic, welch.NumeratorDegreesOfFreedom, welch.DenominatorDegreesOfFreedom, welch.PValue]
        );
        Assert.Equal("Welch's analysis of variance", welch.Method);
        Assert.Equal(groups.Sum(group => group.Count), welch.Count);
    }

    [Fact]
    public void Welch_PublishedData_AgreesWithTheReference()
    {
        var plants = ReferenceCase.Of("hypotheses", "cl-plantgrowth");
        Agree.Relative(plants.Numbers("recomputed", "welch_F_df1_df2_p"), All(OneWay.Welch(ByName(plants))), 1e-11);
        var sprays = ReferenceCase.Of("anova", "cl-insectsprays");
        Agree.Relative(
            sprays.Numbers("recomputed", "welch_F_df1_df2_p"),
            All(OneWay.Welch(GroupsOf(sprays, "groups"))),
            1e-11
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void AnovaAndWelch_TwoGroups_AreTheSquaresOfT(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values, 100, 101]);
        var second = Sample.Of([.. b.Values, 100, 102]);
        double pooled = TwoSample.Pooled(first, second).Statistic;
        TTestResult t = TwoSample.Welch(first, second);
        FTestResult welch = OneWay.Welch(first, second);

        // A mean difference near 0 is a rounding error in both.
        Assert.Equal(pooled * pooled, OneWay.Anova(first, second).Test.Statistic, 1e-11 * (1 + pooled * pooled));
        Assert.Equal(t.Statistic * t.Statistic, welch.Statistic, 1e-11 * (1 + welch.Statistic));
        Agree.Relative(t.Estimate.DegreesOfFreedom!.Value, welch.DenominatorDegreesOfFreedom, 1e-12);
        Assert.Equal(t.PValue, welch.PValue, 1e-6);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void AnovaAndWelch_ShiftedScaledAndTurned_StayTheSame(Dyadic a, Dyadic b, Dyadic c, int seed)
    {
        Dyadic[] data = [.. new[] { a, b, c }.Select(d => new Dyadic([.. d.Values, 0, 1, 5]))];
        Sample[] plain = [.. data.Select(d => Sample.Of(d.Values))];
        Sample[] changed = [.. data.Select(d => Sample.Of([.. d.Shuffled(seed).Select(v => -4 * v + 1e6)])).Reverse()];

        double f = OneWay.Anova(plain).Test.Statistic;
        Assert.Equal(f, OneWay.Anova(changed).Test.Statistic, 1e-10 * (1 + f));
        double welch = OneWay.Welch(plain).Statistic;
        Assert.Equal(welch, OneWay.Welch(changed).Statistic, 1e-10 * (1 + welch));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Anova_AnyGroups_SumsAreThoseOfTheWholeData(Dyadic a, Dyadic b, Dyadic c)
    {
        double[][] data =
        [
            [.. a.Values, 0, 1],
            b.Values,
            c.Values,
        ];
        double[] all = [.. data.SelectMany(values => values)];
        AnovaResult result = OneWay.Anova([.. data.Select(values => Sample.Of(values))]);
        double mean = all.Average();

        Agree.Relative(
            all.Sum(value => (value - mean) * (value - mean)),
            result.Between.SumOfSquares + result.Within.SumOfSquares,
            1e-12
        );
        Assert.InRange(result.RSquared, 0, 1);
    }

    [Fact]
    public void AnovaAndWelch_NearTheEndsOfTheRange_AreThoseOfScaledData()
    {
        Sample[] groups = HypothesisReference.Groups("ties");
        double anova = OneWay.Anova(groups).Test.Statistic;
        double welch = OneWay.Welch(groups).Statistic;
        foreach (int exponent in new[] { -1000, -500, 500 })
        {
            Sample[] scaled = Scaled(groups, exponent);
            Agree.Relative(anova, OneWay.Anova(scaled).Test.Statistic, 1e-13);
            Agree.Relative(welch, OneWay.Welch(scaled).Statistic, 1e-13);
        }

        Agree.Relative(welch, OneWay.Welch(Scaled(groups, 1000)).Statistic, 1e-13);
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => OneWay.Anova(Scaled(groups, 1000)));
        Assert.Equal("groups", refusal.ParamName);
        Assert.StartsWith(
            "Sum of squares of the values must be below 1.8E308",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AnovaAndWelch_Refusals_SayWhatWouldDo()
    {
        Refused("Count of groups must be at least 2; was 1.", () => OneWay.Anova(Sample.Of(1, 2)));
        Refused(
            "Count of values must be above the count of groups, 2; was 2.",
            () => OneWay.Anova(Sample.Of(1), Sample.Of(2))
        );
        Refused(
            "Values must differ within at least one group; all were equal in each, which leaves F undefined.",
            () => OneWay.Anova(Sample.Of(1, 1), Sample.Of(2, 2))
        );
        Refused("Group at index 1 must be given; was null.", () => OneWay.Welch(Sample.Of(1, 2), null!));
        Refused("Count of values must be at least 2; was 1.", () => OneWay.Welch(Sample.Of(1, 2), Sample.Of(2)));
        Refused(
            "Values of the group at index 1 must differ; all were equal, which gives it an infinite weight.",
            () => OneWay.Welch(Sample.Of(1, 2), Sample.Of(3, 3, 3))
        );

        static void Refused(string message, Action act)
        {
            var refusal = Assert.Throws<ArgumentException>(act);
            Assert.Equal("groups", refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }

    internal static Sample[] GroupsOf(ReferenceCase reference, string name) =>
        [.. reference.Rows("input", name).Select(row => Sample.Of(row))];

    internal static Sample[] ByName(ReferenceCase reference) =>
        [.. reference.Names("input").Select(name => Sample.Of(reference.Numbers("input", name)))];

    private static Sample[] Scaled(Sample[] groups, int exponent) =>
        [.. groups.Select(g => Sample.Of([.. g.Values.ToArray().Select(v => Math.ScaleB(v, exponent))]))];

    private static void AgreeWithCertified(
        ReferenceCase reference,
        AnovaResult result,
        double tolerance,
        params string[] path
    )
    {
        double[] expected = [.. CertifiedNames.Select(name => reference.Number([.. path, name]))];
        Agree.Relative(
            expected,
            [
                result.Between.DegreesOfFreedom,
                result.Within.DegreesOfFreedom,
                result.Between.SumOfSquares,
                result.Within.SumOfSquares,
                result.Between.MeanSquare,
                result.Within.MeanSquare,
                result.Test.Statistic,
                result.RSquared,
                result.ResidualDeviation,
            ],
            tolerance
        );
    }

    // The formula of the file, with decimals rounded once as reading the file would.
    private static Sample[] SimonAndLesage(ReferenceCase reference, string set)
    {
        int n = (int)reference.Number("input", "sets", set, "n_per_group");
        decimal start = (decimal)reference.Number("input", "sets", set, "C");
        return
        [
            .. reference
                .Numbers("input", "c")
                .Select(centre =>
                    Sample.Of([
                        .. Enumerable
                            .Range(1, n)
                            .Select(j =>
                                (double)(
                                    start
                                    + (decimal)centre
                                    + (
                                        j == 1 ? 0
                                        : j % 2 == 0 ? -0.1m
                                        : 0.1m
                                    )
                                )
                            ),
                    ])
                ),
        ];
    }

    private static void AgreeWithBoth(string part, string set, double[] actual)
    {
        Agree.Relative(ReferenceCase.Of("several-groups-r", part).Numbers(set), actual, 2e-12);
        Agree.Relative(ReferenceCase.Of("several-groups-scipy", part).Numbers(set), actual, 2e-12);
    }

    private static double[] All(FTestResult test) =>
        [test.Statistic, test.NumeratorDegreesOfFreedom, test.DenominatorDegreesOfFreedom, test.PValue];
}
