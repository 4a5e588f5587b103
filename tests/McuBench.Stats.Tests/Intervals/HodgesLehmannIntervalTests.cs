using FsCheck.Xunit;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;
using McuBench.Stats.Tests.Hypotheses;

namespace McuBench.Stats.Tests.Intervals;

public sealed class HodgesLehmannIntervalTests
{
    [Fact]
    public void LocationAndShift_BookExamples_AgreeWithTheReference()
    {
        var reference = ReferenceCase.Of("ranks", "cl-hollander-wolfe");
        Estimate shift = HodgesLehmannInterval.Shift(
            Sample.Of(reference.Numbers("input", "rank_sum_x")),
            Sample.Of(reference.Numbers("input", "rank_sum_y"))
        );
        double[] differences =
        [
            .. reference.Numbers("input", "pairs_x").Zip(reference.Numbers("input", "pairs_y"), (x, y) => x - y),
        ];
        Estimate centre = HodgesLehmannInterval.Location(Sample.Of(differences));

        // Differences of decimals, rounded in the last place.
        Agree.Relative(reference.Number("recomputed", "hodges_lehmann_shift"), shift.Value, 1e-14);
        Agree.Relative(reference.Numbers("recomputed", "shift_interval_95"), IntervalReference.Ends(shift), 1e-14);
        Agree.Relative(reference.Number("recomputed", "paired_pseudomedian"), centre.Value, 1e-14);
        Agree.Relative(reference.Numbers("recomputed", "paired_interval_95"), IntervalReference.Ends(centre), 1e-13);
        Assert.Equal("shift, Hodges-Lehmann, exact ranks", shift.Method);
        Assert.Equal("Ranks 9 and 42 of 50 differences; confidence reached 0.9600.", Assert.Single(shift.Notes));
    }

    [Fact]
    public void Location_Maize_IsTheMedianOfTheMeansOfPairs()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-darwin-maize");

