using ScottPlot;

namespace CompareBoards.Charts;

/// <summary>
/// Charge per task against run time, a mark for each setup, with the line of those that no other beats in both: who is
/// on it is a matter of taste, who is above it is not. Below, a row names each setup, those on the line first.
/// </summary>
public static class TradeChart
{
    private const int UpperHeight = 340;
    private const int Left = 60;
    private const int Right = 18;
    private const int Below = 54;
    private const int Above = 10;
    private const int KeyRowHeight = 22;
    private const int KeyMargin = 6;

    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="points">The setups; at least one.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<TradePoint> points, string interval)
    {
        ArgumentNullException.ThrowIfNull(points);
        var front = Unbeaten(points);
        var (endX, ticksX, prefixX) = ChartStyle.FromZero(
            points.Max(point => point.RunTime.Upper ?? point.RunTime.Value)
        );
        var (endY, ticksY, prefixY) = ChartStyle.FromZero(
            points.Max(point => point.Charge.Upper ?? point.Charge.Value)
        );
        var upper = ChartStyle.NewPlot($"run time ({prefixX}s)", $"charge per task ({prefixY}C), {interval}");
        upper.Axes.Bottom.TickGenerator = ticksX;
        upper.Axes.Left.TickGenerator = ticksY;
        upper.Layout.Fixed(new PixelPadding(Left, Right, Below, Above));
        upper.Axes.SetLimits(0, endX, 0, endY);
        AddFront(upper, front, endX, endY);

        TradePoint[] ordered = [.. front, .. points.Except(front).OrderBy(point => point.RunTime.Value)];
        var lower = RowPanel.New("", ordered.Length, Left, Right);
        lower.Axes.SetLimitsX(0, 1);
        lower.HideGrid();
        lower.Axes.Bottom.IsVisible = false;
        lower.Layout.Fixed(new PixelPadding(Left, Right, KeyMargin, KeyMargin));
        var labels = new LabelPlaces(
            endX,
            endY,
            ChartStyle.Width - Left - Right,
            UpperHeight - Below - Above,
            points.Select(point => (point.RunTime.Value, point.Charge.Value))
        );
        for (var i = 0; i < ordered.Length; i++)
        {
            var point = ordered[i];
            var (colour, filled, open) = ChartStyle.Look(point.Look);
            var shape = i < front.Count ? filled : open;
            Add(upper, point, i + 1, shape, colour, labels);
            var middle = RowPanel.Foot(i, ordered.Length) + 0.5;
            ChartStyle.AddMarker(lower, 0.02, middle, colour, shape);
            ChartStyle.AddText(
                lower,
                ChartStyle.Shortened(
                    FormattableString.Invariant($"{i + 1}  {point.Name}"),
                    ChartStyle.Width - Left - Right - 24
                ),
                0.05,
                middle,
                Alignment.MiddleLeft
            );
        }

        return new Chart(
            $"trade-{FileNames.Of(workload)}",
            $"Charge per task of {workload} against its run time, with the {interval} of each where it is wider than the mark. The line joins the setups that no other beats in both (filled): any other (open) is both slower and costlier than one of them. Numbers as in the list below the chart.",
            $"Charge per task against run time of {workload} for {points.Count} setups. No other beats these in both: {ChartStyle.Listed(front.Select(point => (point.Name, point.RunTime.Value)), "s")}; {ChartStyle.Listed(front.Select(point => (point.Name, point.Charge.Value)), "C")}.",
            (upper, new PixelRect(0, ChartStyle.Width, UpperHeight, 0)),
            (
                lower,
                new PixelRect(
                    0,
                    ChartStyle.Width,
                    UpperHeight + ordered.Length * KeyRowHeight + 2 * KeyMargin,
                    UpperHeight
                )
            )
        );
    }

    /// <summary>The setups that no other beats in both, by their values: fastest first, each next one slower and cheaper.</summary>
    public static IReadOnlyList<TradePoint> Unbeaten(IEnumerable<TradePoint> points)
    {
        var front = new List<TradePoint>();
        foreach (var point in points.OrderBy(point => point.RunTime.Value).ThenBy(point => point.Charge.Value))
        {
            if (front.Count == 0 || point.Charge.Value < front[^1].Charge.Value)
            {
                front.Add(point);
            }
        }

        return front;
    }

    /// <summary>A step line: between two unbeaten setups nothing was measured that would do better than either.</summary>
    private static void AddFront(Plot plot, IReadOnlyList<TradePoint> front, double endX, double endY)
    {
        var (x, y) = (front[0].RunTime.Value, endY);
        foreach (var point in front)
        {
            ChartStyle.AddLine(plot, x, y, point.RunTime.Value, y, ChartStyle.Ink, 1, LinePattern.Dashed);
            ChartStyle.AddLine(
                plot,
                point.RunTime.Value,
                y,
                point.RunTime.Value,
                point.Charge.Value,
                ChartStyle.Ink,
                1,
                LinePattern.Dashed
            );
            (x, y) = (point.RunTime.Value, point.Charge.Value);
        }

        ChartStyle.AddLine(plot, x, y, endX, y, ChartStyle.Ink, 1, LinePattern.Dashed);
    }

    private static void Add(
        Plot plot,
        TradePoint point,
        int number,
        MarkerShape shape,
        Color colour,
        LabelPlaces labels
    )
    {
        var (x, y) = (point.RunTime.Value, point.Charge.Value);
        if (point.RunTime is { Lower: { } left, Upper: { } right })
        {
            ChartStyle.AddLine(plot, left, y, right, y, colour, 1.5f);
        }

        if (point.Charge is { Lower: { } low, Upper: { } high })
        {
            ChartStyle.AddLine(plot, x, low, x, high, colour, 1.5f);
        }

        ChartStyle.AddMarker(plot, x, y, colour, shape);
        var label = FormattableString.Invariant($"{number}");
        var (labelX, labelY, alignment) = labels.Next(label, x, y);
        ChartStyle.AddText(plot, label, labelX, labelY, alignment);
    }
}
