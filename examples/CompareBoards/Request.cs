using McuBench.Core.Conclusions;

namespace CompareBoards;

/// <summary>What the user asked for.</summary>
/// <param name="StudyFile">The study's file.</param>
/// <param name="Folder">Where the report goes.</param>
/// <param name="Options">Confidence and margin.</param>
public sealed record Request(string StudyFile, string Folder, ConclusionOptions Options);
