using ScottPlot;
using Horizontal = (string Words, string Unit, System.Func<double, double> Of);
using Vertical = (string Words, string Unit);

namespace CompareBoards.Charts;

/// <summary>
/// Points at several clocks with straight lines through them, drawn out to zero. What stands at zero is shown again
/// below, on a scale of its own and with a row for each line, which is the key to the lines as well.
/// </summary>
internal static class LineChart
{
    private const int UpperHeight = 330;
    private const int Left = 60;
    private const int Right = 18;

    public static Chart Draw(
        string name,
        string caption,
        string description,
        Horizontal horizontal,
        Vertical vertical,
        string atZero,
        IReadOnlyList<DrawnLine> lines,
        string interval
    )
    {
        var (endX, ticksX, prefixX) = ChartStyle.FromZero(
            lines.Max(line => line.Points.Max(point => horizontal.Of(point.Hertz)))
        );
        var (endY, ticksY, prefixY) = ChartStyle.FromZero(
            lines.Max(line => line.Points.Max(point => point.Found.Upper ?? point.Found.Value))
        );
        var upper = ChartStyle.NewPlot(
            $"{horizontal.Words} ({prefixX}{horizontal.Unit})",
            $"{vertical.Words} ({prefixY}{vertical.Unit})"
        );
        upper.Axes.Bottom.TickGenerator = ticksX;
        upper.Axes.Left.TickGenerator = ticksY;
        upper.Layout.Fixed(new PixelPadding(Left, Right, 54, 10));

        // Room on the left for the marks at zero, and below where one of them is negative.
        var lowest = lines.Min(line => line.AtZero.Value);
        upper.Axes.SetLimits(-0.03 * endX, endX, Math.Min(0, 1.1 * lowest), endY);

        var (end, ticks, prefix) = ChartStyle.FromZero(
            lines.Max(line => Math.Max(0, line.AtZero.Upper ?? line.AtZero.Value))
        );
        var lower = RowPanel.New($"{atZero} ({prefix}{vertical.Unit}), {interval}", lines.Count, Left, Right);
        lower.Axes.Bottom.TickGenerator = ticks;
        var start = Math.Min(0, 1.1 * lines.Min(line => line.AtZero.Lower ?? line.AtZero.Value));
        lower.Axes.SetLimitsX(start, end);
        if (start < 0)
        {
            lower.Add.VerticalLine(0, 1, ChartStyle.Ink);
        }

        for (var i = 0; i < lines.Count; i++)
        {
            var (colour, filled, open) = ChartStyle.Look(lines[i].Look);
            Add(upper, lines[i], horizontal.Of, 0.007 * endX, colour, filled, open);
            var foot = RowPanel.Foot(i, lines.Count);
            RowPanel.AddName(
                lower,
                lines[i].Name,
                start + 0.004 * (end - start),
                foot,
                ChartStyle.Width - Left - Right
            );
            RowPanel.AddPoint(lower, lines[i].AtZero, foot, colour, open);
        }

        var height = UpperHeight + lines.Count * RowPanel.RowHeight + RowPanel.TopAndBottom;
        return new Chart(
            name,
            caption,
            description,
            (upper, new PixelRect(0, ChartStyle.Width, UpperHeight, 0)),
            (lower, new PixelRect(0, ChartStyle.Width, height, UpperHeight))
        );
    }

    private static void Add(
        Plot plot,
        DrawnLine line,
        Func<double, double> horizontal,
        double capHalfWidth,
        Color colour,
        MarkerShape filled,
        MarkerShape open
    )
    {
        var first = line.Points.Min(point => horizontal(point.Hertz));
        var last = line.Points.Max(point => horizontal(point.Hertz));
        double At(double x) => line.AtZero.Value + line.Slope * x;

        // Dashes where nothing was run.
        ChartStyle.AddLine(plot, 0, At(0), first, At(first), colour, 1.5f, LinePattern.Dashed);
        ChartStyle.AddLine(plot, first, At(first), last, At(last), colour, 1.5f);
        ChartStyle.AddMarker(plot, 0, At(0), colour, open);
        foreach (var (hertz, found) in line.Points)
        {
            var x = horizontal(hertz);
            if (found is { Lower: { } lower, Upper: { } upper })
            {
                ChartStyle.AddLine(plot, x, lower, x, upper, colour, 1.5f);
                ChartStyle.AddLine(plot, x - capHalfWidth, lower, x + capHalfWidth, lower, colour, 1.5f);
                ChartStyle.AddLine(plot, x - capHalfWidth, upper, x + capHalfWidth, upper, colour, 1.5f);
            }

            ChartStyle.AddMarker(plot, x, found.Value, colour, filled);
        }
    }
}
