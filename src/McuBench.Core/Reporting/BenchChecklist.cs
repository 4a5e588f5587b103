using System.Globalization;
using McuBench.Core.Planning;
using McuBench.Core.Studies;
using McuBench.Core.Studies.Tables;

namespace McuBench.Core.Reporting;

/// <summary>Writes an order of trials as a list to work through at the bench.</summary>
public static class BenchChecklist
{
    /// <summary>Plain text: a line a trial, under a line for each session.</summary>
    /// <param name="writer">Where to; left open.</param>
    /// <param name="order">The order.</param>
    public static void WriteText(TextWriter writer, BenchOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(writer);
        var digits = Number(order.Steps.Count).Length;
        var names = order.Steps.Max(s => s.Setup.Name.Length);
        foreach (var session in order.Steps.GroupBy(s => s.Session))
        {
            writer.Write($"session {Number(session.Key)}, {order.Workload.Name}, {order.Timer.Name}\n");
            foreach (var step in session)
            {
                writer.Write(
                    $"[ ] {Number(step.Order).PadLeft(digits)}  block {Number(step.Block)}  {step.Setup.Name.PadRight(names)}  ________\n"
                );
            }
        }

        writer.Write(Drawn(order) + "\n");
    }

    /// <summary>Markdown: a table a session, with an empty column for what was read.</summary>
    /// <param name="writer">Where to; left open.</param>
    /// <param name="order">The order.</param>
    public static void WriteMarkdown(TextWriter writer, BenchOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(writer);
        MarkdownWriter.Write(
            writer,
            new Report(
                $"Trials to run: {order.Workload.Name}",
                [
                    .. order
                        .Steps.GroupBy(s => s.Session)
                        .Select(session => new ReportTable(
                            $"Session {Number(session.Key)}, timed with {order.Timer.Name}.",
                            [
                                new ReportColumn("trial", true),
                                new ReportColumn("block", true),
                                new ReportColumn("setup", false),
                                new ReportColumn("run time", true),
                                new ReportColumn("remarks", false),
                            ],
                            session.Select<BenchStep, IReadOnlyList<ReportCell>>(s =>
                                [Number(s.Order), Number(s.Block), s.Setup.Name, "", ""]
                            )
                        )),
                    new ReportParagraph(Drawn(order)),
                ]
            )
        );
    }

    /// <summary>A table of trials as study files refer to, its run times still empty: filled in, it is the data.</summary>
    /// <param name="writer">Where to; left open.</param>
    /// <param name="order">The order.</param>
    /// <param name="options">Delimiter; the defaults when null.</param>
    public static void WriteCsv(TextWriter writer, BenchOrder order, CsvOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(writer);
        TableWriter<BenchStep>.Write(
            writer,
            order.Steps,
            options ?? CsvOptions.Default,
            [
                TableWriter<BenchStep>.Plain("order", s => Number(s.Order), always: true),
                TableWriter<BenchStep>.Plain("session", s => Number(s.Session), always: true),
                TableWriter<BenchStep>.Text("setup", s => s.Setup.Name, always: true),
                TableWriter<BenchStep>.Text("workload", _ => order.Workload.Name, always: true),
                TableWriter<BenchStep>.Text("timer", _ => order.Timer.Name, always: true),
                TableWriter<BenchStep>.Plain("run time [s]", _ => null, always: true),
                TableWriter<BenchStep>.Plain("specimen", _ => null, always: true),
                TableWriter<BenchStep>.Plain("build", _ => null, always: true),
                TableWriter<BenchStep>.Plain("temperature [°C]", _ => null, always: true),
            ]
        );
    }

    private static string Drawn(BenchOrder order) =>
        string.Create(CultureInfo.InvariantCulture, $"Order drawn in {order.Method}, seed {order.Seed}.");

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
