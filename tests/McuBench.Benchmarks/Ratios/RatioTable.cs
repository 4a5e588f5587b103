using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace McuBench.Benchmarks.Ratios;

/// <summary>The table of ratios as Markdown.</summary>
internal static class RatioTable
{
    internal static string Of(IReadOnlyList<RatioRow> rows, DateOnly date)
    {
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"""
            The same data in one run, side after side for each row, the shortest timing of three rounds or more; by

            ```
            dotnet run -c Release --project tests/McuBench.Benchmarks -- ratios
            ```

            on {date:yyyy-MM-dd}, {Environment.ProcessorCount} cores, {RuntimeInformation.OSDescription.Split(
                '-'
            )[0]} {RuntimeInformation.OSArchitecture}, {RuntimeInformation.FrameworkDescription}. Everything on one thread. *Ratio*:
            how many times as fast as the side that the goal names. *Differs*: the largest relative difference between the results
            of the sides; – where they rest on different random numbers or on a search that R stops early.

            | work | here | R | Python | ratio | goal | differs |
            | --- | --: | --: | --: | --: | --- | --: |

            """
        );
        foreach (RatioRow row in rows)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {row.Task.Work} | {Time(row.Here.Seconds)} |");
            text.Append(
                CultureInfo.InvariantCulture,
                $" {Cell(row.R)} | {Cell(row.Python)} | {Ratio(row)} | {Goal(row)} |"
            );
            text.Append(CultureInfo.InvariantCulture, $" {Difference(row)} |\n");
        }

        return text.ToString().ReplaceLineEndings("\n");
    }

    private static string Cell(Timing? timing) => timing is null ? "–" : $"{Time(timing.Seconds)} ({timing.Engine})";

    private static string Ratio(RatioRow row) =>
        row.Ratio is { } ratio ? Text($"{Digits(ratio)}") + (row.Misses ? " ✗" : "") : "–";

    private static string Goal(RatioRow row) =>
        row.Task.Rival is null ? "seconds" : Text($"{row.Task.Goal} × {row.Task.Rival}");

    private static string Difference(RatioRow row) =>
        row.Task.Tolerance is null || row.LargestDifference is not { } difference ? "–" : Text($"{difference:0E0}");

    private static string Time(double seconds)
    {
        (double value, string unit) = seconds switch
        {
            >= 1 => (seconds, "s"),
            >= 1e-3 => (seconds * 1e3, "ms"),
            >= 1e-6 => (seconds * 1e6, "µs"),
            _ => (seconds * 1e9, "ns"),
        };
        return $"{Digits(value)} {unit}";
    }

    private static string Digits(double value) => value >= 100 ? Text($"{value:0}") : Text($"{value:G3}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
