using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace CompareBoards.Charts;

/// <summary>What the charts have in common: ink, letters, markers and axes.</summary>
/// <remarks>
/// The colours are those that Okabe and Ito published for readers with any kind of colour vision, without the yellow,
/// which vanishes on white. Every colour goes with a marker of its own, so that grey prints can be read too.
/// </remarks>
public static class ChartStyle
{
    /// <summary>The width of a chart in pixels: at a phone's 390 its letters still are about 10 pixels high.</summary>
    public const int Width = 480;

    /// <summary>The size of most letters, in pixels.</summary>
    public const float TextSize = 12.5f;

    /// <summary>The size of a marker: small, so that the interval beside it shows.</summary>
    public const float MarkerSize = 8;

    /// <summary>The colour of letters and axes.</summary>
    public static readonly Color Ink = Color.FromHex("#222222");

    /// <summary>The colour of lines that guide the eye.</summary>
    public static readonly Color Guide = Color.FromHex("#E4E4E4");

    private static readonly Color[] Colours =
    [
        Color.FromHex("#0072B2"),
        Color.FromHex("#D55E00"),
        Color.FromHex("#009E73"),
        Color.FromHex("#CC79A7"),
        Color.FromHex("#000000"),
        Color.FromHex("#E69F00"),
        Color.FromHex("#56B4E9"),
    ];

    private static readonly (MarkerShape Filled, MarkerShape Open)[] Shapes =
    [
        (MarkerShape.FilledCircle, MarkerShape.OpenCircle),
        (MarkerShape.FilledSquare, MarkerShape.OpenSquare),
        (MarkerShape.FilledTriangleUp, MarkerShape.OpenTriangleUp),
        (MarkerShape.FilledDiamond, MarkerShape.OpenDiamond),
        (MarkerShape.FilledTriangleDown, MarkerShape.OpenTriangleDown),
    ];

    /// <summary>A colour with its marker. Seven colours and five shapes make 35 looks; then they begin anew.</summary>
    public static (Color Colour, MarkerShape Filled, MarkerShape Open) Look(int number)
    {
        var (filled, open) = Shapes[number % Shapes.Length];
        return (Colours[number % Colours.Length], filled, open);
    }

    /// <summary>An empty plot with two axes and nothing else.</summary>
    public static Plot NewPlot(string horizontal, string? vertical)
    {
        // The plotting library takes its font from a setting of the whole process, which must stand before the first plot.
        _ = ChartFonts.Family;
        var plot = new Plot();
        plot.FigureBackground.Color = Colors.Transparent;
        plot.DataBackground.Color = Colors.Transparent;
        plot.Grid.MajorLineColor = Guide;
        plot.Grid.MajorLineWidth = 1;
        plot.Axes.Color(Ink);
        plot.Axes.Top.IsVisible = false;
        plot.Axes.Right.IsVisible = false;
        plot.XLabel(horizontal, TextSize);
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Bottom.TickLabelStyle.FontSize = TextSize;
        plot.Axes.Left.TickLabelStyle.FontSize = TextSize;
        if (vertical is not null)
        {
            plot.YLabel(vertical, TextSize);
            plot.Axes.Left.Label.Bold = false;
        }

        plot.HideLegend();
        return plot;
    }

    /// <summary>Adds a marker. An open one hides what is behind it, so that it can be told from a filled one where lines
    /// cross it.</summary>
    public static void AddMarker(
        Plot plot,
        double x,
        double y,
        Color colour,
        MarkerShape shape,
        float size = MarkerSize
    )
    {
        ArgumentNullException.ThrowIfNull(plot);
        foreach (var (filled, open) in Shapes)
        {
            if (shape == open)
            {
                _ = plot.Add.Marker(x, y, filled, size, Colors.White);
            }
        }

        var marker = plot.Add.Marker(x, y, shape, size, colour);
        marker.MarkerLineWidth = 1.5f;
        marker.MarkerLineColor = colour;
    }

