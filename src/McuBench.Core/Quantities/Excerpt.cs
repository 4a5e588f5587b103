using System.Globalization;
using System.Text;

namespace McuBench.Core.Quantities;

/// <summary>Text from outside made safe to stand in a message: short, on one line, with nothing invisible in it.</summary>
internal static class Excerpt
{
    /// <summary>As many characters of the text are shown.</summary>
    public const int MaxLength = 40;

    /// <summary>The text, cut after 40 characters with an ellipsis, and escaped.</summary>
    public static string Of(ReadOnlySpan<char> text)
    {
        var shown = text.Length > MaxLength ? text[..MaxLength] : text;
        var result = new StringBuilder(shown.Length);
        foreach (var rune in shown.EnumerateRunes())
        {
            if (rune == Rune.ReplacementChar || IsUnsafe(rune))
            {
                result.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            }
            else
            {
                result.Append(rune.ToString());
            }
        }

        return text.Length > MaxLength ? result.Append('\u2026').ToString() : result.ToString();
    }

    /// <summary>The excerpt between quotation marks.</summary>
    public static string Quoted(ReadOnlySpan<char> text) => $"\"{Of(text)}\"";

    private static bool IsUnsafe(Rune rune) =>
        Rune.GetUnicodeCategory(rune)
            is UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.PrivateUse
                or UnicodeCategory.OtherNotAssigned;
}
