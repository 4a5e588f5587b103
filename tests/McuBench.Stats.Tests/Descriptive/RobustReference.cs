namespace McuBench.Stats.Tests.Descriptive;

/// <summary>What R and SciPy found on the small data sets.</summary>
internal static class RobustReference
{
    public static TheoryData<string> Sets => ["pair", "triple", "ties", "offset", "skewed", "outliers", "odd"];

    /// <summary>Asserts that a result agrees with both.</summary>
    internal static void AgreeWithBoth(string set, string name, double actual, double tolerance)
    {
        Agree.Relative(R(set).Number(name), actual, tolerance);
        Agree.Relative(SciPy(set).Number(name), actual, tolerance);
    }

    internal static ReferenceCase R(string set) => ReferenceCase.Of("robust-r", set);

    internal static ReferenceCase SciPy(string set) => ReferenceCase.Of("robust-scipy", set);
}
