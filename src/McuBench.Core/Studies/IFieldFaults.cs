namespace McuBench.Core.Studies;

/// <summary>Takes faults of the fields of one thing that is being read, a JSON object or a row of a table, and knows
/// where it stands.</summary>
internal interface IFieldFaults
{
    /// <summary>Adds a fault of a field.</summary>
    /// <param name="property">The property as JSON names it; null for the thing as a whole.</param>
    /// <param name="offending">The text given, where there is one.</param>
    /// <param name="problem">What is wrong.</param>
    /// <param name="mend">How to put it right.</param>
    void Add(string? property, string? offending, string problem, string? mend = null);
}
