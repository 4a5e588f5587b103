namespace McuBench.Stats.Tests;

/// <summary>The small invented data sets that R and SciPy were run on as well.</summary>
internal static class Datasets
{
    internal static double[] Values(string set) => ReferenceCase.Of("datasets", set).Numbers();
}
