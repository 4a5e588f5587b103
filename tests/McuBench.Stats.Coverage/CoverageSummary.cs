using System.Globalization;
using System.Text;

namespace McuBench.Stats.Coverage;

/// <summary>What was simulated in a line a procedure, for the package's README.</summary>
public static class CoverageSummary
{
    /// <summary>The summary as Markdown.</summary>
    /// <param name="command">The command that makes it.</param>
    /// <param name="runs">How many runs a cell.</param>
    /// <param name="results">The cells.</param>
    public static string Of(string command, int runs, IReadOnlyList<CellResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"""
            Simulated, {runs} runs a cell, by

            ```
            {command}
            ```

            From the least to the greatest share over 3, 5, 10, 30 and 100 values, in percent. In brackets: exempt, which the doc
            comment explains; where a promise begins at more than 3 values, the others are left out. –: refused at all these
            counts. ✗: a promise missed by more than three simulation errors. The page that the command writes,
            `docs/stats-coverage.md` in the repository, has every count with the mean widths, and says what the populations are.

            """
        );
        foreach (var kind in results.GroupBy(r => r.Procedure.IsTest))
        {
            Append(text, kind.Key, [.. kind]);
        }

        return text.ToString().ReplaceLineEndings("\n");
    }

    private static void Append(StringBuilder text, bool isTest, IReadOnlyList<CellResult> results)
    {
        Population[] populations = [.. results.Select(r => r.Population).Distinct()];
        text.Append('\n');
        text.Append(
            isTest ? "| test (size 5 %) | true here | from n |" : "| interval (confidence 95 %) | is to hold | from n |"
        );
        text.Append(string.Concat(populations.Select(p => $" {p.Name} |"))).Append('\n');
        text.Append("| --- | --- | --: |");
        text.Append(string.Concat(populations.Select(_ => " --: |"))).Append('\n');
        foreach (var cells in results.GroupBy(r => r.Procedure))
        {
            var least = cells.Where(c => c.IsAnswered && c.IsPromised).Select(c => (int?)c.Count).Min();
            text.Append(CultureInfo.InvariantCulture, $"| {cells.Key.Name} | {cells.Key.Target} | {least} |");
            foreach (var population in populations)
            {
                text.Append(' ').Append(Range([.. cells.Where(c => c.Population == population)])).Append(" |");
            }

            text.Append('\n');
        }
    }

    private static string Range(IReadOnlyList<CellResult> cells)
    {
        if (cells.Count == 0)
        {
            return "";
        }

        CellResult[] answered = [.. cells.Where(c => c.IsAnswered)];
        CellResult[] promised = [.. answered.Where(c => c.IsPromised)];
        if (answered.Length == 0)
        {
            return "–";
        }

        string mark = promised.Any(c => c.Misses) ? " ✗" : "";
        return promised.Length > 0 ? Ends(promised) + mark : $"({Ends(answered)})";
    }

    private static string Ends(CellResult[] cells)
    {
        string least = Percent(cells.Min(c => c.Share));
        string most = Percent(cells.Max(c => c.Share));
        return least == most ? least : $"{least}–{most}";
    }

    private static string Percent(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture);
}
