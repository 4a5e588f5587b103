namespace McuBench.Core.Studies.Json;

/// <summary>
/// The JSON format of a study, version 1, as records: their properties, in order, are the format's properties, and what
/// is required here is required there. The writer serialises them and the reader checks a document against them, so
/// that the format is described once.
/// </summary>
/// <remarks>Quantities, dates and enumerations are texts here; what the texts must say is for the domain types.</remarks>
internal static class StudyTransfer
{
    internal sealed record Document
    {
        public required string Format { get; init; }
        public required int Version { get; init; }
        public required string Title { get; init; }
        public string? Description { get; init; }
        public bool? Invented { get; init; }
        public required IReadOnlyList<Board> Boards { get; init; }
        public required IReadOnlyList<Setup> Setups { get; init; }
        public required IReadOnlyList<Workload> Workloads { get; init; }
        public required IReadOnlyList<Timer> Timers { get; init; }
        public IReadOnlyList<Meter>? Meters { get; init; }
        public IReadOnlyList<Trial>? Trials { get; init; }
        public IReadOnlyList<Reading>? Readings { get; init; }
        public IReadOnlyList<Table>? TrialFiles { get; init; }
        public IReadOnlyList<Table>? ReadingFiles { get; init; }
    }

    internal sealed record Board
    {
        public required string Name { get; init; }
        public string? Description { get; init; }
        public IReadOnlyList<Core>? Cores { get; init; }
    }

    internal sealed record Core
    {
        public required string Name { get; init; }
        public string? Description { get; init; }
    }

    internal sealed record Setup
    {
        public required string Name { get; init; }
        public required string Board { get; init; }
        public string? Core { get; init; }
        public required Clock Clock { get; init; }
        public Supply? Supply { get; init; }
        public Toolchain? Toolchain { get; init; }
        public IReadOnlyList<Attachment>? Attachments { get; init; }
    }

    internal sealed record Clock
    {
        public required string Frequency { get; init; }
        public string? Tolerance { get; init; }
    }

    internal sealed record Supply
    {
        public required string Voltage { get; init; }
        public string? Tolerance { get; init; }
        public string? Input { get; init; }
        public bool? FedElsewhereToo { get; init; }
    }

    internal sealed record Toolchain
    {
        public required string Name { get; init; }
        public string? Version { get; init; }
        public IReadOnlyList<string>? Settings { get; init; }
    }

    internal sealed record Attachment
    {
        public required string Kind { get; init; }
        public required string Name { get; init; }
        public required string State { get; init; }
    }

    internal sealed record Workload
    {
        public required string Name { get; init; }
        public required long WorkItemsPerRun { get; init; }
        public string? ItemName { get; init; }
        public string? Description { get; init; }
        public string? OutputChecksum { get; init; }
        public bool? Empty { get; init; }
        public string? LoadPeriod { get; init; }
    }

    internal sealed record Timer
    {
        public required string Name { get; init; }
        public required string Resolution { get; init; }
        public required string Reading { get; init; }
        public string? Tolerance { get; init; }
        public string? Place { get; init; }
        public bool? DerivedFromChangedClock { get; init; }
    }

    internal sealed record Meter
    {
        public required string Name { get; init; }
        public required IReadOnlyList<MeterRange> Ranges { get; init; }
        public string? AveragingTime { get; init; }
        public MeterCheck? ZeroCheck { get; init; }
        public MeterCheck? KnownLoadCheck { get; init; }
    }

    internal sealed record MeterRange
    {
        public required string FullScale { get; init; }
        public required string Resolution { get; init; }
        public string? OfReading { get; init; }
        public string? OfRange { get; init; }
        public int? Digits { get; init; }
        public string? BurdenAtFullScale { get; init; }
    }

    internal sealed record MeterCheck
    {
        public required string Date { get; init; }
        public required string Expected { get; init; }
        public required string Read { get; init; }
    }

    internal sealed record Trial
    {
        public required string Setup { get; init; }
        public required string Workload { get; init; }
        public required string Timer { get; init; }
        public required string RunTime { get; init; }
        public int? Order { get; init; }
        public string? Session { get; init; }
        public string? Specimen { get; init; }
        public string? Build { get; init; }
        public string? Connection { get; init; }
        public string? Temperature { get; init; }
        public string? OutputChecksum { get; init; }
        public long? CycleCount { get; init; }
    }

    internal sealed record Reading
    {
        public required string Setup { get; init; }
        public required string Meter { get; init; }
        public required string Phase { get; init; }
        public required string Current { get; init; }
        public string? Workload { get; init; }
        public string? Point { get; init; }
        public string? BoardVoltage { get; init; }
        public string? Range { get; init; }
        public string? Attachment { get; init; }
        public string? Session { get; init; }
        public string? Specimen { get; init; }
    }

    /// <summary>A table of trials or readings in a file beside the study, and how its columns are to be taken.</summary>
    internal sealed record Table
    {
        public required string Path { get; init; }
        public IReadOnlyDictionary<string, string>? Columns { get; init; }
        public IReadOnlyDictionary<string, string>? Constants { get; init; }
        public string? Delimiter { get; init; }
        public bool? HashComments { get; init; }
        public bool? IgnoreOtherColumns { get; init; }
    }
}
