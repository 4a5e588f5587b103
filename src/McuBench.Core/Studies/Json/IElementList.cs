using System.Text.Json;

namespace McuBench.Core.Studies.Json;

/// <summary>One of the document's lists, whatever it holds.</summary>
internal interface IElementList
{
    /// <summary>Whether elements may be missing that the file was meant to have: it broke off, or this is no list.</summary>
    bool IsIncomplete { get; set; }

    /// <summary>Reads the list that the reader stands on and moves to its end.</summary>
    void Read(ref Utf8JsonReader reader, TransferShape shape, ShapeCheck check, PathStack path, JsonFaults faults);
}
