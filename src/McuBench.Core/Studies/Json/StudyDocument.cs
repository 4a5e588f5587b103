using System.Text.Json;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>
/// A JSON study as read and checked for shape, its texts not yet understood. Elements with a fault are left out; where
/// the document breaks off, what came before is kept.
/// </summary>
internal sealed class StudyDocument
{
    private static readonly JsonReaderOptions Options = new() { MaxDepth = StudyLimits.NestingDepth };

    private readonly JsonFaults faults;
    private readonly PathStack path = new();
    private readonly ShapeCheck check;
    private readonly Dictionary<string, IElementList> lists;

    private StudyDocument(JsonFaults faults)
    {
        this.faults = faults;
        check = new ShapeCheck(faults, path);
        lists = new(StringComparer.Ordinal)
        {
            ["boards"] = Boards,
            ["setups"] = Setups,
            ["workloads"] = Workloads,
            ["timers"] = Timers,
            ["meters"] = Meters,
            ["trials"] = Trials,
            ["readings"] = Readings,
            ["trialFiles"] = TrialFiles,
            ["readingFiles"] = ReadingFiles,
        };
    }

    public string? Title { get; private set; }

    public string? Description { get; private set; }

    public bool Invented { get; private set; }

    public ElementList<StudyTransfer.Board> Boards { get; } = new();

    public ElementList<StudyTransfer.Setup> Setups { get; } = new();

    public ElementList<StudyTransfer.Workload> Workloads { get; } = new();

    public ElementList<StudyTransfer.Timer> Timers { get; } = new();

    public ElementList<StudyTransfer.Meter> Meters { get; } = new();

    public ElementList<StudyTransfer.Trial> Trials { get; } = new();

    public ElementList<StudyTransfer.Reading> Readings { get; } = new();

    public ElementList<StudyTransfer.Table> TrialFiles { get; } = new();

    public ElementList<StudyTransfer.Table> ReadingFiles { get; } = new();

    /// <summary>Reads the document; null where it is no study of a version known here.</summary>
    public static StudyDocument? Read(JsonFaults faults)
    {
        if (!IsKnown(faults))
        {
            return null;
        }

        var document = new StudyDocument(faults);
        var reader = new Utf8JsonReader(faults.Json.Span, Options);
        try
        {
            reader.Read();
            document.ReadRoot(ref reader);
            reader.Read();
        }
        catch (JsonException broken)
        {
            JsonSyntax.Explain(faults, broken, reader.CurrentDepth, document.path.ToString());
            foreach (var list in document.lists.Values)
            {
                list.IsIncomplete = true;
            }
        }

        return document;
    }

    /// <summary>Looks at marker and version before all else, wherever they stand: in a file of another sort every other
    /// fault would be noise.</summary>
    private static bool IsKnown(JsonFaults faults)
    {
        var reader = new Utf8JsonReader(faults.Json.Span, Options);
        try
        {
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
            {
                faults.Add("$", (int)reader.TokenStartIndex, null, "The document must be an object.", "Write { … }.");
                return false;
            }

            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                var isFormat = reader.Is("format");
                var isVersion = reader.Is("version");
                reader.Read();
                if (
                    (isFormat && !IsKnownFormat(ref reader, faults))
                    || (isVersion && !IsKnownVersion(ref reader, faults))
                )
                {
                    return false;
                }

                reader.Skip();
            }
        }
        catch (JsonException)
        {
            // The reading proper comes upon the same place and says it with what was read before.
        }

        return true;
    }

    private static bool IsKnownFormat(ref Utf8JsonReader reader, JsonFaults faults)
    {
        if (reader.TokenType != JsonTokenType.String || reader.Is(StudyJson.FormatName))
        {
            return true;
        }

        var given = System.Text.Encoding.UTF8.GetString(reader.ValueSpan);
        faults.Add(
            "$.format",
            (int)reader.TokenStartIndex,
            given,
            $"The file is of another format, {Excerpt.Quoted(given)}.",
            $"A study says \"format\": \"{StudyJson.FormatName}\"."
        );
        return false;
    }

    private static bool IsKnownVersion(ref Utf8JsonReader reader, JsonFaults faults)
    {
        if (
            reader.TokenType != JsonTokenType.Number
            || !reader.TryGetInt32(out var version)
            || version == StudyJson.Version
        )
        {
            return true;
        }

        faults.Add(
            "$.version",
            (int)reader.TokenStartIndex,
            FormattableString.Invariant($"{version}"),
            FormattableString.Invariant($"Version {version} of the format is not known here."),
            FormattableString.Invariant($"This library reads version {StudyJson.Version}.")
        );
        return false;
    }

    private void ReadRoot(ref Utf8JsonReader reader)
    {
        var ledger = new PropertyLedger(TransferShape.Document, faults, path, (int)reader.TokenStartIndex);
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            if (ledger.Meet(ref reader) is not { } property)
            {
                continue;
            }

            reader.Read();
            path.Push(property.Name);
            var isList = lists.TryGetValue(property.Name, out var list);
            if (isList && reader.TokenType == JsonTokenType.StartArray)
            {
                list!.Read(ref reader, property.Shape, check, path, faults);
            }
            else if (check.Value(ref reader, property.Shape))
            {
                Keep(ref reader, property.Name);
            }
            else if (isList)
            {
                list!.IsIncomplete = true;
            }

            path.Pop();
        }

        ledger.Close();
    }

    private void Keep(ref Utf8JsonReader reader, string property)
    {
        switch (property)
        {
            case "title":
                Title = reader.GetString();
                break;
            case "description":
                Description = reader.GetString();
                break;
            case "invented":
                Invented = reader.GetBoolean();
                break;
        }
    }
}
