using ScottPlot;

namespace CompareBoards.Charts;

/// <summary>
/// Run times of one workload, a row for each setup: on the left each setup's run time with its interval, on a scale
/// from zero; on the right every trial, by how much it differs from its setup's run time, the first at the top.
/// </summary>
public static class RunTimeChart
{
    private const int LeftWidth = 272;
    private const int Margin = 10;

    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="rows">The setups, from the top; at least one.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<RunTimeRow> rows, string interval)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var (end, ticks, prefix) = ChartStyle.FromZero(
            rows.Max(row => row.RunTime.Upper ?? row.RunTime.Value),
            mostTicks: 5
        );
        var times = RowPanel.New($"run time ({prefix}s), {interval}", rows.Count, Margin, Margin + 4);
        times.Axes.Bottom.TickGenerator = ticks;
        times.Axes.SetLimitsX(0, end);

        var scale = new DeviationScale(
            rows.SelectMany(row =>
                row.Trials.Concat(new[] { row.RunTime.Lower, row.RunTime.Upper }.OfType<double>())
                    .Select(time => time / row.RunTime.Value - 1)
            )
        );
        var trials = RowPanel.New(
            scale.IsCompressed ? "trials (% off), uneven scale" : "trials (% off)",
            rows.Count,
            Margin,
            Margin + 4
        );
        trials.Axes.Bottom.TickGenerator = scale.Ticks;
        trials.Axes.SetLimitsX(-scale.Limit, scale.Limit);

        var most = Thinning.MostInRow(rows.Count);
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            var (colour, shape, _) = ChartStyle.Look(row.Look);
            var foot = RowPanel.Foot(i, rows.Count);
            RowPanel.AddName(times, row.Name, end * 0.005, foot, LeftWidth - 2 * Margin);
            RowPanel.AddPoint(times, row.RunTime, foot, colour, shape);
            AddTrials(trials, row, foot, scale, colour, most);
        }

        var height = rows.Count * RowPanel.RowHeight + RowPanel.TopAndBottom;
        return new Chart(
            $"run-times-{FileNames.Of(workload)}",
            $"Run time of {workload}. Left: each setup's run time with its {interval}. Right: every trial by how many percent it is off that run time, the first at the top; the band is the {interval}."
                + (
                    scale.IsCompressed
                        ? " The scale on the right is compressed outwards, so that small spreads show beside large ones."
                        : ""
                )
                + (rows.Any(row => row.Trials.Count > most) ? Thinning.Words : ""),
            $"Run time of {workload} for each of {rows.Count} setups: {ChartStyle.Listed(rows.Select(row => (row.Name, row.RunTime.Value)), "s")}.",
            (times, new PixelRect(0, LeftWidth, height, 0)),
            (trials, new PixelRect(LeftWidth, ChartStyle.Width, height, 0))
        );
    }

    private static void AddTrials(Plot plot, RunTimeRow row, int foot, DeviationScale scale, Color colour, int most)
    {
        var centre = row.RunTime.Value;
        if (row.RunTime is { Lower: { } lower, Upper: { } upper })
        {
            var band = plot.Add.Rectangle(
                scale.Place(lower / centre - 1),
                scale.Place(upper / centre - 1),
                foot + 0.04,
                foot + 0.96
            );
            band.FillColor = colour.WithAlpha(0.18);
            band.LineWidth = 0;
        }

        // From the top in the order run, so that a drift shows as a slant.
        var shown = Thinning.Of(row.Trials, trial => trial, most);
        var step = 0.8 / Math.Max(1, shown.Count);
        var points = plot.Add.ScatterPoints(
            shown.Select(trial => scale.Place(trial / centre - 1)).ToArray(),
            Enumerable.Range(0, shown.Count).Select(i => foot + 0.9 - (i + 0.5) * step).ToArray()
        );
        points.MarkerStyle = new MarkerStyle(MarkerShape.OpenCircle, 3.5f, colour)
        {
            LineColor = colour,
            LineWidth = 1.5f,
        };
    }
}
