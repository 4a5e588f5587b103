using System.Globalization;

namespace McuBench.Stats.Coverage;

/// <summary>Writes all that was simulated as a page of Markdown.</summary>
public static class CoveragePage
{
    /// <summary>Writes the page.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="command">The command that makes it.</param>
    /// <param name="runs">How many runs a cell.</param>
    /// <param name="results">The cells.</param>
    public static void Write(TextWriter writer, string command, int runs, IReadOnlyList<CellResult> results)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(results);
        writer.NewLine = "\n";
        writer.WriteLine("# How often the intervals hold, and how often the tests reject what is true");
        writer.WriteLine();
        writer.WriteLine(
            Text(
                $"Every interval and every test of McuBench.Stats on drawn data, {runs} runs a cell (fewer for slow procedures, as noted). Made by"
            )
        );
        writer.WriteLine();
        writer.WriteLine("```sh");
        writer.WriteLine(command);
        writer.WriteLine("```");
        writer.WriteLine();
        writer.WriteLine(
            """
            - *n*: values in each sample or group. Populations:
            """.ReplaceLineEndings("\n")
        );
        foreach (var population in Populations.All)
        {
            writer.WriteLine($"  - *{population.Name}*: {population.Description}");
        }

        writer.WriteLine(
            """
            - Intervals: the share that held the target, at 95 % confidence, then the mean width. Where the truth of two samples is
              a ratio it is 1.25, where it is a difference 2; both have the population's shape. The share is of the intervals that
              there were.
            - Tests: the share of rejections at 5 % where the null hypothesis is true.
            - *[80 %]*: only so many runs gave an answer; in the others all values were equal or such. *–*: refused at this count.
            - In brackets: exempt from the promise, for the reason given, which the procedure's doc comment gives as well.
            - ✗ marks a promise missed by more than three simulation errors. What seemed to miss was run again, four times as
              often and from other draws, and that result stands.
            """.ReplaceLineEndings("\n")
        );
        writer.WriteLine();
        writer.WriteLine(Misses(results));
        foreach (var procedures in results.GroupBy(r => r.Procedure.IsTest))
        {
            writer.WriteLine();
            writer.WriteLine(procedures.Key ? "## Tests" : "## Intervals");
            foreach (var cells in procedures.GroupBy(r => r.Procedure))
            {
                WriteProcedure(writer, cells.Key, [.. cells]);
            }
        }
    }

    private static string Misses(IReadOnlyList<CellResult> results)
    {
        int promised = results.Count(r => r.IsPromised && r.IsAnswered);
        int missed = results.Count(r => r.Misses);
        return Text($"Of {promised} cells with a promise, {missed} miss it.");
    }

    private static void WriteProcedure(TextWriter writer, Procedure procedure, IReadOnlyList<CellResult> cells)
    {
        Population[] populations = [.. cells.Select(c => c.Population).Distinct()];
        writer.WriteLine();
        writer.WriteLine("### " + procedure.Name);
        writer.WriteLine();
        writer.WriteLine(Words(procedure));
        writer.WriteLine();
        writer.WriteLine("| n | " + string.Join(" | ", populations.Select(p => p.Name)) + " |");
        writer.WriteLine("| --: | " + string.Join(" | ", populations.Select(_ => "--:")) + " |");
        foreach (var row in cells.GroupBy(c => c.Count))
        {
            writer.WriteLine(Text($"| {row.Key} | ") + string.Join(" | ", row.Select(Cell)) + " |");
        }
    }

    private static string Words(Procedure procedure)
    {
        string target = procedure.IsTest ? "True here: " : "Target: ";
        string exempt = procedure.Promise.Elsewhere is { } why ? $" Exempt: {why}." : "";
        string fewer = procedure.OneIn == 1 ? "" : Text($" One run in {procedure.OneIn}.");
        return target + procedure.Target + "." + exempt + fewer;
    }

    private static string Cell(CellResult cell)
    {
        if (!cell.IsAnswered)
        {
            return "–";
        }

        string width =
            cell.Procedure.IsTest ? ""
            : double.IsFinite(cell.MeanWidth) ? Text($" · {cell.MeanWidth:G3}")
            : " · one-sided";
        double answered = (double)cell.Answers / cell.Runs;
        string share = answered < 0.995 ? Text($" [{100 * answered:0} %]") : "";
        string text = Text($"{100 * cell.Share:0.0} %") + width + share;
        return cell.IsPromised ? text + (cell.Misses ? " ✗" : "") : $"({text})";
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
