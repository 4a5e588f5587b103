using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

/// <summary>The nested data sets that R and NumPy were run on as well.</summary>
internal static class NestedReference
{
    internal static double[] Values(string set) => ReferenceCase.Of("nested", set).Numbers();

    internal static int[] Outer(string set) => Labels(set + "outer");

    internal static int[] Inner(string set) => Labels(set + "inner");

    internal static NestedData TwoFactors(string set) => NestedData.Of(Values(set), Outer(set), Inner(set));

    /// <summary>The inner groups alone, those of different outer groups kept apart.</summary>
    internal static NestedData OneFactor(string set)
    {
        int[] inner = Inner(set);
        return NestedData.Of(Values(set), [.. Outer(set).Select((outer, i) => 100 * outer + inner[i])]);
    }

    private static int[] Labels(string name) => [.. ReferenceCase.Of("nested", name).Numbers().Select(v => (int)v)];
}
