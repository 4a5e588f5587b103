using McuBench.Core.Conclusions;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class SerialCorrelationTests
{
    private static readonly double[] InRuns = [2.0, 2.0, 2.1, 2.1, 2.2, 2.2, 2.1, 2.1, 2.0, 2.0];

    [Fact]
    public void Of_RunsOfAlikeTrials_CorrectsTheLagForItsBias()
    {
        // Deviations −.08, −.08, .02, .02, .12, .12, .02, .02, −.08, −.08: squares sum to 0.056, products of neighbours
        // to 0.0328; (10·0.0328/0.056 + 1)/6 = 1.143, which is cut to 0.7.
        Assert.Equal(0.7, SerialCorrelation.Of(Trials(InRuns))!.Lag, 1e-12);
    }

    [Fact]
    public void Of_TrialsInTurns_AreNotCorrelatedBelowNothing() =>
        Assert.Equal(0, SerialCorrelation.Of(Trials([.. Enumerable.Range(0, 12).Select(i => 2 + i % 2 * 0.1)]))!.Lag);

    [Fact]
    public void Of_FewTrialsUnknownOrderOrEqualRunTimes_IsNotKnown()
    {
        Assert.Null(SerialCorrelation.Of(Trials(InRuns[..9])));
        Assert.Null(SerialCorrelation.Of([.. Trials(InRuns).Select(t => t with { Order = null })]));
        Assert.Null(SerialCorrelation.Of(Trials([.. Enumerable.Repeat(2.0, 10)])));
    }

    [Theory]
    [InlineData(10, 0.5)]
    [InlineData(30, 0.7)]
    [InlineData(12, 0)]
    public void VarianceFactor_IsWhatTheSumOverAllPairsGives(int n, double lag)
    {
        // The variance of the mean, and the expectation of s², from the correlation ρ^|i − j| of every pair.
        double pairs = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                pairs += Math.Pow(lag, Math.Abs(i - j));
            }
        }

        var ofMean = pairs / n / n;
        var ofReadings = (n - n * ofMean) / (n - 1);

        Assert.Equal(ofMean / (ofReadings / n), new SerialCorrelation(lag, n).VarianceFactor, 1e-12);
    }

    [Fact]
    public void Pooled_TwoSeries_ShareTheirCorrelation()
    {
        var (first, second) = SerialCorrelation.Pooled(
            Trials(InRuns),
            Trials([.. Enumerable.Range(0, 20).Select(i => 2 + i % 2 * 0.1)])
        );

        Assert.Equal(first!.Lag, second!.Lag);
        Assert.Equal((10, 20), (first.Count, second.Count));
    }

    [Fact]
    public void Compare_TenTrialsInRuns_IsWiderThanAsIndependentAndSaysSo()
    {
        var setup = Bench.At(Bench.Marl, 100);
        var ordered = SetupSummary.Of(new TrialSeries(Trials(InRuns))).RunTime;
        var unordered = SetupSummary.Of(new TrialSeries(Trials(InRuns).Select(t => t with { Order = null }))).RunTime;

        Assert.True(ordered.StandardUncertainty!.Value > 1.5 * unordered.StandardUncertainty!.Value);
        Assert.EndsWith("variance for a lag-1 correlation of 0.7", ordered.Method, StringComparison.Ordinal);
        Assert.EndsWith(
            "trials taken as independent, since their order isn't known",
            unordered.Method,
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "since fewer than 10 don't show otherwise",
            SetupSummary.Of(Bench.Series(setup, Bench.Fine, 2.0, 2.1, 2.2)).RunTime.Method,
            StringComparison.Ordinal
        );
    }

    private static Trial[] Trials(double[] seconds) =>
        [
            .. seconds.Select(
                (s, i) =>
                    new Trial(Bench.At(Bench.Marl, 100), Bench.Frames, Bench.Fine, Duration.FromSeconds(s))
                    {
                        Order = i + 1,
                    }
            ),
        ];
}
