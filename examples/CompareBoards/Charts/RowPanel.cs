using ScottPlot;
using ScottPlot.TickGenerators;

namespace CompareBoards.Charts;

/// <summary>A panel of rows, one below the other, each with its name above its marks, so that names may be long.</summary>
internal static class RowPanel
{
    /// <summary>The height of a row, in pixels.</summary>
    public const int RowHeight = 38;

    /// <summary>The height above and below the rows, in pixels.</summary>
    public const int TopAndBottom = 62;

    private const int Top = 8;

    /// <summary>Makes a panel; row 0 is at the top.</summary>
    public static Plot New(string horizontal, int rows, int left, int right, int extraBelow = 0)
    {
        var plot = ChartStyle.NewPlot(horizontal, null);
        plot.Axes.Left.TickGenerator = new NumericManual();
        plot.Axes.Left.FrameLineStyle.Width = 0;
        plot.Axes.SetLimitsY(0, rows);
        plot.Layout.Fixed(new PixelPadding(left, right, TopAndBottom - Top + extraBelow, Top));
        for (var i = 1; i < rows; i++)
        {
            plot.Add.HorizontalLine(i, 1, ChartStyle.Guide);
        }

        return plot;
    }

    /// <summary>The lower edge of a row, as a place on the vertical axis.</summary>
    public static int Foot(int row, int rows) => rows - row - 1;

    /// <summary>Writes a row's name, cut in its middle where it is too long for the panel.</summary>
    public static void AddName(Plot plot, string name, double x, int foot, int width) =>
        ChartStyle.AddText(plot, ChartStyle.Shortened(name, width), x, foot + 0.94, Alignment.UpperLeft);

    /// <summary>Marks a value and its interval in a row.</summary>
    public static void AddPoint(Plot plot, ChartPoint point, int foot, Color colour, MarkerShape shape)
    {
        const double height = 0.27;
        const double cap = 0.17;
        if (point is { Lower: { } lower, Upper: { } upper })
        {
            ChartStyle.AddLine(plot, lower, foot + height, upper, foot + height, colour, 2);
            ChartStyle.AddLine(plot, lower, foot + height - cap, lower, foot + height + cap, colour, 2);
            ChartStyle.AddLine(plot, upper, foot + height - cap, upper, foot + height + cap, colour, 2);
        }

        ChartStyle.AddMarker(plot, point.Value, foot + height, colour, shape);
    }
}
