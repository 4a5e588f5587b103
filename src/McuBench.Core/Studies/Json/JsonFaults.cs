using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>Faults of one JSON document: turns a place in it into path, line and column.</summary>
internal sealed class JsonFaults(ReadOnlyMemory<byte> json, string sourceName, FaultList faults)
{
    public string SourceName => sourceName;

    public ReadOnlyMemory<byte> Json => json;

    public FaultList All => faults;

    /// <summary>Adds a fault at a byte of the document.</summary>
    public void Add(string path, int offset, string? offending, string problem, string? mend = null)
    {
        if (!faults.HasRoom)
        {
            faults.CountOne();
            return;
        }

        var (line, column) = SourceText.Position(json.Span, offset);
        faults.Add(
            new StudyFault(sourceName, problem, mend)
            {
                Line = line,
                Column = column,
                JsonPath = path,
                Offending = offending is null ? null : Excerpt.Of(offending),
            }
        );
    }

    /// <summary>Adds a fault at a spot of which only the path is known; the document is searched for it.</summary>
    public void Add(JsonSpot spot, string? offending, string problem, string? mend = null)
    {
        if (!faults.HasRoom)
        {
            faults.CountOne();
            return;
        }

        Add(spot.Path, spot.FindOffset(json.Span), offending, problem, mend);
    }
}
