using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>Says in this library's words where and why a text is no JSON.</summary>
internal static class JsonSyntax
{
    private static readonly SearchValues<byte> WordEnds = SearchValues.Create(" \t\r\n,:]}\""u8);

    /// <summary>Adds the fault that stopped a reader.</summary>
    /// <param name="faults">Where to.</param>
    /// <param name="broken">What the reader threw.</param>
    /// <param name="depth">How deep the reader stood.</param>
    /// <param name="path">The path it had come to.</param>
    public static void Explain(JsonFaults faults, JsonException broken, int depth, string path)
    {
        var json = faults.Json.Span;
        var offset = OffsetOf(json, broken);
        var (problem, mend) = Diagnose(json, offset, depth);
        var offending = offset < json.Length ? Shown(json[offset..]) : null;
        faults.Add(path, offset, offending, problem, mend);
    }

    private static (string Problem, string Mend) Diagnose(ReadOnlySpan<byte> json, int offset, int depth)
    {
        var rest = json[offset..];
        if (IsCutShort(rest, depth))
        {
            return ("The file ends before the study does.", "Was it cut short? Fetch or write it again.");
        }

        var before = json[..offset].TrimEnd(" \t\r\n"u8);
        return (char)rest[0] switch
        {
            '{' or '[' when IsTooDeep(json, offset) => (
                string.Create(CultureInfo.InvariantCulture, $"Nesting is deeper than {StudyLimits.NestingDepth}."),
                "A study needs no more than 6."
            ),
            _ when before.IsEmpty => ("The file is not JSON.", "A study begins with {."),
            _ when depth == 0 => ($"{Named(rest)} follows the end of the study.", "Take it away."),
            '/' => ("Comments are not allowed in JSON.", "Say it in a description instead."),
            ']' or '}' when before.EndsWith(","u8) => ("Nothing follows the last comma.", "Take the comma away."),
            '\'' => ("Texts stand between double quotation marks.", "Write \" for '."),
            < ' ' => ("A control character stands inside a text.", "Take it away, or close the text before it."),
            _ when json[..offset].EndsWith("\\"u8) => (
                "The character after \\ makes no escape that JSON knows.",
                "Write \\\\ for a backslash."
            ),
            'N' or 'n' or 'I' or 'i' or '+' or '.' => (
                $"{Named(rest)} is no JSON value.",
                "Numbers are plain digits; NaN and infinity are no numbers; what is unknown is left out."
            ),
            _ => ($"{Named(rest)} can't stand here.", "Look for a missing comma, colon or quotation mark."),
        };
    }

    // A reader that may go one level deeper finds nothing wrong with the bracket.
    private static bool IsTooDeep(ReadOnlySpan<byte> json, int offset)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = StudyLimits.NestingDepth + 1 });
        try
        {
            while (reader.Read() && reader.TokenStartIndex < offset) { }
        }
        catch (JsonException)
        {
            return false;
        }

        return reader.TokenStartIndex == offset;
    }

    // What the reader couldn't finish is at the end, or is a comma, a text or a word that runs to the end.
    private static bool IsCutShort(ReadOnlySpan<byte> rest, int depth)
    {
        rest = rest.Trim(" \t\r\n"u8);
        return rest.IsEmpty
            || (rest is [(byte)','] && depth > 0)
            || (rest[0] == (byte)'"' && !rest[1..].ContainsAny("\"\n"u8))
            || "true"u8.StartsWith(rest)
            || "false"u8.StartsWith(rest)
            || "null"u8.StartsWith(rest);
    }

    private static int OffsetOf(ReadOnlySpan<byte> json, JsonException broken)
    {
        var offset = 0;
        for (var line = broken.LineNumber ?? 0; line > 0; line--)
        {
            offset += json[offset..].IndexOf((byte)'\n') + 1;
        }

        offset = (int)Math.Min(offset + (broken.BytePositionInLine ?? 0), json.Length);

        // In a word that is neither true, false nor null the reader stands at the first letter that differs.
        while (offset > 0 && offset < json.Length && IsLetter(json[offset]) && IsLetter(json[offset - 1]))
        {
            offset--;
        }

        return offset;

        static bool IsLetter(byte b) => char.IsAsciiLetter((char)b);
    }

    private static string Named(ReadOnlySpan<byte> rest) =>
        rest[0] == (byte)'"' ? Excerpt.Of(Shown(rest)) : Excerpt.Quoted(Shown(rest));

    // The word, or the text between quotation marks, that begins here.
    private static string Shown(ReadOnlySpan<byte> rest)
    {
        var end = rest[0] == (byte)'"' ? rest[1..].IndexOf((byte)'"') + 1 : rest[1..].IndexOfAny(WordEnds);
        var word = end < 0 ? rest : rest[..(end + 1)];
        return Encoding.UTF8.GetString(word[..Math.Min(word.Length, Excerpt.MaxLength)]);
    }
}
