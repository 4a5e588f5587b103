using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace McuBench.Core.Studies.Json;

/// <summary>One of the document's lists while it is read: its sound elements, and the names of the faulty ones.</summary>
internal sealed class ElementList<T> : IElementList
    where T : class
{
    private readonly List<Element> sound = [];

    /// <summary>The elements without a fault of shape, in order.</summary>
    public IReadOnlyList<Element> Sound => sound;

    /// <summary>The names, where they could be made out, of the elements left out.</summary>
    public HashSet<string> FaultyNames { get; } = new(StringComparer.Ordinal);

    /// <summary>How many elements were met.</summary>
    public int Met { get; private set; }

    /// <inheritdoc/>
    public bool IsIncomplete { get; set; }

    /// <inheritdoc/>
    public void Read(
        ref Utf8JsonReader reader,
        TransferShape shape,
        ShapeCheck check,
        PathStack path,
        JsonFaults faults
    )
    {
        var json = faults.Json.Span;
        for (var i = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; i++)
        {
            Met++;
            path.Push(i);
            var spot = new JsonSpot(path.ToString(), (int)reader.TokenStartIndex);
            if (check.Value(ref reader, shape.Item!))
            {
                var slice = json[spot.ElementOffset..(int)reader.BytesConsumed];
                var value = JsonSerializer.Deserialize(slice, (JsonTypeInfo<T>)shape.Item!.Type)!;
                sound.Add(new Element(value, spot));
            }
            else if (spot["name"].FindText(json) is { } name)
            {
                FaultyNames.Add(name);
            }

            path.Pop();
        }
    }

    /// <summary>A sound element and where it stands.</summary>
    internal readonly record struct Element(T Value, JsonSpot Spot);
}
