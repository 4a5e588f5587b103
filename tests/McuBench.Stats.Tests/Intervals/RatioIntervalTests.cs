using FsCheck.Xunit;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class RatioIntervalTests
{
    [Theory]
    [InlineData("ties", "outliers")]
    [InlineData("triple", "pair")]
    [InlineData("skewed", "triple")]
    [InlineData("odd", "offset")]
    public void WelchOnLogs_DataSets_AgreeWithRAndSciPy(string above, string below)
    {
        Estimate ratio = RatioInterval.WelchOnLogs(
            Sample.Of(Datasets.Values(above)),
            Sample.Of(Datasets.Values(below)),
            0.9
        );
        double[] actual = [ratio.Value, ratio.DegreesOfFreedom!.Value, ratio.Interval!.Lower, ratio.Interval.Upper];
        string pair = $"{above}/{below}";

        // Logarithms of the offset data agree in eight digits with one another, which costs R and SciPy as many.
        Agree.Relative(ReferenceCase.Of("tmeans-r", "ratio_df_low_high_90").Numbers(pair), actual, 1e-12);
        Agree.Relative(ReferenceCase.Of("tmeans-scipy", "ratio_df_low_high_90").Numbers(pair), actual, 1e-8);
        Assert.Equal("ratio of geometric means, Welch t on logarithms", ratio.Method);
    }

    [Fact]
    public void WelchOnLogs_OneValueOnASide_HasNoIntervalAndSaysWhy()
    {
        Estimate ratio = RatioInterval.WelchOnLogs(Sample.Of(3), Sample.Of(1, 4));

        Assert.Equal(1.5, ratio.Value, 1e-15);
        Assert.Null(ratio.Interval);
        Assert.Equal("One value shows no spread: no interval.", Assert.Single(ratio.Notes));
    }

    [Fact]
    public void WelchOnLogs_NoSpreadOnEitherSide_HasNoIntervalAndSaysWhy()
    {
        Estimate ratio = RatioInterval.WelchOnLogs(Sample.Of(3, 3), Sample.Of(2, 2, 2));

        Assert.Equal(1.5, ratio.Value, 1e-15);
        Assert.Null(ratio.Interval);
        Assert.Equal("All values are equal: the spread is not resolved, so no interval.", Assert.Single(ratio.Notes));
    }

    [Fact]
    public void WelchOnLogs_OneSideWithoutSpread_TakesTheOthersDegreesOfFreedom() =>
        Assert.Equal(
            2,
            RatioInterval.WelchOnLogs(Sample.Of(3, 3), Sample.Of(2, 2.5, 3)).DegreesOfFreedom!.Value,
            1e-12
        );

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    public void WelchOnLogs_ValueNotAboveZero_IsRefusedWithItsIndex(double value)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            RatioInterval.WelchOnLogs(Sample.Of(1, 2), Sample.Of(1, value))
        );

        Assert.Equal("denominator", refusal.ParamName);
        Assert.StartsWith(
            FormattableString.Invariant($"Value at index 1 must be a finite number above 0; was {value}."),
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void WelchOnLogs_Swapped_GivesTheReciprocal(Dyadic a, Dyadic b)
    {
        var first = Sample.Of(a.Map(value => value + 100));
        var second = Sample.Of(b.Map(value => value + 75));
        Estimate ratio = RatioInterval.WelchOnLogs(first, second);
        Estimate swapped = RatioInterval.WelchOnLogs(second, first);

        Agree.Relative(1 / ratio.Value, swapped.Value, 1e-14);
        Assert.Equal(ratio.Interval is null, swapped.Interval is null);
        if (ratio.Interval is { } interval)
        {
            Agree.Relative(1 / interval.Upper, swapped.Interval!.Lower, 1e-9);
            Assert.True(interval.Contains(ratio.Value));
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void WelchOnLogs_BothInAnotherUnit_StaysTheSame(Dyadic a, Dyadic b)
    {
        double[] first = a.Map(value => value + 100);
        double[] second = b.Map(value => value + 75);
        Estimate seconds = RatioInterval.WelchOnLogs(Sample.Of(first), Sample.Of(second));
        Estimate milliseconds = RatioInterval.WelchOnLogs(
            Sample.Of([.. first.Select(value => 1000 * value)]),
            Sample.Of([.. second.Select(value => 1000 * value)])
        );

        Agree.Relative(seconds.Value, milliseconds.Value, 1e-14);
        Assert.Equal(seconds.Interval is null, milliseconds.Interval is null);
        if (seconds.Interval is { } interval)
        {
            Agree.Relative(interval.Lower, milliseconds.Interval!.Lower, 1e-9);
            Agree.Relative(interval.Upper, milliseconds.Interval.Upper, 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(IntervalReference.Pairs), MemberType = typeof(IntervalReference))]
    public void FiellerAndMedians_DataSets_AgreeWithRAndSciPy(string a, string b)
    {
        var above = Sample.Of(Datasets.Values(a));
        var below = Sample.Of(Datasets.Values(b));
        Estimate separate = RatioInterval.Fieller(above, below, 0.9);
        Estimate equal = RatioInterval.Fieller(above, below, 0.9, VarianceAssumption.Equal);
        Estimate medians = RatioInterval.Medians(above, below, 0.9);

        // R's limits are roots of a test statistic, found to about ten digits.
        IntervalReference.AgreeWithBoth(
            "fieller_separate_ratio_df_low_high_90",
            $"{a}/{b}",
            [separate.Value, separate.DegreesOfFreedom!.Value, .. IntervalReference.Ends(separate)],
            1e-10
        );
        IntervalReference.AgreeWithBoth(
            "fieller_equal_ratio_df_low_high_90",
            $"{a}/{b}",
            [equal.Value, equal.DegreesOfFreedom!.Value, .. IntervalReference.Ends(equal)],
            1e-10
        );
        IntervalReference.AgreeWithBoth(
            "medians_ratio_low_high_90",
            $"{a}/{b}",
            [medians.Value, .. IntervalReference.Ends(medians)],
            1e-12
        );
    }

    [Fact]
    public void Fieller_EnzymeActivity_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-fieller-asat");
        Estimate ratio = RatioInterval.Fieller(
            Sample.Of(reference.Numbers("input", "treatment")),
            Sample.Of(reference.Numbers("input", "control")),
            0.95,
            VarianceAssumption.Equal
        );

        Agree.Relative(reference.Number("expected", "ratio"), ratio.Value, 1e-11);
        Agree.Relative(reference.Number("expected", "lower"), ratio.Interval!.Lower, 1e-11);
        Agree.Relative(reference.Number("expected", "upper"), ratio.Interval.Upper, 1e-11);
    }

    [Fact]
    public void Fieller_MeanBelowNearZero_HasNoBoundsAndSaysWhy()
    {
        Estimate ratio = RatioInterval.Fieller(Sample.Of(1, 2, 3), Sample.Of(-5, 1, 6));

        Assert.Equal(3, ratio.Value, 1e-14);
        Assert.Null(ratio.Interval);
        Assert.NotNull(ratio.StandardError);
        Assert.Contains("not resolved from 0", Assert.Single(ratio.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Fieller_DegenerateData_HasNoIntervalOrIsRefused()
    {
        Assert.Null(RatioInterval.Fieller(Sample.Of(2), Sample.Of(1, 4)).Interval);
        Assert.Null(RatioInterval.Fieller(Sample.Of(2, 2), Sample.Of(4, 4)).Interval);
        Assert.Null(RatioInterval.Fieller(Sample.Of(0, 0), Sample.Of(1, 1.1, 1.2)).Interval);
        Assert.StartsWith(
            "Mean below the line must be other than 0; was 0.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => RatioInterval.Fieller(Sample.Of(1, 2), Sample.Of(-1, 1)))
                .Message,
            StringComparison.Ordinal
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Medians_Swapped_GivesTheReciprocal(Dyadic a, Dyadic b)
    {
        var first = Sample.Of(a.Map(value => value + 100));
        var second = Sample.Of(b.Map(value => value + 75));
        Estimate ratio = RatioInterval.Medians(first, second);
        Estimate swapped = RatioInterval.Medians(second, first);

        Agree.Relative(1 / ratio.Value, swapped.Value, 1e-15);
        Assert.Equal(ratio.Interval is null, swapped.Interval is null);
        if (ratio.Interval is { } interval)
        {
            Agree.Relative(1 / interval.Upper, swapped.Interval!.Lower, 1e-13);
        }
    }

    [Fact]
    public void Medians_MiddleEqualOnBothSides_HasNoIntervalAndSaysWhy()
    {
        Estimate ratio = RatioInterval.Medians(Sample.Of(3, 3, 3, 3), Sample.Of(2, 2, 2));

        Assert.Null(ratio.Interval);
        Assert.Equal(
            "The values about both medians are equal: the spread is not resolved, so no interval.",
            Assert.Single(ratio.Notes)
        );
    }
}
