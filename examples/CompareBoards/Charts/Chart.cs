using System.Text;
using ScottPlot;
using SkiaSharp;

namespace CompareBoards.Charts;

/// <summary>A finished chart: one plot, or several beside or below one another.</summary>
public sealed class Chart
{
    private const int PixelRatio = 3;
    private readonly IReadOnlyList<(Plot Plot, PixelRect Place)> plots;

    /// <summary>Makes a chart of plots.</summary>
    /// <param name="name">Its name, fit for a file.</param>
    /// <param name="caption">What it shows and how to read it.</param>
    /// <param name="description">What it says, for those who can't see it.</param>
    /// <param name="plots">The plots and their places, in pixels.</param>
    public Chart(
        string name,
        string caption,
        string description,
        params IReadOnlyList<(Plot Plot, PixelRect Place)> plots
    )
    {
        Name = name;
        Caption = caption;
        Description = description;
        this.plots = plots;
    }

    /// <summary>Its name, fit for a file.</summary>
    public string Name { get; }

    /// <summary>What it shows and how to read it.</summary>
    public string Caption { get; }

    /// <summary>What it says, for those who can't see it.</summary>
    public string Description { get; }

    /// <summary>The name of the workload that it is of, or null.</summary>
    public string? Workload { get; private init; }

    /// <summary>The same chart under another name, of a workload.</summary>
    public Chart Placed(string name, string workload) => new(name, Caption, Description, plots) { Workload = workload };

    private int Width => (int)plots.Max(plot => plot.Place.Right);

    private int Height => (int)plots.Max(plot => plot.Place.Bottom);

    /// <summary>The chart as a picture of points, three to a pixel so that it prints well.</summary>
    public byte[] ToPng()
    {
        using var bitmap = new SKBitmap(Width * PixelRatio, Height * PixelRatio);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale(PixelRatio);
            Draw(canvas);
        }

        using var png = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    /// <summary>The chart as drawing instructions. Its letters are text, which any font of like width can show.</summary>
    public string ToSvg()
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, Height), stream))
        {
            canvas.Clear(SKColors.White);
            Draw(canvas);
        }

        return SvgText.Finished(Encoding.UTF8.GetString(stream.ToArray()), Name, Description);
    }

    private void Draw(SKCanvas canvas)
    {
        foreach (var (plot, place) in plots)
        {
            // The canvas is white already, and clearing it again would wipe out the plot before. The library draws a plot
            // that it hasn't laid out yet twice, the second time over the first, so it is laid out elsewhere before.
            plot.RenderManager.ClearCanvasBeforeEachRender = false;
            plot.RenderInMemory((int)place.Width, (int)place.Height);
            plot.Render(canvas, place);
        }
    }
}
