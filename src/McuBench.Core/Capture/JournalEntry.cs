using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using McuBench.Core.Studies;
using McuBench.Core.Studies.Json;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Capture;

/// <summary>What a journal's lines say, as JSON: the study's own format, a trial or reading at a time.</summary>
internal static class JournalEntry
{
    /// <summary>The version of the format that is written, and the only one that is read.</summary>
    public const int Version = 1;

    private static readonly StudyJsonContext Compact = new(
        new JsonSerializerOptions(StudyJsonContext.Default.Options)
        {
            WriteIndented = false,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>How the first entry begins: the version, then the study without its trials and readings.</summary>
    private static ReadOnlySpan<byte> FrameHead => "\"journal\":1,\"frame\":"u8;

    public static byte[] OfFrame(Study frame) =>
        [
            .. FrameHead,
            .. JsonSerializer.SerializeToUtf8Bytes(TransferWriting.Of(frame, new StudyTables()), Compact.Document),
        ];

    public static byte[] Of(Trial trial) =>
        [.. "\"trial\":"u8, .. JsonSerializer.SerializeToUtf8Bytes(TransferWriting.Of(trial), Compact.Trial)];

    public static byte[] Of(SupplyReading reading) =>
        [.. "\"reading\":"u8, .. JsonSerializer.SerializeToUtf8Bytes(TransferWriting.Of(reading), Compact.Reading)];

    public static byte[] OfNote(string note) =>
        [.. "\"note\":"u8, .. JsonSerializer.SerializeToUtf8Bytes(note, Compact.String)];

    /// <summary>The frame's JSON, or nothing where the entry is another.</summary>
    public static ReadOnlyMemory<byte>? Frame(ReadOnlyMemory<byte> entry) => Behind(FrameHead, entry);

    public static ReadOnlyMemory<byte>? Trial(ReadOnlyMemory<byte> entry) => Behind("\"trial\":"u8, entry);

    public static ReadOnlyMemory<byte>? Reading(ReadOnlyMemory<byte> entry) => Behind("\"reading\":"u8, entry);

    public static string? Note(ReadOnlyMemory<byte> entry) =>
        Behind("\"note\":"u8, entry) is { } text ? JsonSerializer.Deserialize(text.Span, Compact.String) : null;

    /// <summary>The JSON of the study: its frame with the lists put in. O(n).</summary>
    public static byte[] Joined(
        ReadOnlyMemory<byte> frame,
        IEnumerable<ReadOnlyMemory<byte>> trials,
        IEnumerable<ReadOnlyMemory<byte>> readings
    )
    {
        var json = new ArrayBufferWriter<byte>(64 * 1024);
        json.Write(frame.Span[..(frame.Span.LastIndexOf((byte)'}'))]);
        Put(json, ",\"trials\":["u8, trials);
        Put(json, "],\"readings\":["u8, readings);
        json.Write("]}"u8);
        return json.WrittenSpan.ToArray();
    }

    private static void Put(
        ArrayBufferWriter<byte> json,
        ReadOnlySpan<byte> head,
        IEnumerable<ReadOnlyMemory<byte>> items
    )
    {
        json.Write(head);
        var isFirst = true;
        foreach (var item in items)
        {
            json.Write(isFirst ? default : ","u8);
            json.Write(item.Span);
            isFirst = false;
        }
    }

    private static ReadOnlyMemory<byte>? Behind(ReadOnlySpan<byte> head, ReadOnlyMemory<byte> entry) =>
        entry.Span.StartsWith(head) ? entry[head.Length..] : default(ReadOnlyMemory<byte>?);
}
