using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using McuBench.Core.Studies.Json;

namespace McuBench.Core.Studies;

/// <summary>Reads and writes studies as JSON.</summary>
/// <remarks>
/// <para>
/// The format is plain JSON in UTF-8, version <see cref="Version"/>: no comments, no trailing commas, a byte order mark
/// accepted. Quantities are texts with their unit ("160 MHz"); what is absent or unknown is left out, never null; a
/// property that the format does not know is a fault, and so is one that stands twice. Limits are those of
/// <see cref="StudyLimits"/>. A JSON Schema of the format, study.schema.json, comes with the package.
/// </para>
/// <para>Trials and supply readings stand in the document, or in tables beside it that the document names.</para>
/// <para>Safe to use from many threads. Reading and writing cost O(n) in the size of the file.</para>
/// </remarks>
public static class StudyJson
{
    /// <summary>What the property "format" of every study says.</summary>
    public const string FormatName = "McuBench study";

    /// <summary>The version of the format that is written, and the only one that is read.</summary>
    public const int Version = 1;

    // The file is not for pasting into a web page, and "µ" and "<" are easier to read than their escapes.
    private static readonly JsonSerializerOptions Plain = new(StudyJsonContext.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly StudyJsonContext Writing = new(Plain);

    /// <summary>Reads a study in which nothing is wrong.</summary>
    /// <param name="json">The document. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="openTable">Opens a table that the study refers to, given its path relative to the study; the reader
    /// closes it. Where there is none, such a reference is a fault.</param>
    /// <exception cref="StudyFormatException">Something is wrong; all faults are listed.</exception>
    public static Study Read(Stream json, string sourceName, Func<string, Stream>? openTable = null) =>
        ReadWithFaults(json, sourceName, openTable).OrThrow();

    /// <summary>Reads a study in which nothing is wrong.</summary>
    /// <param name="json">The document's text. Half of a surrogate pair in it counts as U+FFFD.</param>
    /// <param name="sourceName">What faults are to call it.</param>
    /// <param name="openTable">Opens a table that the study refers to.</param>
    /// <exception cref="StudyFormatException">Something is wrong; all faults are listed.</exception>
    public static Study Read(string json, string sourceName, Func<string, Stream>? openTable = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(json), writable: false);
        return Read(stream, sourceName, openTable);
    }

    /// <summary>Reads whatever is right of a study, and says all that is wrong.</summary>
    /// <param name="json">The document. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="openTable">Opens a table that the study refers to, given its path relative to the study; the reader
    /// closes it. Where there is none, such a reference is a fault.</param>
    public static StudyReadResult ReadWithFaults(Stream json, string sourceName, Func<string, Stream>? openTable = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentException.ThrowIfNullOrEmpty(sourceName);
        var faults = new FaultList();
        if (SourceText.Read(json, sourceName, faults) is not { } text)
        {
            return new StudyReadResult(null, faults, 0, 0);
        }

        var jsonFaults = new JsonFaults(text, sourceName, faults);
        return StudyDocument.Read(jsonFaults) is { } document
            ? new StudyAssembler(document, jsonFaults, openTable).Assemble()
            : new StudyReadResult(null, faults, 0, 0);
    }

    /// <summary>Writes a study: indented, in UTF-8 without byte order mark, lines ended by LF, properties in the
    /// format's order, quantities exact. Equal studies give equal bytes.</summary>
    /// <param name="json">Where to. It stays open.</param>
    /// <param name="study">The study.</param>
    /// <param name="tables">Which lists are left to tables, that the caller writes with <see cref="TrialCsv"/> and
    /// <see cref="ReadingCsv"/>; all stand in the document where it is absent.</param>
    public static void Write(Stream json, Study study, StudyTables? tables = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(study);
        JsonSerializer.Serialize(json, TransferWriting.Of(study, tables ?? new StudyTables()), Writing.Document);
        json.Write("\n"u8);
    }
}
