using ScottPlot;

namespace CompareBoards.Charts;

/// <summary>Finds room for short labels beside the marks of a plot, so that neither marks nor labels lie upon one
/// another while there is room at all.</summary>
internal sealed class LabelPlaces
{
    private const double Gap = 7;
    private const double DigitWidth = 9;
    private const double Height = 14;

    private static readonly (int Right, int Up, Alignment Alignment)[] Sides =
    [
        (1, 1, Alignment.LowerLeft),
        (1, -1, Alignment.UpperLeft),
        (-1, 1, Alignment.LowerRight),
        (-1, -1, Alignment.UpperRight),
    ];

    private readonly double unitsPerPixelX;
    private readonly double unitsPerPixelY;
    private readonly List<(double Left, double Right, double Bottom, double Top)> taken = [];

    /// <summary>Starts with the marks of a plot of a size in pixels that shows so much of either axis.</summary>
    public LabelPlaces(double spanX, double spanY, double width, double height, IEnumerable<(double X, double Y)> marks)
    {
        unitsPerPixelX = spanX / width;
        unitsPerPixelY = spanY / height;
        foreach (var (x, y) in marks)
        {
            var (px, py) = (x / unitsPerPixelX, y / unitsPerPixelY);
            taken.Add((px - Gap, px + Gap, py - Gap, py + Gap));
        }
    }

    /// <summary>The place of a label and how it hangs there.</summary>
    public (double X, double Y, Alignment Alignment) Next(string label, double x, double y)
    {
        var (px, py) = (x / unitsPerPixelX, y / unitsPerPixelY);
        var width = label.Length * DigitWidth;
        var all = new[] { Gap, 2.5 * Gap }.SelectMany(gap => Sides.Select(side => (side, gap)));
        foreach (var ((right, up, alignment), gap) in all)
        {
            var (left, bottom) = (right > 0 ? px + gap : px - gap - width, up > 0 ? py + gap : py - gap - Height);
            var box = (left, left + width, bottom, bottom + Height);
            if (left >= 0 && bottom >= 0 && !taken.Exists(other => Overlap(box, other)))
            {
                taken.Add(box);
                return ((px + right * gap) * unitsPerPixelX, (py + up * gap) * unitsPerPixelY, alignment);
            }
        }

        return (x + Gap * unitsPerPixelX, y + Gap * unitsPerPixelY, Alignment.LowerLeft);
    }

    private static bool Overlap(
        (double Left, double Right, double Bottom, double Top) a,
        (double Left, double Right, double Bottom, double Top) b
    ) => a.Left < b.Right && b.Left < a.Right && a.Bottom < b.Top && b.Bottom < a.Top;
}
