namespace McuBench.Stats.Tests.Intervals;

/// <summary>What R and SciPy found for the intervals of the small data sets.</summary>
internal static class IntervalReference
{
    public static TheoryData<string> Sets => ["pair", "triple", "ties", "offset", "skewed", "outliers", "odd"];

    public static TheoryData<string> LargerSets => ["ties", "offset", "skewed", "outliers", "odd"];

    public static TheoryData<string, string> Pairs =>
        new()
        {
            { "ties", "outliers" },
            { "triple", "pair" },
            { "skewed", "triple" },
            { "odd", "offset" },
        };

    /// <summary>Asserts that numbers agree with both.</summary>
    internal static void AgreeWithBoth(string name, string set, ReadOnlySpan<double> actual, double tolerance)
    {
        foreach (string file in (string[])["intervals-r", "intervals-scipy"])
        {
            Agree.Relative(ReferenceCase.Of(file, name).Numbers(set), actual, tolerance);
        }
    }

    internal static double[] Ends(Estimate estimate) => [estimate.Interval!.Lower, estimate.Interval.Upper];
}
