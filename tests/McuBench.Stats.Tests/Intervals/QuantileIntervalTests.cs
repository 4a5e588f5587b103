using FsCheck.Xunit;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class QuantileIntervalTests
{
    [Theory]
    [MemberData(nameof(IntervalReference.LargerSets), MemberType = typeof(IntervalReference))]
    public void ExactAndInterpolated_MedianOfDataSets_AgreeWithRAndPython(string set)
    {
        var sample = Sample.Of(Datasets.Values(set));
        Estimate exact = QuantileInterval.Exact(sample, 0.5, 0.9);

        IntervalReference.AgreeWithBoth(
            "median_interpolated_90",
            set,
            IntervalReference.Ends(QuantileInterval.Interpolated(sample, 0.5, 0.9)),
            1e-13
        );
        Agree.Relative(
            ReferenceCase.Of("intervals-r", "median_exact_90").Numbers(set).AsSpan(..2),
            IntervalReference.Ends(exact),
            0
        );
        double reached = ReferenceCase.Of("intervals-scipy", "median_exact_90").Numbers(set)[2];
        Assert.Contains(
            FormattableString.Invariant($"reached {reached:0.0000}."),
            exact.Notes[0],
            StringComparison.Ordinal
        );
        Assert.Equal(Location.Median(sample), exact.Value);
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    public void ExactAndInterpolated_UpperQuartileOfDataSets_AgreeWithRAndPython(string set)
    {
        var sample = Sample.Of(Datasets.Values(set));

        Agree.Relative(
            ReferenceCase.Of("intervals-r", "quantile_75_exact_80").Numbers(set).AsSpan(..2),
            IntervalReference.Ends(QuantileInterval.Exact(sample, 0.75, 0.8)),
            0
        );
        Agree.Relative(
            ReferenceCase.Of("intervals-scipy", "quantile_75_interpolated_80").Numbers(set),
            IntervalReference.Ends(QuantileInterval.Interpolated(sample, 0.75, 0.8)),
            1e-12
        );
    }

    [Fact]
    public void Exact_MedianOfSixToMany_TakesTheRanksOfTheTable()
    {
        var reference = ReferenceCase.Of("critical-values", "cv-median-limits");
        double[] levels = reference.Numbers("input", "confidence_at_least");
        double[] counts = reference.Numbers("input", "n");
        for (int i = 0; i < counts.Length; i++)
        {
            var sample = Sample.Of([.. Enumerable.Range(1, (int)counts[i]).Select(rank => (double)rank)]);
            for (int j = 0; j < levels.Length; j++)
            {
                double[]? row = reference.NumbersOrNull("expected", "rows_lower_rank_upper_rank_coverage", i, j);
                if (row is null)
                {
                    Assert.Throws<ArgumentException>(() => QuantileInterval.Exact(sample, 0.5, levels[j]));
                    continue;
                }

                Estimate median = QuantileInterval.Exact(sample, 0.5, levels[j]);
                Assert.Equal(row[..2], IntervalReference.Ends(median));
                Assert.Contains(
                    FormattableString.Invariant($"reached {row[2]:0.0000}."),
                    median.Notes[0],
                    StringComparison.Ordinal
                );
            }
        }
    }

    [Theory]
    [InlineData(0.5, 0.95, 6)]
    [InlineData(0.5, 0.99, 8)]
    [InlineData(0.99, 0.95, 368)]
    public void Exact_TooFewValues_SaysHowManyWouldDo(double probability, double confidence, int needed)
    {
        // By hand: the least n with p^n, or (1 − p)^n, of half of what the confidence leaves or less.
        double[] values = [.. Enumerable.Range(1, needed).Select(i => (double)i)];
        var refusal = Assert.Throws<ArgumentException>(() =>
            QuantileInterval.Exact(Sample.Of(values.AsSpan(1)), probability, confidence)
        );

        Assert.Equal("sample", refusal.ParamName);
        Assert.StartsWith(
            FormattableString.Invariant($"Count of values must be at least {needed} for the quantile at {probability}"),
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.NotNull(QuantileInterval.Exact(Sample.Of(values), probability, confidence).Interval);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Both_MirroredAndScaled_FollowTheData(Dyadic data)
    {
        double[] values = [.. data.Values, -100, -90, -80, 80, 90, 100, 110];
        double[] mirrored = [.. values.Select(value => -2 * value)];
        foreach (
            Func<Sample, double, double, Estimate> of in new Func<Sample, double, double, Estimate>[]
            {
                QuantileInterval.Exact,
                QuantileInterval.Interpolated,
            }
        )
        {
            Estimate before = of(Sample.Of(values), 0.4, 0.9);
            Estimate after = of(Sample.Of(mirrored), 0.6, 0.9);

            Assert.Equal(-2 * before.Interval!.Upper, after.Interval!.Lower, 1e-9);
            Assert.Equal(-2 * before.Interval.Lower, after.Interval.Upper, 1e-9);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Interpolated_AnyValues_LiesWithinTheExactOne(Dyadic data)
    {
        double[] values = [.. data.Values, -100, -90, -80, 80, 90, 100, 110];
        Interval exact = QuantileInterval.Exact(Sample.Of(values)).Interval!;
        Interval inner = QuantileInterval.Interpolated(Sample.Of(values)).Interval!;

        Assert.InRange(inner.Lower, exact.Lower, exact.Upper);
        Assert.InRange(inner.Upper, inner.Lower, exact.Upper);
    }

    [Fact]
    public void Exact_AllEqual_HasNoIntervalAndSaysWhy()
    {
        Estimate median = QuantileInterval.Exact(Sample.Of(5, 5, 5, 5, 5, 5, 5));

        Assert.Null(median.Interval);
        Assert.Equal("Both ends are equal: the spread is not resolved, so no interval.", median.Notes[1]);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Exact_ProbabilityAtOrBeyondTheEnds_IsRefused(double probability) =>
        Assert.StartsWith(
            "Probability must be above 0 and below 1; was ",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => QuantileInterval.Exact(Sample.Of(1, 2), probability))
                .Message,
            StringComparison.Ordinal
        );
}
