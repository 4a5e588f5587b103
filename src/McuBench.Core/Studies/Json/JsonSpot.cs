using System.Globalization;
using System.Text.Json;

namespace McuBench.Core.Studies.Json;

/// <summary>A place in the document: an element whose offset is known, and the way down from there.</summary>
/// <remarks>Offsets below the element are not kept while reading, but searched for when a fault needs one.</remarks>
internal readonly record struct JsonSpot(string ElementPath, int ElementOffset, string Below = "")
{
    public string Path => ElementPath + Below;

    public JsonSpot this[string property] => this with { Below = $"{Below}.{property}" };

    public JsonSpot this[int index] =>
        this with
        {
            Below = string.Create(CultureInfo.InvariantCulture, $"{Below}[{index}]"),
        };

    /// <summary>The offset of the value at this spot; of the nearest thing around it where it is absent.</summary>
    public int FindOffset(ReadOnlySpan<byte> json)
    {
        var offset = ElementOffset;
        var rest = Below.AsSpan();
        while (!rest.IsEmpty)
        {
            var length = rest[1..].IndexOfAny('.', '[') is var next and >= 0 ? next + 1 : rest.Length;
            var reader = new Utf8JsonReader(json[offset..]);
            var inside =
                rest[0] == '.'
                    ? FindProperty(ref reader, rest[1..length].ToString())
                    : FindItem(ref reader, int.Parse(rest[1..(length - 1)], CultureInfo.InvariantCulture));
            if (!inside)
            {
                return offset;
            }

            offset += (int)reader.TokenStartIndex;
            rest = rest[length..];
        }

        return offset;
    }

    /// <summary>The text at this spot; null where there is none, or none that can be read.</summary>
    public string? FindText(ReadOnlySpan<byte> json)
    {
        if (FindOffset(json) is var offset && offset == ElementOffset)
        {
            return null;
        }

        var reader = new Utf8JsonReader(json[offset..]);
        return reader.Read() && reader.TokenType == JsonTokenType.String && reader.TryGetText(out var text)
            ? text
            : null;
    }

    private static bool FindProperty(ref Utf8JsonReader reader, string name)
    {
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
        {
            return false;
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var found = reader.Is(name);
            reader.Read();
            if (found)
            {
                return true;
            }

            reader.Skip();
        }

        return false;
    }

    private static bool FindItem(ref Utf8JsonReader reader, int index)
    {
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartArray)
        {
            return false;
        }

        for (var i = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; i++)
        {
            if (i == index)
            {
                return true;
            }

            reader.Skip();
        }

        return false;
    }
}
