using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;

namespace McuBench.Core.Conclusions;

/// <summary>What is wrong or weak in the trials of one series.</summary>
internal static class SeriesReview
{
    private const int FewestForScatter = 3;
    private const int FewestForComfort = 5;
    private const int FewestForOutliers = 5;
    private const double ResolvedTo = 0.01;
    private const double MadToSigma = 1.4826;

    public static IEnumerable<Finding> Of(TrialSeries series, SetupSummary? summary, Drift? drift, double confidence)
    {
        var subject = $"{series.Setup.Name}, {series.Workload.Name}";
        if (series.NotResults.Count > 0)
        {
            yield return WrongOutput(series, subject);
        }

        if (summary is null)
        {
            yield break;
        }

        var findings = new[]
        {
            TooFew(series, subject),
            TooShort(series, summary, subject),
            CoarseTimer(series, summary, subject, confidence),
            Outliers(series, summary, subject, confidence),
            Drifting(series, summary, drift, subject),
        };
        foreach (var finding in findings.OfType<Finding>())
        {
            yield return finding;
        }
    }

    private static Finding WrongOutput(TrialSeries series, string subject) =>
        new(
            FindingKind.ChecksumMismatch,
            Severity.Fault,
            subject,
            $"{Said.Count(series.NotResults.Count, "trial")} of {series.NotResults.Count + series.Trials.Count} put out something else than a right run does ({Said.Trials(series.NotResults)}); left out.",
            "Find out why before believing the other trials: a run that computes something else may be faster or slower.",
            [
                new("trials with wrong output", series.NotResults.Count),
                new("trials", series.NotResults.Count + series.Trials.Count),
            ],
            series.NotResults
        );

    private static Finding? TooFew(TrialSeries series, string subject)
    {
        var n = series.Trials.Count;
        return n >= FewestForComfort
            ? null
            : new Finding(
                FindingKind.TooFewTrials,
                n < FewestForScatter ? Severity.Fault : Severity.Caution,
                subject,
                n == 1
                    ? "One trial: its scatter is unknown, so there is no interval and no verdict."
                    : $"{n} trials: their scatter is poorly known, which makes the interval {Said.Number(WidthFactor(n), 2)} times as wide as that of as many trials with a known scatter.",
                $"Take at least {FewestForComfort} trials; 10 make drift and outliers visible.",
                [new("trials", n)],
                series.Trials
            );
    }

    /// <summary>Student's t at n − 1 degrees of freedom against the normal distribution's 1.96.</summary>
    private static double WidthFactor(int n) =>
        Stats.Distributions.StudentT.Of(n - 1).UpperQuantile(0.025)
        / Stats.Distributions.Normal.Standard.UpperQuantile(0.025);

    private static Finding? TooShort(TrialSeries series, SetupSummary summary, string subject)
    {
        var step = Si.Seconds(series.Timer.Resolution);
        var runTime = summary.Workings.RunTime.Value;
        if (step <= ResolvedTo * runTime)
        {
            return null;
        }

        var enough = step / ResolvedTo;
        var items = Math.Ceiling(series.Workload.WorkItemsPerRun * enough / runTime);
        return new Finding(
            FindingKind.RunTooShortForTimer,
            Severity.Caution,
            subject,
            $"A run of {Said.Seconds(runTime)} against a timer step of {Said.Seconds(step)}: one step is {Said.Percent(step / runTime)} of the run.",
            $"Lengthen the run to at least {Said.Seconds(enough)} ({Said.Number(items, 4)} {series.Workload.ItemName}s a run), or use a finer timer.",
            [
                new("run time", runTime, "s"),
                new("timer step", step, "s"),
                new("step as a share of the run", step / runTime),
                new("run time that resolves 1 %", enough, "s"),
            ],
            []
        );
    }

    private static Finding? CoarseTimer(TrialSeries series, SetupSummary summary, string subject, double confidence)
    {
        var runTime = summary.Workings.RunTime;
        var n = series.Trials.Count;
        var ofStep = runTime.Contributions.FirstOrDefault(c =>
            c.Source.Key.StartsWith(ReadingMean.StepKey, StringComparison.Ordinal)
        );
        var variance = runTime.StandardUncertainty * runTime.StandardUncertainty;
        const double shareWorthSaying = 0.1;
        if (n < 2 || ofStep.Source is null || ofStep.Amount * ofStep.Amount < shareWorthSaying * variance)
        {
            return null;
        }

        double[] seconds = [.. series.RunTimes.Select(t => Si.Seconds(t))];
        var scatter = Scale.StandardDeviation(seconds);
        var step = Si.Seconds(series.Timer.Resolution);
        var half = CoverageReach.Of(runTime, (1 - confidence) / 2);
        var scatterAlone = new Measure(confidence, n, "").CoverageFactor(n - 1) * scatter / Math.Sqrt(n);
        var figures = new List<FindingFigure>
        {
            new("timer step", step, "s"),
            new("standard deviation of readings", scatter, "s"),
            new("half-width of the interval", half, "s"),
            new("half-width from scatter alone", scatterAlone, "s"),
        };
        var cost =
            scatter == 0
                ? $"All {n} readings are equal at a timer step of {Said.Seconds(step)}, which doesn't make them exact: the interval of ±{Said.Seconds(half)} comes from the step alone."
                : $"Readings scatter by {Said.Seconds(scatter)} at a timer step of {Said.Seconds(step)}, too little to take the step out by averaging: the interval is ±{Said.Seconds(half)}, where scatter alone would pretend ±{Said.Seconds(scatterAlone)}.";
        return new Finding(
            FindingKind.CoarseTimer,
            half > ResolvedTo * runTime.Value ? Severity.Caution : Severity.Note,
            subject,
            cost,
            ofStep.Source.AveragesDown
                ? "More trials, a finer timer or a longer run would narrow it."
                : "More trials would not narrow it; a finer timer or a longer run would.",
            figures,
            []
        );
    }

