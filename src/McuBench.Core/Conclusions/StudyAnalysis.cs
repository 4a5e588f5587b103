using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Conclusions;

/// <summary>Draws all conclusions from a study, one stage after another.</summary>
internal sealed class StudyAnalysis(
    Study study,
    ConclusionOptions options,
    IProgress<ConclusionProgress>? progress,
    CancellationToken cancellationToken
)
{
    private static readonly IReadOnlyList<SupplyReading> NoReadings = [];

    public StudyConclusions Run()
    {
        var allSeries = study.Series();
        var readings = study
            .Readings.GroupBy(r => r.Setup.Name, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, IReadOnlyList<SupplyReading> (g) => [.. g], StringComparer.Ordinal);
        var drifts = allSeries.ToDictionary(RunTimeFigures.KeyOf, Drift.Of, StringComparer.Ordinal);

        var (summaries, splits) = Summaries(allSeries, readings);
        var currents = Currents(summaries);
        var comparisons = Comparisons(summaries, drifts);
        Step(ConclusionStage.Rankings, 0, 1);
        var (rankings, suites) = RankingAnalysis.Of(summaries, comparisons, options);
        var scaled = Scaled(splits, comparisons);
        var review = ReviewOf(allSeries, summaries, comparisons, suites, splits, drifts);
        var bestClocks = splits.Where(s => ClockScaledComparison.IsPossible(s) && BestClock.IsPossible(s)).ToList();
        return new StudyConclusions(
            study,
            options,
            summaries,
            comparisons,
            rankings,
            suites,
            splits,
            scaled,
            currents,
            bestClocks.Select(split => BestClock.Of(split)),
            review
        );
    }

    /// <summary>Summaries from run times first; where these give a split by clock and waiting current was read, charge is
    /// put together of both, and the split then holds the finished summaries.</summary>
    private (List<SetupSummary> Summaries, List<ClockSplit> Splits) Summaries(
        IReadOnlyList<TrialSeries> allSeries,
        Dictionary<string, IReadOnlyList<SupplyReading>> readings
    )
    {
        var counted = allSeries.Where(s => s.Trials.Count > 0).ToList();
        var summaries = new List<SetupSummary>(counted.Count);
        for (var i = 0; i < counted.Count; i++)
        {
            Step(ConclusionStage.Summaries, i, counted.Count);
            summaries.Add(SetupSummary.Of(counted[i], ReadingsOf(counted[i]), fixedTime: null, options));
        }

        var groups = ClockGroup.Of(summaries.Where(s => s.Series.Timer.DerivedFromChangedClock != true)).ToList();
        var places = summaries
            .Select((s, i) => (Key: RunTimeFigures.KeyOf(s.Series), i))
            .ToDictionary(p => p.Key, p => p.i, StringComparer.Ordinal);
        var splits = new List<ClockSplit>(groups.Count);
        for (var g = 0; g < groups.Count; g++)
        {
            Step(ConclusionStage.Clocks, g, groups.Count);
            var split = ClockSplit.Of(groups[g], options);
            if (split is { FixedPart: FixedPart.Present, LackOfFit: null or { IsRefuted: false } })
            {
                var isChanged = false;
                foreach (var point in split.Points)
                {
                    var series = point.Summary.Series;
                    var own = ReadingsOf(series);
                    if (own.Any(r => r.Phase == SupplyPhase.Waiting && r.Workload == series.Workload))
                    {
                        summaries[places[RunTimeFigures.KeyOf(series)]] = SetupSummary.Of(
                            series,
                            own,
                            split.Line.Intercept,
                            options
                        );
                        isChanged = true;
                    }
                }

                if (isChanged)
                {
                    split = ClockSplit.Of(
                        groups[g].Select(s => summaries[places[RunTimeFigures.KeyOf(s.Series)]]),
                        options
                    );
                }
            }

            splits.Add(split);
        }

        return (summaries, splits);

        IReadOnlyList<SupplyReading> ReadingsOf(TrialSeries series) =>
            readings.GetValueOrDefault(series.Setup.Name, NoReadings);
    }

    private List<CurrentAgainstClock> Currents(List<SetupSummary> summaries)
    {
        // One line for each current: setups timed with two timers were read once.
        var read = summaries
            .Where(s => s.Workings.Running is not null)
            .DistinctBy(s => (s.Setup.Name, s.Workload.Name));
        return [.. ClockGroup.Of(read).Select(group => CurrentAgainstClock.Of(group, options))];
    }

    private List<SetupComparison> Comparisons(List<SetupSummary> summaries, Dictionary<string, Drift?> drifts)
    {
        var pairs = summaries
            .GroupBy(s => s.Workload.Name, StringComparer.Ordinal)
            .SelectMany(workload => PairsOf([.. workload]))
            .Where(p => !string.Equals(p.First.Setup.Name, p.Second.Setup.Name, StringComparison.Ordinal))
            .ToList();
        var comparisons = new List<SetupComparison>(pairs.Count);
        for (var i = 0; i < pairs.Count; i++)
        {
            Step(ConclusionStage.Comparisons, i, pairs.Count);
            var (first, second) = pairs[i];
            comparisons.Add(SetupComparison.Of(first, second, Drifts(first) || Drifts(second), options));
        }

        return comparisons;

        bool Drifts(SetupSummary summary) => drifts[RunTimeFigures.KeyOf(summary.Series)] is { IsFound: true };
    }

    private List<ClockScaledComparison> Scaled(List<ClockSplit> splits, List<SetupComparison> comparisons)
    {
        var known = comparisons.ToDictionary(c =>
            (RunTimeFigures.KeyOf(c.First.Series), RunTimeFigures.KeyOf(c.Second.Series))
        );
        return
        [
            .. splits
                .Where(ClockScaledComparison.IsPossible)
                .GroupBy(s => s.Workload.Name, StringComparer.Ordinal)
                .SelectMany(workload => PairsOf([.. workload]))
                .Where(p => !SharesSetups(p.First, p.Second))
                .Select(p => ClockScaledComparison.Of(p.First, p.Second, Compare, options)),
        ];

        SetupComparison Compare(SetupSummary first, SetupSummary second) =>
            known.TryGetValue((RunTimeFigures.KeyOf(first.Series), RunTimeFigures.KeyOf(second.Series)), out var same)
                ? same
                : SetupComparison.Of(first, second, options);

        // The same setups timed with two timers: comparing them compares the timers.
        static bool SharesSetups(ClockSplit first, ClockSplit second) =>
            first.Points.Any(a => second.Points.Any(b => a.Summary.Setup == b.Summary.Setup));
    }

    private Review ReviewOf(
        IReadOnlyList<TrialSeries> allSeries,
        List<SetupSummary> summaries,
        List<SetupComparison> comparisons,
        IReadOnlyList<SuiteComparison> suites,
        List<ClockSplit> splits,
        Dictionary<string, Drift?> drifts
    )
    {
        var findings = new List<Finding>();
        var summaryOf = summaries.ToDictionary(s => RunTimeFigures.KeyOf(s.Series), StringComparer.Ordinal);
        for (var i = 0; i < allSeries.Count; i++)
        {
            Step(ConclusionStage.Review, i, allSeries.Count);
            var key = RunTimeFigures.KeyOf(allSeries[i]);
            findings.AddRange(
                SeriesReview.Of(allSeries[i], summaryOf.GetValueOrDefault(key), drifts[key], options.Confidence)
            );
            findings.AddRange(PatternReview.Of(allSeries[i]));
        }

        var drifting = drifts
            .Where(d => d.Value is { IsFound: true })
            .Select(d => d.Key)
            .ToHashSet(StringComparer.Ordinal);
        foreach (var workload in comparisons.GroupBy(c => c.Workload.Name, StringComparer.Ordinal))
        {
            findings.AddRange(ComparisonReview.OfOrder(workload.Key, [.. workload], drifting));
        }

        findings.AddRange(splits.SelectMany(ComparisonReview.OfSplit));
        findings.AddRange(SuiteReview.Of(suites));
        findings.AddRange(DesignReview.Of(study, summaries));
        findings.AddRange(InstrumentReview.Of(study, summaries));
        findings.AddRange(SupplyReview.Of(study, summaries));
        findings.AddRange(MeterTimeReview.Of(study, summaries));
        return new Review(findings);
    }

    private void Step(ConclusionStage stage, int done, int total)
    {
        cancellationToken.ThrowIfCancellationRequested();
        progress?.Report(new ConclusionProgress(stage, done + 1, total));
    }

    private static IEnumerable<(T First, T Second)> PairsOf<T>(IReadOnlyList<T> items)
    {
        for (var i = 0; i < items.Count; i++)
        {
            for (var j = i + 1; j < items.Count; j++)
            {
                yield return (items[i], items[j]);
            }
        }
    }
}
