using McuBench.Core.Boards;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Tables with a line a setup.</summary>
internal static class SummaryTables
{
    /// <summary>A table a workload, narrow enough for a terminal.</summary>
    public static IEnumerable<ReportBlock> Narrow(StudyConclusions conclusions)
    {
        yield return new ReportHeading(2, "Figures");
        foreach (var (workload, summaries) in ByWorkload(conclusions))
        {
            yield return new ReportTable(
                Caption(conclusions, workload),
                [
                    new ReportColumn("setup", false),
                    new ReportColumn("n", true),
                    new ReportColumn("run time", true),
                    new ReportColumn($"cycles per {workload.ItemName}", true),
                    new ReportColumn("charge per task", true),
                ],
                summaries.Select<SetupSummary, IReadOnlyList<ReportCell>>(summary =>
                    [
                        summary.Setup.Name,
                        Phrase.NumberCell(summary.RunTime.Trials),
                        Phrase.Cell(summary.RunTime),
                        Phrase.ValueCell(summary.CyclesPerItem),
                        Phrase.Cell(summary.Supply?.ChargePerTask),
                    ]
                )
            );
        }
    }

    /// <summary>Three tables a workload: time, supply, and what is left when a baseline is subtracted.</summary>
    public static IEnumerable<ReportBlock> Wide(StudyConclusions conclusions, TrialAnchors anchors)
    {
        yield return new ReportHeading(2, "Figures by setup");
        foreach (var (workload, summaries) in ByWorkload(conclusions))
        {
            yield return new ReportHeading(3, Phrase.Capital(workload.Name));
            yield return new ReportTable(
                $"Time. {Caption(conclusions, workload)}",
                [
                    new ReportColumn("setup", false),
                    new ReportColumn("clock", true),
                    new ReportColumn("trials", true),
                    new ReportColumn("run time", true),
                    new ReportColumn($"{Phrase.Plural(workload.ItemName)} per second", true),
                    new ReportColumn($"cycles per {workload.ItemName}", true),
                    new ReportColumn($"{Phrase.Plural(workload.ItemName)} per megacycle", true),
                ],
                summaries.Select<SetupSummary, IReadOnlyList<ReportCell>>(summary =>
                    [
                        anchors.Cell(summary),
                        Phrase.QuantityCell(summary.Setup.Clock.Nominal),
                        Phrase.NumberCell(summary.RunTime.Trials),
                        Phrase.Cell(summary.RunTime),
                        Phrase.Cell(summary.Throughput),
                        Phrase.Cell(summary.CyclesPerItem),
                        Phrase.Cell(summary.ItemsPerMegacycle),
                    ]
                )
            );
            if (Supply(workload, summaries, anchors) is { } supply)
            {
                yield return supply;
            }

            if (Net(workload, summaries, anchors) is { } net)
            {
                yield return net;
            }
        }
    }

    private static ReportTable? Supply(Workload workload, IReadOnlyList<SetupSummary> summaries, TrialAnchors anchors)
    {
        var read = summaries.Where(summary => summary.Supply is not null).ToArray();
        return read.Length == 0
            ? null
            : new ReportTable(
                $"Supply, gross: the whole board with all that hangs on it, running the {workload.Name}.",
                [
                    new ReportColumn("setup", false),
                    new ReportColumn("current", true),
                    new ReportColumn("mean power", true),
                    new ReportColumn("charge per task", true),
                    new ReportColumn("energy per task", true),
                    new ReportColumn("energy × run time (J·s)", true),
                    new ReportColumn("tasks per ampere-hour", true),
                    new ReportColumn("tasks per watt-hour", true),
                ],
                read.Select<SetupSummary, IReadOnlyList<ReportCell>>(summary =>
                    [
                        anchors.Cell(summary),
                        Phrase.Cell(summary.Supply!.Current),
                        Phrase.Cell(summary.Supply.MeanPower),
                        Phrase.Cell(summary.Supply.ChargePerTask),
                        Phrase.Cell(summary.Supply.EnergyPerTask),
                        Phrase.Cell(summary.Supply.EnergyDelayProduct),
                        Phrase.Cell(summary.Supply.TasksPerAmpereHour),
                        Phrase.Cell(summary.Supply.TasksPerWattHour),
                    ]
                )
            );
    }

    private static ReportTable? Net(Workload workload, IReadOnlyList<SetupSummary> summaries, TrialAnchors anchors)
    {
        var net = summaries
            .Where(summary => summary.Supply is not null)
            .SelectMany(summary => summary.Supply!.Net.Select(figures => (summary, figures)))
            .ToArray();
        return net.Length == 0
            ? null
            : new ReportTable(
                $"Supply, net of a baseline, running the {workload.Name}. Net figures stand beside the gross ones and never replace them.",
                [
                    new ReportColumn("setup", false),
                    new ReportColumn("less", false),
                    new ReportColumn("baseline", true),
                    new ReportColumn("its share of the charge", true),
                    new ReportColumn("net current", true),
                    new ReportColumn("net charge per task", true),
                    new ReportColumn("net energy per task", true),
                ],
                net.Select<(SetupSummary Summary, NetSupply Figures), IReadOnlyList<ReportCell>>(row =>
                    [
                        anchors.Cell(row.Summary),
                        row.Figures.Baseline,
                        Phrase.Cell(row.Figures.BaselineCurrent),
                        Phrase.Cell(row.Figures.BaselineShare),
                        Phrase.Cell(row.Figures.Current),
                        Phrase.Cell(row.Figures.ChargePerTask),
                        Phrase.Cell(row.Figures.EnergyPerTask),
                    ]
                )
            );
    }

    private static string Caption(StudyConclusions conclusions, Workload workload) =>
        $"{Phrase.Capital(workload.Name)}, {Phrase.Items(workload)} a run; {Phrase.Confidence(conclusions.Options.Confidence)} intervals in brackets.";

    private static IEnumerable<(Workload Workload, IReadOnlyList<SetupSummary> Summaries)> ByWorkload(
        StudyConclusions conclusions
    ) =>
        conclusions
            .Study.Workloads.Select(workload =>
                (workload, (IReadOnlyList<SetupSummary>)[.. conclusions.Summaries.Where(s => s.Workload == workload)])
            )
            .Where(pair => pair.Item2.Count > 0);
}
