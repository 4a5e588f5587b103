using System.Collections;
using System.Reflection;

namespace McuBench.Stats.Tests.Edges;

/// <summary>The numbers in a result, with the path to each.</summary>
internal static class NumbersOf
{
    /// <summary>Every number that the result's public properties lead to.</summary>
    internal static IEnumerable<(string Path, double Value)> Result(object? result, string path = "result")
    {
        switch (result)
        {
            case null or string:
                return [];
            case double number:
                return [(path, number)];
            case IEnumerable items:
                return items.Cast<object?>().SelectMany((item, i) => Result(item, $"{path}[{i}]"));
            default:
                Type type = result.GetType();
                return type.Assembly != typeof(Sample).Assembly || type.IsEnum
                    ? []
                    : type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .Where(p => p.GetIndexParameters().Length == 0 && !p.PropertyType.IsByRefLike)
                        .Where(p => !p.Name.EndsWith("Options", StringComparison.Ordinal))
                        .SelectMany(p => Result(p.GetValue(result), $"{path}.{p.Name}"));
        }
    }
}
