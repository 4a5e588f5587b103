using System.Collections.Immutable;
using System.Text.Json.Serialization.Metadata;

namespace McuBench.Core.Studies.Json;

/// <summary>What a value in the document must look like, taken from the generated metadata of the transfer records.</summary>
internal sealed class TransferShape
{
    private TransferShape(TransferKind kind, JsonTypeInfo type)
    {
        Kind = kind;
        Type = type;
    }

    /// <summary>The whole document.</summary>
    public static TransferShape Document { get; } = Of(typeof(StudyTransfer.Document));

    public TransferKind Kind { get; }

    public JsonTypeInfo Type { get; }

    /// <summary>An object's properties in the format's order.</summary>
    public ImmutableArray<Property> Properties { get; private init; } = [];

    /// <summary>What a list holds.</summary>
    public TransferShape? Item { get; private init; }

    public IEnumerable<string> PropertyNames => Properties.Select(property => property.Name);

    private static TransferShape Of(Type type)
    {
        var info =
            StudyJsonContext.Default.GetTypeInfo(type)
            ?? throw new InvalidOperationException($"{type} is missing from the generated metadata.");
        return info.Kind switch
        {
            JsonTypeInfoKind.Object => new TransferShape(TransferKind.Object, info)
            {
                Properties =
                [
                    .. info.Properties.Select(property => new Property(
                        property.Name,
                        Of(property.PropertyType),
                        property.IsRequired
                    )),
                ],
            },
            JsonTypeInfoKind.Enumerable => new TransferShape(TransferKind.List, info) { Item = Of(info.ElementType!) },
            JsonTypeInfoKind.Dictionary => new TransferShape(TransferKind.TextsByName, info),
            _ => new TransferShape(Simple(Nullable.GetUnderlyingType(type) ?? type), info),
        };
    }

    private static TransferKind Simple(Type type) =>
        type == typeof(string) ? TransferKind.Text
        : type == typeof(bool) ? TransferKind.Truth
        : type == typeof(int) ? TransferKind.Whole32
        : type == typeof(long) ? TransferKind.Whole64
        : throw new InvalidOperationException($"No shape is known for {type}.");

    /// <summary>A property of an object.</summary>
    internal sealed record Property(string Name, TransferShape Shape, bool IsRequired);
}
