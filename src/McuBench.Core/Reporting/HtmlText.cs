using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>Text as it stands in HTML, between tags and in quoted attributes alike.</summary>
internal static class HtmlText
{
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),
                _ when char.IsControl(c) => escaped.Append(' '),
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }
}
