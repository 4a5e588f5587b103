using System.Reflection;

namespace McuBench.Stats.Tests.Edges;

/// <summary>Holds the list of procedures that the sweep tries against the assembly.</summary>
public sealed class EdgeProceduresTests
{
    private static readonly string[] Rooms =
    [
        "McuBench.Stats.Descriptive",
        "McuBench.Stats.Intervals",
        "McuBench.Stats.Hypotheses",
        "McuBench.Stats.Resampling",
        "McuBench.Stats.Regression",
    ];

    /// <summary>What takes data but only keeps it for a procedure that is in the list.</summary>
    private static readonly string[] Kept = ["NestedData.Of"];

    [Fact]
    public void All_OfTheAssemblysProcedures_HoldsEveryOneThatTakesData()
    {
        var listed = EdgeProcedures.All.Select(p => p.Method).ToHashSet(StringComparer.Ordinal);

        var missing = typeof(Sample)
            .Assembly.GetExportedTypes()
            .Where(t => Rooms.Contains(t.Namespace, StringComparer.Ordinal))
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(m => m.GetParameters().Any(p => IsData(p.ParameterType)))
            .Select(m => $"{m.DeclaringType!.Name}.{m.Name}")
            .Distinct(StringComparer.Ordinal)
            .Except(listed, StringComparer.Ordinal)
            .Except(Kept, StringComparer.Ordinal)
            .ToList();

        Assert.Empty(missing);
    }

    private static bool IsData(Type type) =>
        type == typeof(Sample) || type == typeof(ReadOnlySpan<double>) || type == typeof(ReadOnlySpan<Sample>);
}
