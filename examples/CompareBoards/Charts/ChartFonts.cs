using ScottPlot;
using SkiaSharp;

namespace CompareBoards.Charts;

/// <summary>Finds a font to draw with. Without one the plotting library draws charts whose every word is missing, and
/// says nothing.</summary>
public static class ChartFonts
{
    /// <summary>What the charts must be able to write, names of setups apart.</summary>
    private const string Needed = "AZaz09 %µ−±×·…";

    /// <summary>Sans-serif families that are common on bare systems, best first.</summary>
    private static readonly string[] Preferred =
    [
        "DejaVu Sans",
        "Noto Sans",
        "Liberation Sans",
        "Open Sans",
        "Segoe UI",
        "Helvetica Neue",
        "Arial",
        "Verdana",
    ];

    /// <summary>The family that charts are drawn in, or null where this system has no font with the letters needed. Asking
    /// for it makes the plotting library draw in it.</summary>
    public static string? Family { get; } = Find(SKFontManager.Default);

    private static string? Find(SKFontManager fonts)
    {
        var installed = fonts.FontFamilies.ToArray();
        var family = Preferred
            .Concat(installed.Order(StringComparer.Ordinal))
            .Where(name => installed.Contains(name, StringComparer.OrdinalIgnoreCase))
            .FirstOrDefault(name => CanWrite(fonts, name));
        if (family is not null)
        {
            Fonts.Default = family;
            Fonts.Sans = family;
        }

        return family;
    }

    private static bool CanWrite(SKFontManager fonts, string family)
    {
        using var typeface = fonts.MatchFamily(family);
        return typeface is not null && typeface.ContainsGlyphs(Needed);
    }
}
