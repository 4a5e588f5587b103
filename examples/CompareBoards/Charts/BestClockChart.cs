using ScottPlot;

namespace CompareBoards.Charts;

/// <summary>
/// Charge per task against clock frequency: a curve that falls while the fixed current is on for less time, and rises where
/// what follows the clock outweighs it. Below, a row for each curve shows where it is least, with the interval.
/// </summary>
public static class BestClockChart
{
    private const int UpperHeight = 330;
    private const int Left = 60;
    private const int Right = 18;

    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="lines">The curves; at least one.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<BestClockLine> lines, string interval)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var (endX, ticksX, prefixX) = ChartStyle.FromZero(lines.Max(line => line.Curve[^1].Hertz));
        var (endY, ticksY, prefixY) = ChartStyle.FromZero(
            lines.Max(line =>
                Math.Max(
                    line.Curve.Max(point => point.Coulombs),
                    line.Points.Max(point => point.Found.Upper ?? point.Found.Value)
                )
            )
        );
        var upper = ChartStyle.NewPlot($"clock frequency ({prefixX}Hz)", $"charge per task ({prefixY}C), {interval}");
        upper.Axes.Bottom.TickGenerator = ticksX;
        upper.Axes.Left.TickGenerator = ticksY;
        upper.Layout.Fixed(new PixelPadding(Left, Right, 54, 10));
        upper.Axes.SetLimits(0, endX, 0, endY);

        var lower = RowPanel.New($"clock of least charge ({prefixX}Hz), {interval}", lines.Count, Left, Right);
        lower.Axes.Bottom.TickGenerator = ChartStyle.FromZero(lines.Max(line => line.Curve[^1].Hertz)).Ticks;
        lower.Axes.SetLimitsX(0, endX);
        for (var i = 0; i < lines.Count; i++)
        {
            var (colour, filled, open) = ChartStyle.Look(lines[i].Look);
            Add(upper, lines[i], colour, filled);
            var foot = RowPanel.Foot(i, lines.Count);
            RowPanel.AddName(lower, lines[i].Name, 0.004 * endX, foot, ChartStyle.Width - Left - Right);
            RowPanel.AddPoint(lower, lines[i].Best, foot, colour, open);
        }

        var height = UpperHeight + lines.Count * RowPanel.RowHeight + RowPanel.TopAndBottom;
        return new Chart(
            $"best-clock-{FileNames.Of(workload)}",
            $"Charge per task of {workload} against the clock frequency: what the split of run time and the currents make of it over the range of clocks that was run, with marks at the clocks run and their {interval}. Below, where each curve is least; an interval is cut to the range, and one that lies beyond it is not drawn.",
            $"Clock of the least charge per task of {workload} for {lines.Count} boards and cores: {ChartStyle.Listed(lines.Select(line => (line.Name, line.Best.Value)), "Hz")}.",
            (upper, new PixelRect(0, ChartStyle.Width, UpperHeight, 0)),
            (lower, new PixelRect(0, ChartStyle.Width, height, UpperHeight))
        );
    }

    private static void Add(Plot plot, BestClockLine line, Color colour, MarkerShape shape)
    {
        foreach (var (from, to) in line.Curve.Zip(line.Curve.Skip(1)))
        {
            ChartStyle.AddLine(plot, from.Hertz, from.Coulombs, to.Hertz, to.Coulombs, colour, 1.5f);
        }

        foreach (var (hertz, found) in line.Points)
        {
            if (found is { Lower: { } low, Upper: { } high })
            {
                ChartStyle.AddLine(plot, hertz, low, hertz, high, colour, 1.5f);
            }

            ChartStyle.AddMarker(plot, hertz, found.Value, colour, shape);
        }
    }
}
