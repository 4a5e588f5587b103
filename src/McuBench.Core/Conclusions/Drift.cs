using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Regression;

namespace McuBench.Core.Conclusions;

/// <summary>Whether run times rise or fall over the order of trials.</summary>
/// <param name="Trend">The test of a trend (Mann–Kendall).</param>
/// <param name="SlopePerTrial">The least-squares slope, in seconds a trial.</param>
/// <param name="SlopeInterval">Its 95 % interval; absent where it can't be had.</param>
internal sealed record Drift(TrendResult Trend, double SlopePerTrial, Interval? SlopeInterval)
{
    private const double Level = 0.05;
    private const int FewestTrials = 4;

    public bool IsFound => Trend.PValue < Level;

    /// <summary>The drift of a series, or null where it has fewer than four trials or their order isn't known.</summary>
    public static Drift? Of(TrialSeries series)
    {
        var trials = series.Trials;
        if (trials.Count < FewestTrials || trials.Any(t => t.Order is null))
        {
            return null;
        }

        double[] order = [.. trials.Select(t => (double)t.Order!.Value)];
        double[] seconds = [.. trials.Select(t => Si.Seconds(t.RunTime))];
        if (order.Distinct().Count() < order.Length)
        {
            return null;
        }

        // Places in the series, not in the study: what else was run in between doesn't dilute the slope.
        double[] places = [.. Enumerable.Range(1, order.Length).Select(i => (double)i)];
        var line = StraightLine.Fit(places, seconds);
        return new Drift(Stats.Hypotheses.Trend.MannKendall(Sample.Of(seconds)), line.Slope, line.IntervalOfSlope());
    }
}
