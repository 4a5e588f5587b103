using System.Globalization;
using System.Xml.Linq;

namespace CompareBoards.Charts;

/// <summary>Makes the drawing library's SVG fit to stand inside a page.</summary>
internal static class SvgText
{
    private const string BeforeReference = "url(#";

    /// <summary>Gives the drawing a size that follows its place, ids of its own, a title, and more than one font to
    /// choose from.</summary>
    public static string Finished(string svg, string name, string title)
    {
        var root = XDocument.Parse(svg, LoadOptions.PreserveWhitespace).Root!;
        var titleId = $"{name}-title";
        root.SetAttributeValue("viewBox", $"0 0 {root.Attribute("width")!.Value} {root.Attribute("height")!.Value}");
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("aria-labelledby", titleId);

        // The library counts its ids on from drawing to drawing, and several drawings may share one page.
        var ids = root.Descendants()
            .Select(element => element.Attribute("id")?.Value)
            .OfType<string>()
            .Distinct(StringComparer.Ordinal)
            .Select((id, i) => (id, Own: string.Create(CultureInfo.InvariantCulture, $"{name}-{i}")))
            .ToDictionary(pair => pair.id, pair => pair.Own, StringComparer.Ordinal);
        foreach (var attribute in root.Descendants().SelectMany(element => element.Attributes()))
        {
            attribute.Value = Mended(attribute, ids);
        }

        root.AddFirst(new XElement(root.Name.Namespace + "title", new XAttribute("id", titleId), title));
        return root.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static string Mended(XAttribute attribute, Dictionary<string, string> ids) =>
        attribute.Name.LocalName switch
        {
            "id" => ids[attribute.Value],
            "href" when attribute.Value.StartsWith('#') => $"#{ids[attribute.Value[1..]]}",
            "clip-path" or "fill" when attribute.Value.StartsWith(BeforeReference, StringComparison.Ordinal) =>
                $"{BeforeReference}{ids[attribute.Value[BeforeReference.Length..^1]]})",

            // The library ends its lists of places with a comma, which a reader of SVG may refuse.
            "x" or "y" => attribute.Value.TrimEnd(',', ' '),
            "font-family" => $"{attribute.Value}, Verdana, sans-serif",
            _ => attribute.Value,
        };
}
