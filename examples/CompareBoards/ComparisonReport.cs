using System.Text;
using CompareBoards.Charts;
using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;

namespace CompareBoards;

/// <summary>A summary to print and a report with charts to write, all made before anything is printed or written.</summary>
public sealed class ComparisonReport
{
    private const string PageName = "report.html";

    private readonly StudyConclusions conclusions;
    private readonly IReadOnlyList<(string Name, byte[] Content)> files;

    private ComparisonReport(
        StudyConclusions conclusions,
        IReadOnlyList<(string Name, byte[] Content)> files,
        int charts
    )
    {
        this.conclusions = conclusions;
        this.files = files;
        Contents =
            charts == 0 ? PageName : FormattableString.Invariant($"{PageName} and {charts} charts (PNG and SVG)");
        Missing = ChartFonts.Family is null
            ? "The charts were left out, since this system has no font to write their words with; install one, such as DejaVu Sans (fonts-dejavu-core), and run this again."
            : null;
    }

    /// <summary>What it holds, in words.</summary>
    public string Contents { get; }

    /// <summary>What had to be left out and why, or null.</summary>
    public string? Missing { get; }

    /// <summary>Makes the report.</summary>
    public static ComparisonReport Of(StudyConclusions conclusions, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(conclusions);
        var made = new List<(string Name, byte[] Content)>();
        var figures = new List<ReportFigure>();
        if (ChartFonts.Family is not null)
        {
            foreach (var chart in ChartSet.Of(conclusions))
            {
                cancellationToken.ThrowIfCancellationRequested();
                var svg = chart.ToSvg();
                made.Add(($"{chart.Name}.svg", Encoding.UTF8.GetBytes(svg)));
                made.Add(($"{chart.Name}.png", chart.ToPng()));
                figures.Add(
                    new ReportFigure(chart.Name, chart.Caption, chart.Description, svg) { Workload = chart.Workload }
                );
            }
        }

        using var page = new StringWriter { NewLine = "\n" };
        HtmlWriter.Write(page, StudyReport.Full(conclusions, figures));

        // The page comes last: once it is there, all of it is.
        made.Add((PageName, Encoding.UTF8.GetBytes(page.ToString())));
        return new ComparisonReport(conclusions, made, figures.Count);
    }

    /// <summary>Prints the brief form.</summary>
    public void PrintSummary(TextWriter output) => PlainTextWriter.Write(output, StudyReport.Brief(conclusions));

    /// <summary>Writes page and charts into a folder, which is made where there is none.</summary>
    /// <exception cref="BadInputException">The folder can't be made or written to.</exception>
    public void WriteTo(string folder)
    {
        try
        {
            _ = Directory.CreateDirectory(folder);
            foreach (var (name, content) in files)
            {
                AtomicFile.Write(Path.Combine(folder, name), file => file.Write(content));
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"{folder}: the report can't be written there: {fault.Message}", fault);
        }
    }
}
