using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace CompareBoards.Charts;

/// <summary>
/// The trials of one workload in the order in which the whole study ran, a row for each setup: up and down by how much
/// each differs from its setup's run time. A drift shows as a slope, and is drawn as a line where one was found.
/// </summary>
public static class OrderChart
{
    private const int Margin = 14;
    private const int RowHeight = 62;
    private const int LineHeight = 17;

    // Of a row's height: the name takes the rest.
    private const double Middle = 0.36;
    private const double Reach = 0.30;

    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="rows">The setups, from the top; at least one.</param>
    public static Chart Draw(string workload, IReadOnlyList<OrderRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var last = rows.Max(row => row.Trials.Max(trial => trial.Order));
        var scale = new DeviationScale(
            rows.SelectMany(row => row.Trials.Select(trial => trial.Seconds / row.RunTime - 1))
        );
        var step = Math.Max(1, (int)ChartStyle.NiceStep(last / 6.0));
        var places = Enumerable.Range(0, last / step + 1).Select(i => i * step).ToArray();
        var reach = (100 * scale.Reach).ToString("0.##", CultureInfo.InvariantCulture);
        var plot = RowPanel.New(
            $"place in the order of all trials\nup and down: % off, to ±{reach} %{(scale.IsCompressed ? ", uneven scale" : "")}",
            rows.Count,
            Margin,
            Margin + 4,
            LineHeight
        );
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            [.. places.Select(place => (double)place)],
            [.. places.Select(place => place.ToString(CultureInfo.InvariantCulture))]
        );
        plot.Axes.SetLimitsX(-0.02 * last, 1.02 * last);

        var most = Thinning.MostInRow(rows.Count);
        for (var i = 0; i < rows.Count; i++)
        {
            var foot = RowPanel.Foot(i, rows.Count);
            RowPanel.AddName(plot, rows[i].Name, -0.015 * last, foot, ChartStyle.Width - 2 * Margin);
            Add(plot, rows[i], foot + Middle, scale, most);
        }

        var drifts = rows.Where(row => row.SlopePerTrial is not null).Select(row => row.Name).ToArray();
        return new Chart(
            $"order-{FileNames.Of(workload)}",
            $"Trials of {workload} in the order in which all trials of the study ran. Up and down: by how much each differs from its setup's run time (thin line), {reach} % from the middle to the edge of a row's marks{(scale.IsCompressed ? ", compressed outwards so that small spreads show beside large ones" : "")}. A thick line is a drift that the review found.{(rows.Any(row => row.Trials.Count > most) ? Thinning.Words : "")}",
            drifts.Length == 0
                ? $"Trials of {workload} in order for each of {rows.Count} setups; no drift was found."
                : $"Trials of {workload} in order for each of {rows.Count} setups; a drift was found for {string.Join(", ", drifts)}.",
            (plot, new PixelRect(0, ChartStyle.Width, rows.Count * RowHeight + RowPanel.TopAndBottom + LineHeight, 0))
        );
    }

    private static void Add(Plot plot, OrderRow row, double middle, DeviationScale scale, int most)
    {
        var (colour, _, open) = ChartStyle.Look(row.Look);
        var first = row.Trials.Min(trial => trial.Order);
        var last = row.Trials.Max(trial => trial.Order);
        double Place(double seconds) => middle + Reach * scale.Place(seconds / row.RunTime - 1) / scale.Limit;

        ChartStyle.AddLine(plot, first, middle, last, middle, colour, 0.75f);
        if (row.SlopePerTrial is { } slope)
        {
            // A line over the trials' own places, at which the mean stands in the middle.
            var half = (row.Trials.Count - 1) / 2.0;
            var line = plot.Add.ScatterLine(
                row.Trials.Select(trial => (double)trial.Order).ToArray(),
                row.Trials.Select((_, i) => Place(row.RunTime + (i - half) * slope)).ToArray()
            );
            line.Color = colour;
            line.LineWidth = 3.5f;
        }

        var shown = Thinning.Of(row.Trials, trial => trial.Seconds, most);
        var points = plot.Add.ScatterPoints(
            shown.Select(trial => (double)trial.Order).ToArray(),
            shown.Select(trial => Place(trial.Seconds)).ToArray()
        );
        points.MarkerStyle = new MarkerStyle(open, 5, colour) { LineColor = colour, LineWidth = 1.5f };
    }
}
