using System.Globalization;
using CompareBoards.Charts;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using UnitsNet;

namespace CompareBoards;

/// <summary>Draws the charts that conclusions allow, for each workload in turn.</summary>
public static class ChartSet
{
    /// <summary>The charts, in order and with distinct names; a chart that has nothing to show is left out.</summary>
    public static IEnumerable<Chart> Of(StudyConclusions conclusions)
    {
        ArgumentNullException.ThrowIfNull(conclusions);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (workload, chart) in Drawn(conclusions))
        {
            // Two workloads may differ in nothing that a file name can hold.
            var name = chart.Name;
            for (var i = 2; !names.Add(name); i++)
            {
                name = FormattableString.Invariant($"{chart.Name}-{i}");
            }

            yield return chart.Placed(name, workload.Name);
        }
    }

    private static IEnumerable<(Workload Workload, Chart Chart)> Drawn(StudyConclusions conclusions) =>
        conclusions.Study.Workloads.SelectMany(workload =>
            Drawn(conclusions, workload).Select(chart => (workload, chart))
        );

    private static IEnumerable<Chart> Drawn(StudyConclusions conclusions, Workload workload)
    {
        var interval = string.Create(
            CultureInfo.InvariantCulture,
            $"{Math.Round(100 * conclusions.Options.Confidence, 2)} % interval"
        );
        var study = conclusions.Study;
        var summaries = conclusions.Summaries.Where(summary => summary.Workload == workload).ToArray();
        var splits = conclusions.Splits.Where(split => split.Workload == workload).ToArray();
        var currents = conclusions.Currents.Where(line => line.Workload == workload).ToArray();
        var supplied = summaries.Where(summary => summary.Supply is not null).ToArray();
        if (summaries.Length > 0)
        {
            yield return RunTimeChart.Draw(workload.Name, [.. RunTimes(summaries, study)], interval);
        }

        var ratios = Ratios(summaries, conclusions).ToArray();
        if (ratios.Length > 0)
        {
            yield return RatioChart.Draw(workload.Name, ratios, conclusions.Options.Margin?.DecimalFractions, interval);
        }

        if (splits.Length > 0)
        {
            yield return ClockChart.Draw(workload.Name, [.. Lines(splits, study)], interval);
        }

        if (supplied.Length > 0)
        {
            var baseline = Baseline(supplied);
            yield return ChargeChart.Draw(workload.Name, [.. Charges(supplied, baseline, study)], baseline, interval);
        }

        if (supplied.Length > 1)
        {
            yield return TradeChart.Draw(workload.Name, [.. Trades(supplied, study)], interval);
        }

        if (currents.Length > 0)
        {
            yield return CurrentChart.Draw(workload.Name, [.. Lines(currents, study)], interval);
        }

        var best = conclusions.BestClocks.Where(clock => clock.Split.Workload == workload).ToArray();
        if (best.Length > 0)
        {
            yield return BestClockChart.Draw(workload.Name, [.. Curves(best, study)], interval);
        }

        var ordered = summaries.Where(IsInOrder).ToArray();
        if (ordered.Length > 0)
        {
            yield return OrderChart.Draw(workload.Name, [.. Orders(ordered, conclusions)]);
        }
    }

    /// <summary>The shortest first.</summary>
    private static IEnumerable<RunTimeRow> RunTimes(SetupSummary[] summaries, Study study) =>
        summaries
            .OrderBy(summary => summary.RunTime.Value.Seconds)
            .Select(summary => new RunTimeRow(
                NameOf(summary, summaries),
                LookOf(summary.Setup, study),
                Point(summary.RunTime, time => time.Seconds),
                [.. summary.Series.RunTimes.Select(time => time.Seconds)]
            ));

    /// <summary>Each setup's run time against the next slower one's, the fastest first.</summary>
    private static IEnumerable<RatioRow> Ratios(SetupSummary[] summaries, StudyConclusions conclusions)
    {
        var ranked = summaries.OrderBy(summary => summary.RunTime.Value.Seconds).ToArray();
        foreach (var (first, second) in ranked.Zip(ranked.Skip(1)))
        {
            var pair = conclusions.Comparisons.FirstOrDefault(pair =>
                (ReferenceEquals(pair.First, first) && ReferenceEquals(pair.Second, second))
                || (ReferenceEquals(pair.First, second) && ReferenceEquals(pair.Second, first))
            );
            if (pair is not null)
            {
                yield return new RatioRow(
                    NameOf(first, summaries),
                    NameOf(second, summaries),
                    LookOf(first.Setup, conclusions.Study),
                    Point(ReferenceEquals(pair.First, first) ? pair.RunTime.Ratio : pair.SpeedRatio, ratio => ratio),
                    pair.RunTime.Less is not null
                );
            }
        }
    }

    private static IEnumerable<TradePoint> Trades(SetupSummary[] summaries, Study study) =>
        summaries.Select(summary => new TradePoint(
            NameOf(summary, summaries),
            LookOf(summary.Setup, study),
            Point(summary.RunTime, time => time.Seconds),
            Point(summary.Supply!.ChargePerTask, charge => charge.Coulombs)
        ));

    private static bool IsInOrder(SetupSummary summary) => summary.Series.Trials.All(trial => trial.Order is not null);

    private static IEnumerable<OrderRow> Orders(SetupSummary[] summaries, StudyConclusions conclusions) =>
        summaries.Select(summary => new OrderRow(
            NameOf(summary, summaries),
            LookOf(summary.Setup, conclusions.Study),
            summary.RunTime.Value.Seconds,
            [.. summary.Series.Trials.Select(trial => (trial.Order!.Value, trial.RunTime.Seconds))],
            conclusions
                .Review.Findings.Where(finding => finding.Kind == FindingKind.Drift)
                .Where(finding => finding.Trials.Contains(summary.Series.Trials[0]))
                .SelectMany(finding => finding.Figures)
                .FirstOrDefault(figure => figure.Name == "slope per trial")
                ?.Value
        ));

    /// <summary>The smallest first.</summary>
    private static IEnumerable<ChargeRow> Charges(SetupSummary[] summaries, string? baseline, Study study) =>
        summaries
            .OrderBy(summary => summary.Supply!.ChargePerTask.Value.Coulombs)
            .Select(summary => new ChargeRow(
                NameOf(summary, summaries),
                LookOf(summary.Setup, study),
                Point(summary.Supply!.ChargePerTask, charge => charge.Coulombs),
                summary.Supply!.Net.FirstOrDefault(net => net.Baseline == baseline) is { } net
                    ? Point(net.ChargePerTask, charge => charge.Coulombs)
                    : null
            ));

    /// <summary>The baseline that the net charges of a chart are less of: one alone, so that they can be compared. An
    /// attachment's comes first, since it is what another build of the board could do without.</summary>
    private static string? Baseline(SetupSummary[] summaries) =>
        summaries
            .SelectMany(summary => summary.Supply!.Net)
            .GroupBy(net => (net.Kind, net.Baseline))
            .OrderByDescending(group => group.Key.Kind == BaselineKind.Attachment)
            .ThenByDescending(group => group.Count())
            .Select(group => group.Key.Baseline)
            .FirstOrDefault();

    private static IEnumerable<DrawnLine> Lines(ClockSplit[] splits, Study study)
    {
        var names = NamesOf(
            splits.Select(split => (split.Name, split.Points.Select(point => point.Summary), split.IsApparent))
        );
        return splits.Zip(
            names,
            (split, name) =>
                new DrawnLine(
                    name,
                    LookOf(split.Points[0].Summary.Setup, study),
                    [
                        .. split.Points.Select(point =>
                            (point.Clock.Hertz, Point(point.Summary.RunTime, time => time.Seconds))
                        ),
                    ],
                    Point(split.FixedTime, time => time.Seconds),
                    split.Cycles.Value
                )
        );
    }

    private static IEnumerable<DrawnLine> Lines(CurrentAgainstClock[] lines, Study study)
    {
        var names = NamesOf(lines.Select(line => (line.Name, line.Summaries.AsEnumerable(), line.IsApparent)));
        return lines.Zip(
            names,
            (line, name) =>
                new DrawnLine(
                    name,
                    LookOf(line.Summaries[0].Setup, study),
                    [
                        .. line.Summaries.Select(summary =>
                            (
                                summary.Setup.Clock.Nominal.Hertz,
                                Point(summary.Supply!.Current, current => current.Amperes)
                            )
                        ),
                    ],
                    Point(line.BaseCurrent, current => current.Amperes),
                    line.CurrentPerMegahertz.Value.Amperes / Frequency.FromMegahertz(1).Hertz
                )
        );
    }

    private static IEnumerable<BestClockLine> Curves(BestClock[] clocks, Study study)
    {
        const int Steps = 60;
        var names = NamesOf(
            clocks.Select(clock =>
                (clock.Split.Name, clock.Split.Points.Select(point => point.Summary), clock.Split.IsApparent)
            )
        );
        foreach (var (clock, name) in clocks.Zip(names))
        {
            var (lowest, highest) = (clock.Range.Lowest.Hertz, clock.Range.Highest.Hertz);
            var within = clock.Interval?.Within(clock.Range);
            yield return new BestClockLine(
                name,
                LookOf(clock.Split.Points[0].Summary.Setup, study),
                [
                    .. clock.Offered.Select(offered =>
                        (offered.Clock.Hertz, Point(offered.Charge, charge => charge.Coulombs))
                    ),
                ],
                [
                    .. Enumerable
                        .Range(0, Steps + 1)
                        .Select(i => lowest + ((highest - lowest) * i / Steps))
                        .Select(hertz => (hertz, clock.ChargeAt(Frequency.FromHertz(hertz)).Value.Coulombs)),
                ],
                new ChartPoint(clock.Clock.Hertz, within?.Lowest.Hertz, within?.Highest.Hertz)
            );
        }
    }

    private static ChartPoint Point<T>(Measured<T> measured, Func<T, double> si)
        where T : struct =>
        new(
            si(measured.Value),
            measured.Lower is { } lower ? si(lower) : null,
            measured.Upper is { } upper ? si(upper) : null
        );

    /// <summary>Setups of one board and core look alike.</summary>
    private static int LookOf(Setup setup, Study study) =>
        study
            .Setups.Select(other => (other.Board, other.Core))
            .Distinct()
            .TakeWhile(other => other != (setup.Board, setup.Core))
            .Count();

    private static string NameOf(SetupSummary summary, SetupSummary[] all) =>
        all.Count(other => other.Setup == summary.Setup) > 1
            ? $"{summary.Setup.Name}, {summary.Series.Timer.Name}"
            : summary.Setup.Name;

    /// <summary>Board and core where these tell a chart's lines apart, the setups that a line runs through where not.</summary>
    private static string[] NamesOf(
        IEnumerable<(string Name, IEnumerable<SetupSummary> Summaries, bool IsApparent)> lines
    )
    {
        var all = lines.ToArray();
        return
        [
            .. all.Select(line =>
                (
                    all.Count(other => other.Name == line.Name) == 1
                        ? line.Name
                        : string.Join(", ", line.Summaries.Select(summary => summary.Setup.Name))
                ) + (line.IsApparent ? " (apparent)" : "")
            ),
        ];
    }
}
