using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace CompareBoards.Charts;

/// <summary>Ratios of run times, a row a pair: the ratio, its interval, the line of no difference, and the band of what
/// makes none that matters.</summary>
public static class RatioChart
{
    private const int Margin = 14;

    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="rows">The pairs, from the top; at least one.</param>
    /// <param name="margin">The relative difference that does not matter to the user, as a share; null where none was stated.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<RatioRow> rows, double? margin, string interval)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var least = Math.Min(1 / (1 + (margin ?? 0)), rows.Min(row => row.Ratio.Lower ?? row.Ratio.Value));
        var most = Math.Max(1 + (margin ?? 0), rows.Max(row => row.Ratio.Upper ?? row.Ratio.Value));
        var room = 0.04 * Math.Max(most - least, 1e-3);
        var plot = RowPanel.New(
            $"run time of the first ÷ that of the second, {interval}",
            rows.Count,
            Margin,
            Margin + 4
        );
        var step = ChartStyle.NiceStep((most - least + 2 * room) / 6);
        var places = Enumerable
            .Range(0, 9)
            .Select(i => (Math.Ceiling((least - room) / step) + i) * step)
            .Where(place => place <= most + room)
            .ToArray();
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            places,
            [.. places.Select(place => Math.Round(place, 9).ToString("0.#########", CultureInfo.InvariantCulture))]
        );
        plot.Axes.SetLimitsX(least - room, most + room);
        if (margin is { } share)
        {
            var band = plot.Add.Rectangle(1 / (1 + share), 1 + share, 0, rows.Count);
            band.FillColor = ChartStyle.Guide.WithAlpha(0.7);
            band.LineWidth = 0;
        }

        ChartStyle.AddLine(plot, 1, 0, 1, rows.Count, ChartStyle.Ink, 1, LinePattern.Dashed);
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            var (colour, filled, open) = ChartStyle.Look(row.Look);
            var foot = RowPanel.Foot(i, rows.Count);
            RowPanel.AddName(
                plot,
                $"{row.First} ÷ {row.Second}",
                least - room * 0.9,
                foot,
                ChartStyle.Width - 2 * Margin
            );
            RowPanel.AddPoint(plot, row.Ratio, foot, colour, row.IsResolved ? filled : open);
        }

        return new Chart(
            $"ratios-{FileNames.Of(workload)}",
            $"Run time of {workload}: each setup's divided by that of the next slower one, with its {interval}. Filled: a difference is shown; open: it is not. The dashed line is no difference{(margin is null ? "" : ", the band what does not matter to the user")}.",
            $"Ratios of run times of {workload} for {rows.Count} pairs of neighbours: {ChartStyle.Listed(rows.Select(row => ($"{row.First} to {row.Second}", row.Ratio.Value)), "")}.",
            (plot, new PixelRect(0, ChartStyle.Width, rows.Count * RowPanel.RowHeight + RowPanel.TopAndBottom, 0))
        );
    }
}
