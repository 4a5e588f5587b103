using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Regression;

namespace McuBench.Core.Conclusions;

/// <summary>Patterns in the trials of one series that a mean hides: a first trial unlike the others, two clusters, a step
/// upwards, sessions or specimens that differ, a temperature that drifts.</summary>
internal static class PatternReview
{
    /// <summary>Each of these is looked for in every series, so each keeps to 1 %.</summary>
    private const double Level = 0.01;
    private const int FewestForWarmUp = 4;
    private const int FewestForClusters = 8;
    private const int FewestForStep = 8;
    private const int FewestForTemperature = 5;
    private const double KelvinsWorthSaying = 2;

    public static IEnumerable<Finding> Of(TrialSeries series)
    {
        var subject = $"{series.Setup.Name}, {series.Workload.Name}";
        return new[]
        {
            WarmUp(series, subject),
            Clusters(series, subject),
            StepUp(series, subject),
            TemperatureDrift(series, subject),
        }
            .OfType<Finding>()
            .Concat(Levels(series, subject));
    }

    /// <summary>The first trial of each session against the mean of those after it, pooled over sessions: a t test.</summary>
    private static Finding? WarmUp(TrialSeries series, string subject)
    {
        if (series.Trials.Any(t => t.Order is null))
        {
            return null;
        }

        var sessions = series
            .Trials.GroupBy(t => t.Session ?? "", StringComparer.Ordinal)
            .Where(g => g.Count() >= FewestForWarmUp)
            .Select(g => g.ToArray())
            .ToArray();
        if (sessions.Length == 0)
        {
            return null;
        }

        double[][] later = [.. sessions.Select(s => s.Skip(1).Select(t => Si.Seconds(t.RunTime)).ToArray())];
        var degrees = later.Sum(s => s.Length - 1);
        var step = Si.Seconds(series.Timer.Resolution);
        var variance = Math.Max(later.Sum(s => Scale.Variance(s) * (s.Length - 1)) / degrees, step * step / 6);
        var excess = sessions.Select((s, i) => Si.Seconds(s[0].RunTime) - Location.Mean(later[i])).Average();
        var ofExcess = variance * later.Sum(s => 1 + 1.0 / s.Length) / ((double)sessions.Length * sessions.Length);
        var t = excess / Math.Sqrt(ofExcess);
        var p = 2 * StudentT.Of(degrees).UpperTail(Math.Abs(t));
        return p >= Level
            ? null
            : new Finding(
                FindingKind.WarmUp,
                Severity.Caution,
                subject,
                $"The first trial {(sessions.Length == 1 ? "" : $"of each of {sessions.Length} sessions ")}takes {Said.Seconds(Math.Abs(excess))} {(excess > 0 ? "longer" : "less")} than those after it {(sessions.Length == 1 ? "" : "on average ")}(t = {Said.Number(t, 3)}, {Said.PValue(p)}). It was kept.",
                "Run the workload a few times before the first trial that counts, or state beforehand which runs are warm-up.",
                [new("first trial less the mean of the others", excess, "s"), new("t", t), new("p", p)],
                sessions.Select(s => s[0])
            );
    }

    /// <summary>The split of the sorted run times that leaves least spread inside its two parts, and how far the parts'
    /// means lie apart in standard deviations inside them.</summary>
    private static Finding? Clusters(TrialSeries series, string subject)
    {
        var n = series.Trials.Count;
        if (n < FewestForClusters)
        {
            return null;
        }

        Trial[] sorted = [.. series.Trials.OrderBy(t => Si.Seconds(t.RunTime))];
        double[] seconds = [.. sorted.Select(t => Si.Seconds(t.RunTime))];
        var smallest = Math.Max(3, n / 5);
        var best = BestSplit(seconds, smallest);
        var (low, high) = (Location.Mean(seconds.AsSpan(0, best.Cut)), Location.Mean(seconds.AsSpan(best.Cut)));
        var step = Si.Seconds(series.Timer.Resolution);
        var inside = Math.Sqrt(Math.Max(best.Inside / (n - 2), step * step / 6));
        var apart = (high - low) / inside;
        var gap = seconds[best.Cut] - seconds[best.Cut - 1];
        if (apart < ClusterCutoff(n) || gap < 2 * inside)
        {
            return null;
        }

        Trial[] fewer = best.Cut <= n - best.Cut ? sorted[..best.Cut] : sorted[best.Cut..];
        return new Finding(
            FindingKind.TwoClusters,
            Severity.Caution,
            subject,
            $"Run times lie in two clusters: {best.Cut} about {Said.Seconds(low)} and {n - best.Cut} about {Said.Seconds(high)}, {Said.Number(apart, 2)} standard deviations inside them apart. Their mean is a run time that no run takes.",
            "Find what differs between the two (a cache, an interrupt, a power state, a build) and make it a setup or a session of its own.",
            [
                new("trials in the lower cluster", best.Cut),
                new("trials in the upper cluster", n - best.Cut),
                new("mean of the lower", low, "s"),
                new("mean of the upper", high, "s"),
                new("distance in standard deviations inside", apart),
            ],
            fewer.OrderBy(t => t.Order ?? int.MaxValue)
        );
    }

