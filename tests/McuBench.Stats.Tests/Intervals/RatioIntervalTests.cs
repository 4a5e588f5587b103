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
}