    /// <summary>Modified z-scores (iglewicz-hoaglin-1993) from the median and the median absolute deviation, which in turn
    /// is not taken as smaller than what the timer's step makes.</summary>
    private static Finding? Outliers(TrialSeries series, SetupSummary summary, string subject, double confidence)
    {
        var n = series.Trials.Count;
        if (n < FewestForOutliers)
        {
            return null;
        }

        double[] seconds = [.. series.RunTimes.Select(t => Si.Seconds(t))];
        var median = Location.Median(seconds);
        var mad = Location.Median([.. seconds.Select(s => Math.Abs(s - median))]);
        var step = Si.Seconds(series.Timer.Resolution);
        var ofStep =
            series.Timer.Reading is TimerReading.TickDifferenceRandomStart ? step / Math.Sqrt(6) : step / Math.Sqrt(12);
        var scale = Math.Max(MadToSigma * mad, ofStep);
        var cutoff = OutlierCutoff(n);
        var isFar = seconds.Select(s => Math.Abs(s - median) > cutoff * scale).ToArray();
        Trial[] far = [.. series.Trials.Where((_, i) => isFar[i])];
        if (far.Length == 0)
        {
            return null;
        }

        Trial[] near = [.. series.Trials.Where((_, i) => !isFar[i])];
        var without = new Measure(confidence, near.Length, "").Of(
            RunTimeFigures.RunTime(series, near),
            value => value,
            Ends.Positive
        );
        var with = summary.RunTime;
        return new Finding(
            FindingKind.Outliers,
            Severity.Caution,
            subject,
            $"{Said.Count(far.Length, "run time")} of {n} {(far.Length == 1 ? "lies" : "lie")} more than {Said.Number(cutoff, 2)} robust standard deviations from the median of {Said.Seconds(median)} ({Said.Trials(far)}). Kept: mean {Said.Seconds(Si.Seconds(with.Value))}{Reach(with.Lower is { } l ? Si.Seconds(l) : null, with.Upper is { } u ? Si.Seconds(u) : null)}; without: {Said.Seconds(without.Value)}{Reach(without.Lower, without.Upper)}.",
            "Look for the cause (an interrupt, a radio, a warm-up run). Nothing was dropped; drop a trial only for a reason that was known apart from its figure.",
            [
                new("outliers", far.Length),
                new("median", median, "s"),
                new("robust standard deviation", scale, "s"),
                new("mean with all", Si.Seconds(with.Value), "s"),
                new("mean without", without.Value, "s"),
            ],
            far
        );

        static string Reach(double? lower, double? upper) =>
            lower is { } from && upper is { } to ? $" ({Said.Seconds(from)} to {Said.Seconds(to)})" : "";
    }

    /// <summary>Fitted to simulated normal series of 5 to 300 trials, of which 1 to 3 % exceed it somewhere. The usual
    /// 3.5 is exceeded in 13 to 20 % of clean series of 5 to 10 trials.</summary>
    private static double OutlierCutoff(int n) => 4 + 15.0 / n + 100.0 / ((double)n * n);

    private static Finding? Drifting(TrialSeries series, SetupSummary summary, Drift? drift, string subject)
    {
        if (drift is not { IsFound: true })
        {
            return null;
        }

        var share = drift.SlopePerTrial / summary.Workings.RunTime.Value;
        const double strong = 0.01;
        var interval = drift.SlopeInterval is { } i
            ? $", 95 % interval {Said.Seconds(i.Lower)} to {Said.Seconds(i.Upper)}"
            : "";
        List<FindingFigure> figures =
        [
            new("Mann–Kendall S", drift.Trend.S),
            new("p", drift.Trend.PValue),
            new("slope per trial", drift.SlopePerTrial, "s"),
            new("slope per trial, as a share of the run time", share),
        ];
        if (drift.SlopeInterval is { } ends)
        {
            figures.Add(new("lower end of the slope", ends.Lower, "s"));
            figures.Add(new("upper end of the slope", ends.Upper, "s"));
        }

        return new Finding(
            FindingKind.Drift,
            drift.Trend.PValue < strong ? Severity.Caution : Severity.Note,
            subject,
            $"Run times {(drift.Trend.S > 0 ? "rise" : "fall")} over the order of trials: by {Said.Seconds(Math.Abs(drift.SlopePerTrial))} ({Said.Percent(Math.Abs(share))}) a trial{interval}; Mann–Kendall S = {Said.Number(drift.Trend.S, 6)}, {Said.PValue(drift.Trend.PValue)}{(drift.Trend.IsExact ? "" : " (normal approximation)")}. The mean is that of the trials taken; its interval says little of what trials at another time would take.",
            "Run setups in random order or in turns, let the board warm up first, and note temperatures.",
            figures,
            series.Trials
        );
    }
}