    /// <summary>Where the sum of squares inside the two parts is least. O(n): about the overall mean, sums over the lower
    /// part give it for every cut.</summary>
    private static (int Cut, double Inside) BestSplit(double[] sorted, int smallest)
    {
        var n = sorted.Length;
        var mean = Location.Mean(sorted);
        var (cut, most) = (smallest, double.NegativeInfinity);
        double lower = 0;
        for (var k = 1; k <= n - smallest; k++)
        {
            lower += sorted[k - 1] - mean;

            // What the split takes out of the sum of squares: k·(n − k)/n times the squared distance of the means.
            var taken = lower * lower * n / ((double)k * (n - k));
            if (k >= smallest && taken > most)
            {
                (cut, most) = (k, taken);
            }
        }

        return (cut, Inside(sorted, cut));
    }

    /// <summary>Fitted to simulated evenly spread series, of which 1 % exceed it, and fewer of normal ones
    /// (tests/reference/scripts/cluster_cutoff.py). From 30 trials on the gap alone decides.</summary>
    private static double ClusterCutoff(int n) => 3.5 + 41.0 / n;

    /// <summary>The sum of squares about the means of the two parts.</summary>
    private static double Inside(double[] values, int cut) =>
        Squares(values.AsSpan(0, cut)) + Squares(values.AsSpan(cut));

    private static double Squares(ReadOnlySpan<double> values) =>
        values.Length < 2 ? 0 : Scale.Variance(values) * (values.Length - 1);

    /// <summary>Pettitt's test of one change of level (pettitt-1979) upwards, or run times that follow the
    /// temperature.</summary>
    private static Finding? StepUp(TrialSeries series, string subject)
    {
        var trials = series.Trials;
        var n = trials.Count;
        if (n < FewestForStep || trials.Any(t => t.Order is null))
        {
            return null;
        }

        double[] seconds = [.. trials.Select(t => Si.Seconds(t.RunTime))];
        var (cut, u) = LargestChange(seconds);
        var p = Math.Min(1, 2 * Math.Exp(-6.0 * u * u / ((double)n * n * n + (double)n * n)));
        var (before, after) = (Location.Mean(seconds.AsSpan(0, cut)), Location.Mean(seconds.AsSpan(cut)));
        var inside = Math.Sqrt(Inside(seconds, cut) / (n - 2));
        const double clear = 2;
        if (p >= Level || u >= 0 || after - before < clear * Math.Max(inside, Si.Seconds(series.Timer.Resolution)))
        {
            return null;
        }

        var warmer =
            MeanKelvins(trials.Take(cut)) is { } cool && MeanKelvins(trials.Skip(cut)) is { } warm
                ? FormattableString.Invariant(
                    $" The mean temperature is {Said.Number(warm - cool, 2)} K {(warm >= cool ? "above" : "below")} that before."
                )
                : "";
        return new Finding(
            FindingKind.Throttling,
            Severity.Caution,
            subject,
            $"From {Said.Trials([trials[cut]])} on runs take {Said.Percent(after / before - 1)} longer ({Said.Seconds(before)} before, {Said.Seconds(after)} after; Pettitt's U = {Said.Number(Math.Abs(u), 6)}, {Said.PValue(p)}): the clock may have been throttled.{warmer}",
            "Read the clock, or count cycles, while it runs; note temperatures; let the board rest between trials or report the slowed state as a setup of its own.",
            [
                new("mean before", before, "s"),
                new("mean after", after, "s"),
                new("Pettitt's U", Math.Abs(u)),
                new("p", p),
            ],
            trials.Skip(cut)
        );
    }

    /// <summary>Where the sum of signs between all before and all after is largest: after how many, and the signed sum, negative
    /// where those after are larger.</summary>
    private static (int Cut, double U) LargestChange(double[] values)
    {
        // The signs of one against all others add up to its rank, twice, less that of the middle.
        double[] ranks = Ranks.Of(values);
        var (cut, largest, sum) = (1, 0.0, 0.0);
        for (var k = 0; k < values.Length - 1; k++)
        {
            sum += 2 * ranks[k] - values.Length - 1;
            if (Math.Abs(sum) > Math.Abs(largest))
            {
                (cut, largest) = (k + 1, sum);
            }
        }

        return (cut, largest);
    }

