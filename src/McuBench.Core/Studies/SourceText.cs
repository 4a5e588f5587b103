using System.Text;
using System.Text.Unicode;

namespace McuBench.Core.Studies;

/// <summary>Takes in a file whole, within the limit, as UTF-8; says what it is when it is something else.</summary>
internal static class SourceText
{
    private const int FirstRead = 64 * 1024;

    /// <summary>The bytes without their byte order mark, or null after a fault.</summary>
    public static ReadOnlyMemory<byte>? Read(Stream stream, string sourceName, FaultList faults)
    {
        var all = ReadAll(stream);
        if (all.Length > StudyLimits.FileBytes)
        {
            faults.Add(
                new StudyFault(
                    sourceName,
                    FormattableString.Invariant($"The file is larger than {StudyLimits.FileBytes} bytes."),
                    "Split the study, or keep its trials in tables beside it."
                )
            );
            return null;
        }

        return Checked(all, sourceName, faults);
    }

    /// <summary>The line and character, both from 1, of a byte of UTF-8 text. O(n).</summary>
    public static (int Line, int Column) Position(ReadOnlySpan<byte> text, int offset)
    {
        var before = text[..Math.Min(offset, text.Length)];
        var lineStart = before.LastIndexOf((byte)'\n') + 1;
        return (before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1);
    }

    private static ReadOnlyMemory<byte>? Checked(ReadOnlyMemory<byte> all, string sourceName, FaultList faults)
    {
        if (Foreign(all.Span) is { } foreign)
        {
            faults.Add(new StudyFault(sourceName, $"The file is {foreign}.", "Save it as plain text in UTF-8."));
            return null;
        }

        var text = all.Span.StartsWith(Encoding.UTF8.Preamble) ? all[Encoding.UTF8.Preamble.Length..] : all;
        if (text.Span.Trim(" \t\r\n"u8).IsEmpty)
        {
            faults.Add(new StudyFault(sourceName, "The file is empty.", "Was its writing cut short?"));
            return null;
        }

        if (!Utf8.IsValid(text.Span))
        {
            var offset = FirstInvalid(text.Span);
            var (line, column) = Position(text.Span, offset);
            faults.Add(
                new StudyFault(sourceName, "The text is not valid UTF-8.", "Save it as UTF-8.")
                {
                    Line = line,
                    Column = column,
                    Offending = FormattableString.Invariant($"byte {text.Span[offset]:X2}"),
                }
            );
            return null;
        }

        return text;
    }

    // The first character of a study or a table is plain ASCII, so zeros among the first four bytes give UTF-16 and
    // UTF-32 away even where the byte order mark is missing.
    private static string? Foreign(ReadOnlySpan<byte> bytes) =>
        bytes switch
        {
            [0xFF, 0xFE, 0, 0, ..] or [0, 0, 0xFE, 0xFF, ..] or [0, 0, 0, > 0, ..] or [> 0, 0, 0, 0, ..] =>
                "encoded in UTF-32",
            [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] or [0, > 0, ..] or [> 0, 0, ..] => "encoded in UTF-16",
            [0x1F, 0x8B, ..] or [(byte)'P', (byte)'K', 3, 4, ..] => "compressed, and nothing is unpacked here",
            _ => null,
        };

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var offset = 0;
        while (
            offset < text.Length
            && Rune.DecodeFromUtf8(text[offset..], out _, out var length) == System.Buffers.OperationStatus.Done
        )
        {
            offset += length;
        }

        return Math.Min(offset, text.Length - 1);
    }

    /// <summary>Reads to the end, or one byte past the limit.</summary>
    private static ReadOnlyMemory<byte> ReadAll(Stream stream)
    {
        var buffer = new byte[FirstRead];
        var filled = 0;
        while (filled <= StudyLimits.FileBytes)
        {
            if (filled == buffer.Length)
            {
                Array.Resize(ref buffer, (int)Math.Min(buffer.Length * 2L, StudyLimits.FileBytes + 1L));
            }

            var read = stream.Read(buffer, filled, buffer.Length - filled);
            if (read == 0)
            {
                break;
            }

            filled += read;
        }

        return buffer.AsMemory(0, filled);
    }
}
