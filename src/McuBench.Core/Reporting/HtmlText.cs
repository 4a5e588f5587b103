using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>Text as it stands in HTML, between tags and in quoted attributes alike.</summary>
internal static class HtmlText
{
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),

                // A percent sign stays with its number where a line ends.
                ' ' when i + 1 < text.Length && text[i + 1] == '%' => escaped.Append('\u00A0'),
                _ when char.IsControl(c) => escaped.Append(' '),
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }
}