        Assert.Equal(
            reference.Number("recomputed", "median_of_walsh_averages"),
            HodgesLehmannInterval.Location(Sample.Of(reference.Numbers("input", "difference"))).Value
        );
    }

    [Theory]
    [MemberData(nameof(IntervalReference.LargerSets), MemberType = typeof(IntervalReference))]
    public void Location_DataSets_AgreesWithRAndListing(string set)
    {
        var sample = Sample.Of(Datasets.Values(set));
        Estimate exact = HodgesLehmannInterval.Location(sample, 0.9, NullDistribution.Exact);
        Estimate normal = HodgesLehmannInterval.Location(sample, 0.9, NullDistribution.Normal);

        RankReference.AgreeWithBoth(
            "location_exact_90",
            set,
            [exact.Value, .. IntervalReference.Ends(exact)],
            1e-15,
            1e-15
        );
        // Both invert the test numerically, R by a root of its step function.
        RankReference.AgreeWithBoth("location_normal_90", set, IntervalReference.Ends(normal), 1e-11, 1e-15);
        Assert.Equal("centre, Hodges-Lehmann, ranks by the normal distribution", normal.Method);
    }

    [Theory]
    [MemberData(nameof(RankReference.LargePairs), MemberType = typeof(RankReference))]
    public void Shift_DataSets_AgreesWithRAndListing(string pair)
    {
        (Sample first, Sample second) = RankReference.Pair(pair);
        Estimate exact = HodgesLehmannInterval.Shift(first, second, 0.9, NullDistribution.Exact);
        Estimate normal = HodgesLehmannInterval.Shift(first, second, 0.9, NullDistribution.Normal);

        RankReference.AgreeWithBoth(
            "shift_exact_90",
            pair,
            [exact.Value, .. IntervalReference.Ends(exact)],
            1e-15,
            1e-15
        );
        RankReference.AgreeWithBoth("shift_normal_90", pair, IntervalReference.Ends(normal), 1e-11, 1e-15);
    }

    [Theory]
    [InlineData(0.95, 6, 4)]
    [InlineData(0.9, 5, 3)]
    [InlineData(0.99, 8, 5)]
    [InlineData(0.9375, 5, 4)]
    public void LocationAndShift_TooFewValues_SayHowManyWouldDo(double confidence, int one, int aSide)
    {
        // By hand: 2^−n, and n!²/(2n)!, of half of what the confidence leaves or less.
        Sample Values(int n) => Sample.Of([.. Enumerable.Range(1, n).Select(i => (double)(i * i))]);
        foreach (NullDistribution distribution in Enum.GetValues<NullDistribution>())
        {
            var location = Assert.Throws<ArgumentException>(() =>
                HodgesLehmannInterval.Location(Values(one - 1), confidence, distribution)
            );
            var shift = Assert.Throws<ArgumentException>(() =>
                HodgesLehmannInterval.Shift(Values(aSide), Values(aSide - 1), 1 - (1 - confidence) / 4, distribution)
            );

            Assert.Equal("sample", location.ParamName);
            Assert.StartsWith(
                FormattableString.Invariant(
                    $"Count of values must be at least {one} for a signed-rank interval with confidence {confidence * 100} %; was {one - 1}."
                ),
                location.Message,
                StringComparison.Ordinal
            );
            Assert.Equal("second", shift.ParamName);
            Assert.StartsWith("Count of values must be at least ", shift.Message, StringComparison.Ordinal);
            Assert.Contains(
                FormattableString.Invariant($"was {aSide} and {aSide - 1}."),
                shift.Message,
                StringComparison.Ordinal
            );
            Assert.NotNull(HodgesLehmannInterval.Location(Values(one), confidence, distribution).Interval);
            Assert.NotNull(
                HodgesLehmannInterval.Shift(Values(aSide), Values(aSide), confidence, distribution).Interval
            );
        }
    }

    [Fact]
    public void Shift_ThreeASide_IsRefusedWithFour() =>
        Assert.StartsWith(
            "Count of values must be at least 4 a side for a two-sample rank interval with confidence 95 %; was 3 and 3.",
            Assert
                .Throws<ArgumentException>(() => HodgesLehmannInterval.Shift(Sample.Of(1, 2, 3), Sample.Of(1, 2, 4)))
                .Message,
            StringComparison.Ordinal
        );

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 60)]
    public void Location_NullValuesWithin_AreThoseTheTestKeeps(Dyadic data)
    {
        // Distinct values, so that the test is exact without ties at values that no mean of a pair equals.
        double[] values = [.. data.Values.Distinct().Take(8)];
        if (values.Length < 5)
        {
            return;
        }

        Interval interval = HodgesLehmannInterval.Location(Sample.Of(values), 0.9).Interval!;
        // Means of pairs are sixteenths: a fifth of one to either side of an end equals none.
        foreach ((double end, double inwards) in new[] { (interval.Lower, 0.0125), (interval.Upper, -0.0125) })
        {
            double Test(double nullValue) =>
                OneSample.SignedRank(Sample.Of(values), options: new RankTestOptions { NullValue = nullValue }).PValue;

            Assert.True(Test(end + inwards) > 0.1);
            Assert.True(Test(end - inwards) <= 0.1);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 60)]
    public void Shift_NullValuesWithin_AreThoseTheTestKeeps(Dyadic a, Dyadic b)
    {
        var first = Sample.Of([.. a.Values.Distinct(), 101, 103, 105]);
        var second = Sample.Of([.. b.Values.Distinct(), 102, 104, 107]);
        Interval interval = HodgesLehmannInterval.Shift(first, second, 0.9).Interval!;
        foreach ((double end, double inwards) in new[] { (interval.Lower, 0.025), (interval.Upper, -0.025) })
        {
            double Test(double nullValue) =>
                TwoSample.MannWhitney(first, second, new RankTestOptions { NullValue = nullValue }).PValue;

            Assert.True(Test(end + inwards) > 0.1);
            Assert.True(Test(end - inwards) <= 0.1);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void LocationAndShift_MirroredScaledAndMoved_FollowTheData(Dyadic a, Dyadic b)
    {
        double[] first = [.. a.Values, -50, -40, -30, 30, 40, 50];
        double[] second = [.. b.Values, -51, -42, -33, 34, 45, 56];
        foreach (NullDistribution distribution in Enum.GetValues<NullDistribution>())
        {
            Estimate centre = HodgesLehmannInterval.Location(Sample.Of(first), 0.9, distribution);
            Estimate mirrored = HodgesLehmannInterval.Location(
                Sample.Of([.. first.Select(value => -2 * value + 16)]),
                0.9,
                distribution
            );
            Estimate shift = HodgesLehmannInterval.Shift(Sample.Of(first), Sample.Of(second), 0.9, distribution);
            Estimate swapped = HodgesLehmannInterval.Shift(
                Sample.Of([.. second.Select(value => 4 * value)]),
                Sample.Of([.. first.Select(value => 4 * value)]),
                0.9,
                distribution
            );

            Assert.Equal(-2 * centre.Interval!.Upper + 16, mirrored.Interval!.Lower);
            Assert.Equal(-2 * centre.Value + 16, mirrored.Value);
            Assert.Equal(-4 * shift.Interval!.Lower, swapped.Interval!.Upper);
            Assert.Equal(HodgesLehmann.Location(first), centre.Value);
            Assert.Equal(HodgesLehmann.Shift(Sample.Of(first), Sample.Of(second)), shift.Value);
            Assert.True(centre.Interval.Contains(centre.Value));
            Assert.True(shift.Interval.Contains(shift.Value));
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Ratio_AnyValues_IsTheShiftOfTheLogarithms(Dyadic a, Dyadic b)
    {
        double[] above = [.. a.Values.Select(value => Math.Abs(value)), 1, 2, 3, 4];
        double[] below = [.. b.Values.Select(value => Math.Abs(value)), 1.5, 2.5, 3.5, 4.5];
        var numerator = Sample.Of([.. above.Where(value => value > 0)]);
        var denominator = Sample.Of([.. below.Where(value => value > 0)]);
        Estimate ratio = HodgesLehmannInterval.Ratio(numerator, denominator);
        Estimate turned = HodgesLehmannInterval.Ratio(denominator, numerator);
        Estimate shift = HodgesLehmannInterval.Shift(
            Sample.Of([.. numerator.Values.ToArray().Select(value => Math.Log(value))]),
            Sample.Of([.. denominator.Values.ToArray().Select(value => Math.Log(value))])
        );

        Agree.Relative(Math.Exp(shift.Value), ratio.Value, 1e-14);
        Agree.Relative(Math.Exp(shift.Interval!.Lower), ratio.Interval!.Lower, 1e-14);
        Agree.Relative(Math.Exp(shift.Interval.Upper), ratio.Interval.Upper, 1e-14);
        Agree.Relative(1 / ratio.Value, turned.Value, 1e-12);
        Agree.Relative(1 / ratio.Interval.Lower, turned.Interval!.Upper, 1e-12);
        Assert.Contains("ratio, Hodges-Lehmann", ratio.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Ratio_ValueOfZero_IsRefused() =>
        Assert.Equal(
            "denominator",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    HodgesLehmannInterval.Ratio(Sample.Of(1, 2, 3, 4), Sample.Of(0, 1, 2, 3))
                )
                .ParamName
        );

    [Fact]
    public void LocationAndShift_AllEqual_HaveNoIntervalAndSaySo()
    {
        var same = Sample.Of([.. Enumerable.Repeat(5.0, 60)]);
        foreach (
            Estimate estimate in (Estimate[])
                [
                    HodgesLehmannInterval.Location(same),
                    HodgesLehmannInterval.Shift(same, same),
                    HodgesLehmannInterval.Location(Sample.Of(5, 5, 5, 5, 5, 5)),
                    HodgesLehmannInterval.Shift(Sample.Of(5, 5, 5, 5), Sample.Of(5, 5, 5, 5)),
                ]
        )
        {
            Assert.Null(estimate.Interval);
            Assert.StartsWith("Both ends are equal", estimate.Notes[1], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void LocationAndShift_NearOverflow_AreRightOrRefused()
    {
        Estimate centre = HodgesLehmannInterval.Location(
            Sample.Of(1.1e308, 1.2e308, 1.3e308, 1.4e308, 1.5e308, 1.7e308)
        );

        Assert.Equal((1.1e308, 1.7e308), (centre.Interval!.Lower, centre.Interval.Upper));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            HodgesLehmannInterval.Shift(Sample.Of(1e308, 1.1e308, 1.2e308, 1.3e308), Sample.Of(-1e308, -1, 0, 1))
        );
    }

    [Fact]
    public void LocationAndShift_ExactOfTooMany_AreRefusedWithTheLimit()
    {
        var many = Sample.Of([.. Enumerable.Range(0, 1001).Select(i => (double)i)]);

        Assert.StartsWith(
            "Count of values for the exact distribution must be at most 1000; was 1001.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    HodgesLehmannInterval.Location(many, 0.95, NullDistribution.Exact)
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Product of the sample sizes must be at most 20000",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    HodgesLehmannInterval.Shift(many, many, 0.95, NullDistribution.Exact)
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "confidence",
            Assert.Throws<ArgumentOutOfRangeException>(() => HodgesLehmannInterval.Location(many, 1)).ParamName
        );
    }
}
