using System.Text.Json;

namespace McuBench.Core.Studies;

/// <summary>The words that files use for the values of an enumeration: its names with a small first letter.</summary>
internal static class EnumWord<T>
    where T : struct, Enum
{
    private static readonly T[] Values = Enum.GetValues<T>();

    /// <summary>All words, in the order of the values.</summary>
    public static IReadOnlyList<string> All { get; } =
    [.. Enum.GetNames<T>().Select(JsonNamingPolicy.CamelCase.ConvertName)];

    public static string Of(T value) => All[Array.IndexOf(Values, value)];

    public static T? Find(string word)
    {
        for (var i = 0; i < All.Count; i++)
        {
            if (string.Equals(All[i], word, StringComparison.Ordinal))
            {
                return Values[i];
            }
        }

        return null;
    }
}
