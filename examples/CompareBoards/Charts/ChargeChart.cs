using ScottPlot;

namespace CompareBoards.Charts;

/// <summary>Charge per task of one workload, a row for each setup: the whole board's, and what is left without a
/// baseline where one was read.</summary>
public static class ChargeChart
{
    private const int Margin = 14;
    private const int LineHeight = 17;

    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="rows">The setups, from the top; at least one.</param>
    /// <param name="netOf">What the net charge is without ("level display alone"), or null where there is none.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<ChargeRow> rows, string? netOf, string interval)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var (end, ticks, prefix) = ChartStyle.FromZero(
            rows.Max(row => Math.Max(row.Gross.Upper ?? row.Gross.Value, row.Net?.Upper ?? row.Net?.Value ?? 0))
        );
        var extra = netOf is null ? 0 : LineHeight;
        var key = netOf is null
            ? ""
            : ChartStyle.Shortened($"\nfilled: whole board; open: less {netOf}", ChartStyle.Width);
        var plot = RowPanel.New($"charge per task ({prefix}C), {interval}{key}", rows.Count, Margin, Margin + 4, extra);
        plot.Axes.Bottom.TickGenerator = ticks;

        // A net charge may come out below zero.
        plot.Axes.SetLimitsX(Math.Min(0, rows.Min(row => row.Net?.Lower ?? row.Net?.Value ?? 0)), end);

        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            var (colour, filled, open) = ChartStyle.Look(row.Look);
            var foot = RowPanel.Foot(i, rows.Count);
            RowPanel.AddName(plot, row.Name, end * 0.004, foot, ChartStyle.Width - 2 * Margin);
            if (row.Net is { } net)
            {
                RowPanel.AddPoint(plot, net, foot, colour, open);
            }

            RowPanel.AddPoint(plot, row.Gross, foot, colour, filled);
        }

        return new Chart(
            $"charge-{FileNames.Of(workload)}",
            $"Charge per task of {workload} with its {interval}: the whole board's"
                + (netOf is null ? "." : $" (filled), and the same less {netOf} (open)."),
            $"Charge per task of {workload} for each of {rows.Count} setups: {ChartStyle.Listed(rows.Select(row => (row.Name, row.Gross.Value)), "C")}.",
            (
                plot,
                new PixelRect(0, ChartStyle.Width, rows.Count * RowPanel.RowHeight + RowPanel.TopAndBottom + extra, 0)
            )
        );
    }
}
