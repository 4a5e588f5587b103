using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using System.Text.Json;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>
/// Checks values of the document against their shape: types, properties that are missing, unknown or there twice, and
/// the limits on texts and numbers. What passes can be deserialised without a further question.
/// </summary>
internal sealed class ShapeCheck(JsonFaults faults, PathStack path)
{
    /// <summary>What the properties that hold quantities look like.</summary>
    internal static readonly FrozenDictionary<string, string> Examples = new Dictionary<string, string>(
        StringComparer.Ordinal
    )
    {
        ["frequency"] = "160 MHz",
        ["tolerance"] = "50 ppm",
        ["voltage"] = "5 V",
        ["boardVoltage"] = "3.3 V",
        ["burdenAtFullScale"] = "100 mV",
        ["averagingTime"] = "400 ms",
        ["runTime"] = "412.1 ms",
        ["temperature"] = "23 \u00B0C",
        ["current"] = "31.02 mA",
        ["range"] = "50 mA",
        ["fullScale"] = "50 mA",
        ["expected"] = "10 mA",
        ["read"] = "10.01 mA",
        ["ofReading"] = "0.5 %",
        ["ofRange"] = "0.1 %",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Checks the value that the reader stands on and moves to its last token.</summary>
    /// <returns>Whether it was without a fault.</returns>
    public bool Value(ref Utf8JsonReader reader, TransferShape shape)
    {
        var before = faults.All.Count;
        switch (shape.Kind, reader.TokenType)
        {
            case (TransferKind.Text, JsonTokenType.String):
                TextLimits(ref reader);
                break;
            case (TransferKind.Truth, JsonTokenType.True or JsonTokenType.False):
                break;
            case (TransferKind.Whole32 or TransferKind.Whole64, JsonTokenType.Number):
                Whole(ref reader, shape.Kind);
                break;
            case (TransferKind.Object, JsonTokenType.StartObject):
                Object(ref reader, shape);
                break;
            case (TransferKind.TextsByName, JsonTokenType.StartObject):
                TextsByName(ref reader);
                break;
            case (TransferKind.List, JsonTokenType.StartArray):
                List(ref reader, shape.Item!);
                break;
            default:
                WrongType(ref reader, shape.Kind);
                reader.Skip();
                break;
        }

        return faults.All.Count == before;
    }

    private void Object(ref Utf8JsonReader reader, TransferShape shape)
    {
        var ledger = new PropertyLedger(shape, faults, path, (int)reader.TokenStartIndex);
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            if (ledger.Meet(ref reader) is not { } property)
            {
                continue;
            }

            reader.Read();
            path.Push(property.Name);
            Value(ref reader, property.Shape);
            path.Pop();
        }

        ledger.Close();
    }

    private void List(ref Utf8JsonReader reader, TransferShape item)
    {
        for (var i = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; i++)
        {
            path.Push(i);
            Value(ref reader, item);
            path.Pop();
        }
    }

    private void TextsByName(ref Utf8JsonReader reader)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var offset = (int)reader.TokenStartIndex;
            var sound = TextLimits(ref reader);
            var name = sound ? reader.GetString()! : "\u2026";
            path.Push(name);
            if (sound && !names.Add(name))
            {
                faults.Add(path.ToString(), offset, name, "The property stands twice.", "Keep one.");
            }

            reader.Read();
            if (reader.TokenType == JsonTokenType.String)
            {
                TextLimits(ref reader);
            }
            else
            {
                WrongType(ref reader, TransferKind.Text);
                reader.Skip();
            }

            path.Pop();
        }
    }

    private void Whole(ref Utf8JsonReader reader, TransferKind kind)
    {
        if (!NumberLimit(ref reader))
        {
            return;
        }

        var fits = kind == TransferKind.Whole32 ? reader.TryGetInt32(out _) : reader.TryGetInt64(out _);
        if (!fits)
        {
            var most = kind == TransferKind.Whole32 ? int.MaxValue : long.MaxValue;
            var text = Encoding.UTF8.GetString(reader.ValueSpan);
            AddHere(
                ref reader,
                text,
                $"The value must be a whole number in plain digits; was {text}.",
                string.Create(CultureInfo.InvariantCulture, $"Write it without point or exponent, at most {most}.")
            );
        }
    }

    private bool TextLimits(ref Utf8JsonReader reader)
    {
        // An escape takes up to six bytes for a character, so a text of fewer bytes than the limit is short enough.
        if (reader.ValueSpan.Length <= StudyLimits.TextLength && !reader.ValueIsEscaped)
        {
            return true;
        }

        if (!reader.TryGetText(out var text))
        {
            AddHere(
                ref reader,
                Encoding.UTF8.GetString(reader.ValueSpan),
                "The text holds half of a surrogate pair.",
                "Write the character itself, or both halves."
            );
            return false;
        }

        if (text.Length > StudyLimits.TextLength)
        {
            AddHere(
                ref reader,
                text,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A text must have at most {StudyLimits.TextLength} characters; had {text.Length}: {Excerpt.Quoted(text)}."
                )
            );
            return false;
        }

        return true;
    }

    private bool NumberLimit(ref Utf8JsonReader reader)
    {
        if (reader.ValueSpan.Length <= StudyLimits.NumberLength)
        {
            return true;
        }

        var start = Encoding.UTF8.GetString(reader.ValueSpan[..(StudyLimits.NumberLength + 1)]);
        AddHere(
            ref reader,
            start,
            string.Create(
                CultureInfo.InvariantCulture,
                $"A number must have at most {StudyLimits.NumberLength} characters; had {reader.ValueSpan.Length}: {Excerpt.Of(start)}."
            )
        );
        return false;
    }

    private void WrongType(ref Utf8JsonReader reader, TransferKind expected)
    {
        if (reader.TokenType == JsonTokenType.Number && !NumberLimit(ref reader))
        {
            return;
        }

        var (given, offending) = reader.TokenType switch
        {
            JsonTokenType.Null => ("null", "null"),
            JsonTokenType.True => ("true", "true"),
            JsonTokenType.False => ("false", "false"),
            JsonTokenType.Number => Both("the number ", Encoding.UTF8.GetString(reader.ValueSpan)),
            JsonTokenType.String => Both("the text ", Encoding.UTF8.GetString(reader.ValueSpan)),
            JsonTokenType.StartObject => ("an object", "{"),
            _ => ("a list", "["),
        };
        var (wanted, mend) = expected switch
        {
            TransferKind.Text when Examples.TryGetValue(path.LastName, out var example) => (
                "a quantity with its unit",
                $"Write it as a text: \"{example}\", say."
            ),
            TransferKind.Text => ("a text", "Write it in quotation marks."),
            TransferKind.Truth => ("true or false", "Write it without quotation marks."),
            TransferKind.Whole32 or TransferKind.Whole64 => (
                "a whole number",
                "Write it in digits, without quotation marks."
            ),
            TransferKind.List => ("a list", "Write [ … ] around it."),
            _ => ("an object", "Write { … } with its properties."),
        };
        AddHere(
            ref reader,
            offending,
            $"The value must be {wanted}; was {given}.",
            reader.TokenType == JsonTokenType.Null ? "Leave out what is absent or unknown." : mend
        );

        static (string Given, string Offending) Both(string what, string text) =>
            (what + (what[^2] == 't' ? Excerpt.Quoted(text) : Excerpt.Of(text)), text);
    }

    private void AddHere(ref Utf8JsonReader reader, string offending, string problem, string? mend = null) =>
        faults.Add(path.ToString(), (int)reader.TokenStartIndex, offending, problem, mend);
}
