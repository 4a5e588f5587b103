using System.Globalization;
using System.Text.Json;

namespace McuBench.Stats.Tests;

/// <summary>One case of a reference file: its data and expected values, found by path.</summary>
internal sealed class ReferenceCase
{
    private readonly JsonElement _root;

    private ReferenceCase(JsonElement root) => _root = root;

    /// <summary>Reads a case by its key in <c>SOURCES.md</c>.</summary>
    internal static ReferenceCase Of(string file, string key)
    {
        string path = Path.Combine(AppContext.BaseDirectory, "reference", file + ".json");
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        return new ReferenceCase(document.RootElement.GetProperty(key).Clone());
    }

    /// <summary>The number at a path of names; digits in text are read too.</summary>
    internal double Number(params string[] path) => ToNumber(At(path));

    /// <summary>The numbers of the list at a path of names.</summary>
    internal double[] Numbers(params string[] path) => [.. At(path).EnumerateArray().Select(ToNumber)];

    /// <summary>The rows of the table at a path of names.</summary>
    internal double[][] Rows(params string[] path) =>
        [.. At(path).EnumerateArray().Select(row => row.EnumerateArray().Select(ToNumber).ToArray())];

    /// <summary>The numbers of a cell of a table of lists, or null where it holds text in their place.</summary>
    internal double[]? NumbersOrNull(string part, string name, int row, int column)
    {
        JsonElement cell = At([part, name])[row][column];
        return cell.ValueKind == JsonValueKind.Array ? [.. cell.EnumerateArray().Select(ToNumber)] : null;
    }

    /// <summary>The numbers called so in an element of the list at a path of names.</summary>
    internal double[] NumbersIn(string name, int index, params string[] path) =>
        [.. At(path)[index].GetProperty(name).EnumerateArray().Select(ToNumber)];

    /// <summary>The number called so in an element of the list at a path of names.</summary>
    internal double NumberIn(string name, int index, params string[] path) =>
        ToNumber(At(path)[index].GetProperty(name));

    /// <summary>The text at a path of names.</summary>
    internal string Text(params string[] path) => At(path).GetString()!;

    /// <summary>The names of the parts at a path of names.</summary>
    internal string[] Names(params string[] path) => [.. At(path).EnumerateObject().Select(part => part.Name)];

    private JsonElement At(string[] path) => path.Aggregate(_root, (element, name) => element.GetProperty(name));

    private static double ToNumber(JsonElement element) =>
        element.ValueKind == JsonValueKind.String
            ? double.Parse(element.GetString()!, CultureInfo.InvariantCulture)
            : element.GetDouble();
}
