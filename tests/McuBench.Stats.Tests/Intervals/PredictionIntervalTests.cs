using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class PredictionIntervalTests
{
    [Theory]
    [MemberData(nameof(IntervalReference.Sets), MemberType = typeof(IntervalReference))]
    public void Normal_DataSets_AgreesWithRAndSciPy(string set)
    {
        Estimate next = PredictionInterval.Normal(Sample.Of(Datasets.Values(set)), 0.9);

        IntervalReference.AgreeWithBoth("prediction_90", set, [next.Value, .. IntervalReference.Ends(next)], 1e-12);
    }

    [Fact]
    public void Normal_MeanOfManyFurtherValues_NearsTheIntervalOfTheMean()
    {
        var sample = Sample.Of(Datasets.Values("odd"));

        Agree.Relative(
            MeanInterval.StudentT(sample).StandardError!.Value,
            PredictionInterval.Normal(sample, 0.95, int.MaxValue).StandardError!.Value,
            1e-8
        );
    }

    [Theory]
    [InlineData(39, 1, 39)]
    [InlineData(40, 1, 40)]
    [InlineData(59, 1, 58)]
    [InlineData(79, 2, 78)]
    [InlineData(999, 25, 975)]
    public void DistributionFree_EnoughValues_TakesTheInnermostRanksThatWillDo(int count, int lower, int upper)
    {
        // By hand: the ranks' difference is the least whole number of 0.95 (n + 1) or more.
        double[] values = [.. Enumerable.Range(1, count).Select(i => (double)i)];
        Estimate next = PredictionInterval.DistributionFree(Sample.Of(values));

        Assert.Equal([lower, upper], IntervalReference.Ends(next));
        Assert.Contains($"Order statistics {lower} and {upper} of {count}", next.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void DistributionFree_TooFewValues_SaysHowManyWouldDo() =>
        Assert.StartsWith(
            "Count of values must be at least 39 for a distribution-free prediction at 95 %; was 38.",
            Assert
                .Throws<ArgumentException>(() => PredictionInterval.DistributionFree(Sample.Of(new double[38])))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Normal_NoSpread_HasNoInterval()
    {
        Assert.Null(PredictionInterval.Normal(Sample.Of(1)).Interval);
        Assert.Null(PredictionInterval.Normal(Sample.Of(1, 1)).Interval);
        Assert.Null(PredictionInterval.DistributionFree(Sample.Of(new double[50])).Interval);
    }

    [Fact]
    public void Normal_NoFurtherValue_IsRefused() =>
        Assert.Equal(
            "furtherValues",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => PredictionInterval.Normal(Sample.Of(1, 2), 0.95, 0))
                .ParamName
        );
}