    private static Finding? TemperatureDrift(TrialSeries series, string subject)
    {
        Trial[] noted = [.. series.Trials.Where(t => t.Order is not null && t.Temperature is not null)];
        if (noted.Length < FewestForTemperature)
        {
            return null;
        }

        double[] kelvins = [.. noted.Select(t => Si.Kelvins(t.Temperature!.Value))];
        var trend = Trend.MannKendall(Sample.Of(kelvins));
        double[] places = [.. Enumerable.Range(1, kelvins.Length).Select(i => (double)i)];
        var change = StraightLine.Fit(places, kelvins).Slope * (kelvins.Length - 1);
        return trend.PValue >= Level || Math.Abs(change) < KelvinsWorthSaying
            ? null
            : new Finding(
                FindingKind.TemperatureDrift,
                Severity.Note,
                subject,
                $"The temperature {(change > 0 ? "rises" : "falls")} by {Said.Number(Math.Abs(change), 2)} K over the trials (Mann–Kendall S = {Said.Number(trend.S, 6)}, {Said.PValue(trend.PValue)}); oscillators and currents move with it.",
                "Let the board reach its working temperature first, and mix the order of setups.",
                [new("change over the trials", change, "K"), new("Mann–Kendall S", trend.S), new("p", trend.PValue)],
                noted
            );
    }

    private static IEnumerable<Finding> Levels(TrialSeries series, string subject)
    {
        if (Differ(series, t => t.Session, "session", FindingKind.SessionsDiffer, subject) is { } sessions)
        {
            yield return sessions;
        }

        if (Differ(series, t => t.Specimen, "specimen", FindingKind.SpecimensDiffer, subject) is { } specimens)
        {
            yield return specimens;
        }

        if (Differ(series, t => t.Build, "build", FindingKind.BuildsDiffer, subject) is { } builds)
        {
            yield return builds;
        }
    }

    /// <summary>Whether the means of groups differ by more than the scatter inside them makes: one-way F test.</summary>
    private static Finding? Differ(
        TrialSeries series,
        Func<Trial, string?> by,
        string what,
        FindingKind kind,
        string subject
    )
    {
        var groups = series
            .Trials.Where(t => by(t) is not null)
            .GroupBy(t => by(t)!, StringComparer.Ordinal)
            .Select(g => (g.Key, Seconds: g.Select(t => Si.Seconds(t.RunTime)).ToArray()))
            .ToArray();
        var n = groups.Sum(g => g.Seconds.Length);
        if (groups.Length < 2 || n - groups.Length < 2)
        {
            return null;
        }

        var mean = groups.Sum(g => g.Seconds.Sum()) / n;
        var step = Si.Seconds(series.Timer.Resolution);
        var inside = Math.Max(
            groups.Where(g => g.Seconds.Length > 1).Sum(g => Scale.Variance(g.Seconds) * (g.Seconds.Length - 1))
                / (n - groups.Length),
            step * step / 6
        );
        var between =
            groups.Sum(g => g.Seconds.Length * Math.Pow(Location.Mean(g.Seconds) - mean, 2)) / (groups.Length - 1);
        var f = between / inside;
        var p = FisherF.Of(groups.Length - 1, n - groups.Length).UpperTail(f);
        if (p >= Level)
        {
            return null;
        }

        var ordered = groups.Select(g => (g.Key, Mean: Location.Mean(g.Seconds))).OrderBy(g => g.Mean).ToArray();
        var (least, most) = (ordered[0], ordered[^1]);
        return new Finding(
            kind,
            Severity.Caution,
            subject,
            $"Run times differ between {groups.Length} {what}s by more than they scatter inside them: from {Said.Seconds(least.Mean)} ({what} {least.Key}) to {Said.Seconds(most.Mean)} ({what} {most.Key}), {Said.Percent(most.Mean / least.Mean - 1)}; F = {Said.Number(f)}, {Said.PValue(p)}.",
            $"Trials of one {what} are not independent of one another: what is claimed beyond these {what}s needs more {what}s, not more trials.",
            [
                new($"{what}s", groups.Length),
                new("least mean", least.Mean, "s"),
                new("greatest mean", most.Mean, "s"),
                new("F", f),
                new("p", p),
            ],
            []
        );
    }

    private static double? MeanKelvins(IEnumerable<Trial> trials)
    {
        double[] kelvins =
        [
            .. trials.Where(t => t.Temperature is not null).Select(t => Si.Kelvins(t.Temperature!.Value)),
        ];
        return kelvins.Length == 0 ? null : Location.Mean(kelvins);
    }
}
