namespace McuBench.Core.Studies.Tables;

/// <summary>
/// Fields as they stand between delimiters, and their text: quotation marks around a field that holds a delimiter, a
/// quotation mark (doubled) or a line break; and an apostrophe before a text that a spreadsheet would run as a formula.
/// </summary>
internal static class FieldText
{
    // What makes a spreadsheet take a text for a formula; the apostrophe itself, so that one in earnest survives.
    private const string Guarded = "=+-@'";

    /// <summary>Takes the quotation marks off a field, or the white space around one without.</summary>
    /// <returns>Null where quotation marks stand neither around the field nor doubled inside it.</returns>
    public static string? Unquote(ReadOnlySpan<char> field)
    {
        var trimmed = field.Trim();
        if (!trimmed.Contains('"'))
        {
            return trimmed.ToString();
        }

        if (trimmed.Length < 2 || trimmed[0] != '"' || trimmed[^1] != '"')
        {
            return null;
        }

        var inside = trimmed[1..^1];
        var text = new System.Text.StringBuilder(inside.Length);
        for (var i = 0; i < inside.Length; i++)
        {
            if (inside[i] == '"' && (++i == inside.Length || inside[i] != '"'))
            {
                return null;
            }

            text.Append(inside[i]);
        }

        return text.ToString();
    }

    /// <summary>Whether a field begins with a quotation mark that nothing closes.</summary>
    public static bool IsUnclosed(ReadOnlySpan<char> field) =>
        field.TrimStart() is ['"', ..] && field.Count('"') % 2 == 1;

    /// <summary>A name or note as a field, guarded and quoted as needed.</summary>
    public static string Of(string text, CsvOptions options)
    {
        var guarded = Guarded.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;
        var needsQuotes =
            guarded.AsSpan().ContainsAny('"', '\r', '\n')
            || guarded.Contains(options.Delimiter, StringComparison.Ordinal)
            || guarded[0] == '#';
        return needsQuotes ? $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : guarded;
    }

    /// <summary>A text without the apostrophe that guards it.</summary>
    public static string Unguarded(string text) =>
        text is ['\'', var next, ..] && Guarded.Contains(next, StringComparison.Ordinal) ? text[1..] : text;
}
