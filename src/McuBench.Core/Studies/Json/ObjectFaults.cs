namespace McuBench.Core.Studies.Json;

/// <summary>Faults of the fields of one JSON object.</summary>
internal sealed class ObjectFaults(JsonFaults faults, JsonSpot spot) : IFieldFaults
{
    public JsonSpot Spot => spot;

    public void Add(string? property, string? offending, string problem, string? mend = null) =>
        faults.Add(property is null ? spot : spot[property], offending, problem, mend);

    public ObjectFaults At(string property) => new(faults, spot[property]);

    public ObjectFaults At(string property, int index) => new(faults, spot[property][index]);

    /// <summary>Makes every item of a list, so that every fault is found; null where one failed.</summary>
    public static List<T>? All<TPart, T>(IReadOnlyList<TPart> parts, Func<TPart, int, T?> make)
        where T : class
    {
        var made = parts.Select(make).OfType<T>().ToList();
        return made.Count == parts.Count ? made : null;
    }
}
