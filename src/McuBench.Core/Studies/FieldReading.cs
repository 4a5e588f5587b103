using System.Text.Json;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies;

/// <summary>Turns the texts of fields into values, and the refusals of the domain types into faults of a field.</summary>
internal static class FieldReading
{
    /// <summary>Reads a quantity with its unit; null after a fault.</summary>
    public static double? Quantity(this IFieldFaults faults, string property, string text, QuantityKind kind)
    {
        if (QuantityParser.Read(text, kind, out var si) is not { } error)
        {
            return si;
        }

        faults.Add(property, error);
        return null;
    }

    /// <summary>Reads a quantity that may be absent; false after a fault.</summary>
    public static bool Optional(
        this IFieldFaults faults,
        string property,
        string? text,
        QuantityKind kind,
        out double? si
    )
    {
        si = text is null ? null : faults.Quantity(property, text, kind);
        return text is null || si is not null;
    }

    /// <summary>Reads one of an enumeration's words that may be absent; false after a fault.</summary>
    public static bool Optional<T>(this IFieldFaults faults, string property, string? text, out T? value)
        where T : struct, Enum
    {
        value = text is null ? null : faults.Word<T>(property, text);
        return text is null || value is not null;
    }

    /// <summary>Reads one of an enumeration's words; null after a fault.</summary>
    public static T? Word<T>(this IFieldFaults faults, string property, string text)
        where T : struct, Enum
    {
        if (EnumWord<T>.Find(text) is { } value)
        {
            return value;
        }

        faults.Add(
            property,
            text,
            $"{Excerpt.Quoted(text)} is not one of {string.Join(", ", EnumWord<T>.All)}.",
            NearestName.Of(text, EnumWord<T>.All) is { } near ? $"Did you mean \"{near}\"?" : null
        );
        return null;
    }

    public static void Add(this IFieldFaults faults, string property, QuantityTextError error) =>
        faults.Add(property, error.Given, error.Problem(), error.Mend);

    /// <summary>The refusal without its mend.</summary>
    public static string Problem(this QuantityTextError error) => error.Message[..^error.Mend.Length].TrimEnd();

    /// <summary>Makes a domain object; where it refuses, says so at the property that its parameter is named after.</summary>
    /// <param name="faults">Where to.</param>
    /// <param name="properties">The names of the object's properties in the file.</param>
    /// <param name="make">Makes it.</param>
    public static T? Make<T>(this IFieldFaults faults, IEnumerable<string> properties, Func<T> make)
        where T : class
    {
        try
        {
            return make();
        }
        catch (ArgumentException refused)
        {
            var parameter = JsonNamingPolicy.CamelCase.ConvertName(refused.ParamName ?? string.Empty);
            var property = properties.Contains(parameter, StringComparer.Ordinal) ? parameter : null;
            faults.Add(property, null, WithoutParameter(refused));
            return null;
        }
    }

    // The platform adds the parameter's name, and on a line of its own the value: the place says the first, and the
    // message the second.
    private static string WithoutParameter(ArgumentException refused)
    {
        var added = refused.Message.IndexOf($" (Parameter '{refused.ParamName}')", StringComparison.Ordinal);
        return added < 0 ? refused.Message.ReplaceLineEndings(" ") : refused.Message[..added];
    }
}
