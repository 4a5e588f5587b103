using System.Text.Json;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>Keeps account of an object's properties while it is read: those met, and at the end those missing.</summary>
internal ref struct PropertyLedger(TransferShape shape, JsonFaults faults, PathStack path, int objectOffset)
{
    // One bit a property; no object of the format has more than sixty-four.
    private ulong met;
    private ulong misspelt;

    /// <summary>Takes the property name that the reader stands on. An unknown property is a fault, and skipped.</summary>
    /// <returns>The property, whose value is next; null where it was skipped.</returns>
    public TransferShape.Property? Meet(ref Utf8JsonReader reader)
    {
        for (var i = 0; i < shape.Properties.Length; i++)
        {
            var property = shape.Properties[i];
            if (!reader.Is(property.Name))
            {
                continue;
            }

            var bit = 1UL << i;
            if ((met & bit) == 0)
            {
                met |= bit;
                return property;
            }

            path.Push(property.Name);
            faults.Add(
                path.ToString(),
                (int)reader.TokenStartIndex,
                property.Name,
                $"The property \"{property.Name}\" stands twice.",
                "Keep one."
            );
            path.Pop();
            reader.Skip();
            return null;
        }

        Unknown(ref reader);
        reader.Skip();
        return null;
    }

    /// <summary>Says which required properties never came.</summary>
    public readonly void Close()
    {
        for (var i = 0; i < shape.Properties.Length; i++)
        {
            var property = shape.Properties[i];
            if (property.IsRequired && ((met | misspelt) & (1UL << i)) == 0)
            {
                faults.Add(
                    path.ToString(),
                    objectOffset,
                    offending: null,
                    $"The property \"{property.Name}\" is missing.",
                    "Add it."
                );
            }
        }
    }

    private void Unknown(ref Utf8JsonReader reader)
    {
        var name = NameOf(ref reader);
        var names = shape.PropertyNames.ToArray();
        if (NearestName.Of(name, names) is { } near)
        {
            // Said to be misspelt, it need not be said to be missing as well.
            misspelt |= 1UL << Array.IndexOf(names, near);
        }

        path.Push(name);
        faults.Add(
            path.ToString(),
            (int)reader.TokenStartIndex,
            name,
            $"The property {Excerpt.Quoted(name)} is not known here.",
            NearestName.Mend(name, names, "properties")
        );
        path.Pop();
    }

    // Half of a surrogate pair is no known name, and nothing to print.
    private static string NameOf(ref Utf8JsonReader reader) =>
        reader.ValueSpan.Length > StudyLimits.TextLength ? "\u2026"
        : reader.TryGetText(out var name) ? name
        : "\uFFFD";
}