    /// <summary>Adds a straight line.</summary>
    public static void AddLine(
        Plot plot,
        double x1,
        double y1,
        double x2,
        double y2,
        Color colour,
        float width,
        LinePattern? pattern = null
    )
    {
        ArgumentNullException.ThrowIfNull(plot);

        // The drawing library complains of dashes along no length.
        if (x1 == x2 && y1 == y2)
        {
            return;
        }

        var line = plot.Add.Line(x1, y1, x2, y2);
        line.LineColor = colour;
        line.LineWidth = width;
        line.LinePattern = pattern ?? LinePattern.Solid;
    }

    /// <summary>Adds words at a place.</summary>
    public static void AddText(Plot plot, string words, double x, double y, Alignment alignment, Color? colour = null)
    {
        ArgumentNullException.ThrowIfNull(plot);
        var text = plot.Add.Text(words, x, y);
        text.LabelFontSize = TextSize;
        text.LabelFontColor = colour ?? Ink;
        text.LabelBackgroundColor = Colors.White;
        text.LabelAlignment = alignment;
    }

    /// <summary>A round scale from 0 to above the largest value: its end, its ticks, and the prefix that keeps their
    /// numbers short.</summary>
    public static (double End, NumericManual Ticks, string Prefix) FromZero(double largest, int mostTicks = 6)
    {
        var (factor, prefix) = Prefix(largest);
        var step = NiceStep(largest / factor / mostTicks);
        var count = (int)Math.Ceiling(largest / factor / step * (1 + 1e-9));
        var positions = Enumerable.Range(0, count + 1).Select(i => i * step).ToArray();
        var labels = positions.Select(p => Math.Round(p, 9).ToString("0.#########", CultureInfo.InvariantCulture));
        return (count * step * factor, new NumericManual([.. positions.Select(p => p * factor)], [.. labels]), prefix);
    }

    /// <summary>A name cut in its middle where it is too long for a width in pixels, since names of one family differ
    /// at their ends.</summary>
    public static string Shortened(string name, double width)
    {
        ArgumentNullException.ThrowIfNull(name);
        using var font = new SKFont(Fonts.GetTypeface(Fonts.Default, bold: false, italic: false), TextSize);
        var shown = name;
        for (var kept = name.Length - 1; kept > 1 && font.MeasureText(shown) > width; kept--)
        {
            shown = $"{name[..(kept - kept / 2)].TrimEnd()}…{name[^(kept / 2)..].TrimStart()}";
        }

        return shown;
    }

    /// <summary>Values in words, to three digits, for those who can't see where they stand.</summary>
    public static string Listed(IEnumerable<(string Name, double Value)> values, string unit) =>
        string.Join(
            ", ",
            values.Select(value =>
            {
                var (factor, prefix) = Prefix(Math.Abs(value.Value));
                var shown = value.Value / factor;
                var digits = Math.Abs(shown) switch
                {
                    < 10 => "0.00",
                    < 100 => "0.0",
                    _ => "0",
                };
                return $"{value.Name} {shown.ToString(digits, CultureInfo.InvariantCulture)} {prefix}{unit}";
            })
        );

    private static (double Factor, string Prefix) Prefix(double largest) =>
        largest switch
        {
            >= 1e9 => (1e9, "G"),
            >= 1e6 => (1e6, "M"),
            >= 1e3 => (1e3, "k"),
            >= 1 or <= 0 => (1, ""),
            >= 1e-3 => (1e-3, "m"),
            >= 1e-6 => (1e-6, "µ"),
            _ => (1e-9, "n"),
        };

    /// <summary>The smallest of 1, 2 and 5 times a power of ten that is not below a step.</summary>
    public static double NiceStep(double least)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(least)));
        foreach (var factor in (ReadOnlySpan<double>)[1, 2, 5])
        {
            if (decade * factor >= least * (1 - 1e-9))
            {
                return decade * factor;
            }
        }

        return decade * 10;
    }
}
