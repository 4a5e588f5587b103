using System.Diagnostics.CodeAnalysis;
using System.Text.Json;

namespace McuBench.Core.Studies.Json;

/// <summary>The reader's text or property name, whatever escapes it holds. The reader's own methods throw where an escape
/// is half of a surrogate pair, which the grammar of JSON allows.</summary>
internal static class ReaderText
{
    /// <summary>The text, or false where it holds half of a surrogate pair.</summary>
    public static bool TryGetText(this ref Utf8JsonReader reader, [NotNullWhen(true)] out string? text)
    {
        try
        {
            text = reader.GetString()!;
            return true;
        }
        catch (InvalidOperationException)
        {
            text = null;
            return false;
        }
    }

    /// <summary>Whether the text is this one.</summary>
    public static bool Is(this ref Utf8JsonReader reader, string text) =>
        reader.ValueIsEscaped
            ? reader.TryGetText(out var given) && string.Equals(given, text, StringComparison.Ordinal)
            : reader.ValueTextEquals(text);
}
