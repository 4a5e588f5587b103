using McuBench.Stats;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;
using McuBench.Stats.Regression;
using McuBench.Stats.Resampling;

namespace McuBench.Benchmarks.Ratios;

/// <summary>The rows of the table. To add one, add it here and under the same key in <c>ratios.R</c> or <c>ratios.py</c>.</summary>
internal static class RatioTasks
{
    private const string R = "R";
    private const string Python = "Python";

    /// <summary>R stops its searches early: for a shift and its ends, and for the largest likelihood.</summary>
    private const double SearchOfR = 1e-3;

    private static readonly double[] SevenProbabilities = [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99];
    private static readonly TwoSampleStatistic RatioOfMedians = TwoSampleStatistic.RatioOf(Statistic.Median);

    internal static IReadOnlyList<RatioTask> Of(RatioData data)
    {
        double[] million = data.Million;
        double[] hundredThousand = million[..100_000];
        double[] x = data.X;
        double[] y = data.Y;
        int[] specimens = [.. Enumerable.Range(0, 1000).Select(i => i / 100)];
        int[] sessions = [.. Enumerable.Range(0, 1000).Select(i => i / 10)];
        return
        [
            new(
                "shift",
                "Hodges-Lehmann shift with its rank interval, n = m = 3,000",
                () => Shift(Sample.Of(x), Sample.Of(y)),
                R,
                60,
                SearchOfR
            ),
            new("theil-sen", "Theil-Sen line with interval, n = 3,000", () => TheilSen(data), Python, 60),
            new("qn", "Qn, n = 1e5", () => [Scale.Qn(hundredThousand)], R, 1),
            new("sn", "Sn, n = 1e5", () => [Scale.Sn(hundredThousand)], R, 1),
            new(
                "bca",
                "BCa interval of a ratio of medians, n = m = 30, 9,999 resamples",
                () => Ends(Bootstrap.Of(First(x), First(y), RatioOfMedians).Estimate),
                Python,
                8,
                null
            ),
            new("mean", "mean, n = 1e6 (compensated here, pairwise there)", () => [Location.Mean(million)], Python, 1),
            new("median", "median, n = 1e6", () => [Location.Median(million)], Python, 1.5),
            new("mad", "MAD, n = 1e6", () => [Scale.MedianAbsoluteDeviation(million)], Python, 2),
            new("quantiles", "7 quantiles, n = 1e6", () => SevenQuantiles(million), Python, 2),
            new(
                "mann-whitney",
                "exact Mann-Whitney test, n = m = 50, from cold",
                () => [TwoSample.MannWhitney(Fifty(x), Fifty(y)).PValue],
                R,
                1
            ),
            new(
                "signed-rank",
                "exact signed-rank test, n = 50, from cold",
                () => [Paired.SignedRank(Fifty(x), Fifty(y)).PValue],
                R,
                1
            ),
            new(
                "permutation",
                "exact permutation test of a mean difference, n = m = 10",
                () => [PermutationTest.MeanDifference(x.AsSpan(0, 10), y.AsSpan(0, 10)).PValue],
                R,
                1
            ),
            new("welch", "Welch t test, n = m = 30", () => [TwoSample.Welch(First(x), First(y)).PValue], R, 30),
            new("yuen", "Yuen t test, n = m = 30", () => [TwoSample.YuenWelch(First(x), First(y)).PValue], R, 30),
            new("t-quantile", "Student-t quantile, 10,000 different df, a call", QuantilesOfT, R, 1) { Calls = 10_000 },
            new("range-cdf", "studentized range, CDF", () => [StudentizedRange.Of(5, 20).Cdf(3.5)], R, 1),
            new(
                "range-quantile",
                "studentized range, quantile",
                () => [StudentizedRange.Of(5, 20).Quantile(0.95)],
                R,
                1,
                1e-6
            ),
            new(
                "nested",
                "nested variance components by REML, 1,000 trials",
                () =>
                    [.. NestedReml.Of(NestedData.Of(data.Nested, specimens, sessions)).Components.Select(c => c.Value)],
                R,
                20,
                SearchOfR
            ),
            new(
                "theil-sen-million",
                "Theil-Sen line with interval, n = 1e6",
                () => TheilSenOfMillion(million),
                null,
                0
            ),
            .. TenMillion(million),
        ];
    }

    /// <summary>What a million is too few for.</summary>
    private static IEnumerable<RatioTask> TenMillion(double[] million)
    {
        double[] values = [.. Enumerable.Range(0, 10).SelectMany(i => million.Select(v => v + i * 1e-3))];
        return
        [
            new("mean-ten", "mean, n = 1e7", () => [Location.Mean(values)], null, 0),
            new("variance-ten", "variance, n = 1e7", () => [Scale.Variance(values)], null, 0),
            new("median-ten", "median, n = 1e7", () => [Location.Median(values)], null, 0),
            new("quantiles-ten", "7 quantiles, n = 1e7", () => SevenQuantiles(values), null, 0),
            new("trimmed-ten", "trimmed mean, n = 1e7", () => [Location.TrimmedMean(values, 0.2)], null, 0),
            new("sn-ten", "Sn, n = 1e7", () => [Scale.Sn(values)], null, 0),
            new("qn-ten", "Qn, n = 1e7", () => [Scale.Qn(values)], null, 0),
            new("centre-ten", "Hodges-Lehmann centre, n = 1e7", () => [HodgesLehmann.Location(values)], null, 0),
            new("ranks-ten", "ranks, n = 1e7", () => [Ranks.Of(values)[0]], null, 0),
            new("biweight-ten", "biweight location, n = 1e7", () => [Biweight.Location(values)], null, 0),
        ];
    }

    private static double[] Shift(Sample first, Sample second)
    {
        Estimate shift = HodgesLehmannInterval.Shift(first, second);
        return [shift.Value, .. Ends(shift)];
    }

    private static Sample Fifty(double[] values) => Sample.Of(values.AsSpan(0, 50));

    private static Sample First(double[] values) => Sample.Of(values.AsSpan(0, 30));

    private static double[] Ends(Estimate estimate) =>
        estimate.Interval is { } ends
            ? [ends.Lower, ends.Upper]
            : throw new InvalidOperationException("There must be an interval.");

    private static double[] TheilSen(RatioData data)
    {
        var slope = RobustLine.TheilSen(data.T, data.Line).Slope;
        return [slope.Value, .. Ends(slope)];
    }

    private static double[] TheilSenOfMillion(double[] values)
    {
        double[] places = [.. Enumerable.Range(0, values.Length).Select(i => (double)i)];
        return Ends(RobustLine.TheilSen(places, values).Slope);
    }

    private static double[] SevenQuantiles(double[] values)
    {
        double[] results = new double[SevenProbabilities.Length];
        Quantiles.Of(values, SevenProbabilities, results);
        return results;
    }

    private static double[] QuantilesOfT()
    {
        double sum = 0;
        for (int i = 1; i <= 10_000; i++)
        {
            sum += StudentT.Of(i / 2.0).UpperQuantile(0.025);
        }

        return [sum];
    }
}
