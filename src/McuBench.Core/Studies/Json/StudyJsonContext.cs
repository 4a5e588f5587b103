using System.Text.Json;
using System.Text.Json.Serialization;

namespace McuBench.Core.Studies.Json;

/// <summary>What the source generator makes of the transfer records: no reflection at run time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    IndentSize = 2,
    NewLine = "\n",
    GenerationMode = JsonSourceGenerationMode.Metadata
)]
[JsonSerializable(typeof(StudyTransfer.Document))]
internal sealed partial class StudyJsonContext : JsonSerializerContext;
