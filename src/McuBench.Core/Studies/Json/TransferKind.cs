namespace McuBench.Core.Studies.Json;

/// <summary>The sorts of value that the format knows.</summary>
internal enum TransferKind
{
    Text,
    Truth,
    Whole32,
    Whole64,
    Object,
    List,

    /// <summary>An object whose properties are all texts, under names that the metadata can't know.</summary>
    TextsByName,
}
