using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

/// <summary>What R (base and coin), SciPy and statsmodels found for rank tests.</summary>
internal static class RankReference
{
    internal static readonly RankTestOptions Exact = new() { Distribution = NullDistribution.Exact };
    internal static readonly RankTestOptions Normal = new() { Distribution = NullDistribution.Normal };

    public static TheoryData<string> Pairs => [.. ReferenceCase.Of("ranks-r", "mann_whitney_shifted_1").Names()];

    public static TheoryData<string> Overlapping =>
        [.. ReferenceCase.Of("ranks-r", "superiority_p_se_low_high_90").Names()];

    public static TheoryData<string> LargePairs => [.. ReferenceCase.Of("ranks-r", "shift_exact_90").Names()];

    /// <summary>Samples of the first and second name of a pair written "first/second"; a name that ends in a digit is a
    /// group's.</summary>
    internal static (Sample First, Sample Second) Pair(string pair)
    {
        string[] names = pair.Split('/');
        return (Named(names[0]), Named(names[1]));
    }

    /// <summary>Asserts agreement with both programs.</summary>
    internal static void AgreeWithBoth(
        string part,
        string name,
        ReadOnlySpan<double> actual,
        double r = 1e-11,
        double scipy = 1e-11
    )
    {
        Agree.Relative(ReferenceCase.Of("ranks-r", part).Numbers(name), actual, r);
        Agree.Relative(ReferenceCase.Of("ranks-scipy", part).Numbers(name), actual, scipy);
    }

    /// <summary>p-values of a test: exact less, greater and two-sided; then normal two-sided, less and greater, with and
    /// without a correction for continuity.</summary>
    internal static double[] PValues(Func<RankTestOptions, RankTestResult> test, bool withCorrection)
    {
        var pValues = new List<double>
        {
            test(Exact with { Alternative = Alternative.Less }).PValue,
            test(Exact with { Alternative = Alternative.Greater }).PValue,
            test(Exact).PValue,
        };
        foreach (bool corrects in withCorrection ? [true, false] : (bool[])[false])
        {
            pValues.AddRange(NormalPValues(test, corrects));
        }

        return [.. pValues];
    }

    /// <summary>Normal p-values, two-sided, less and greater.</summary>
    internal static double[] NormalPValues(Func<RankTestOptions, RankTestResult> test, bool corrects)
    {
        RankTestOptions options = Normal with { CorrectsForContinuity = corrects };
        return
        [
            test(options).PValue,
            test(options with { Alternative = Alternative.Less }).PValue,
            test(options with { Alternative = Alternative.Greater }).PValue,
        ];
    }

    private static Sample Named(string name) =>
        Sample.Of(char.IsAsciiDigit(name[^1]) ? ReferenceCase.Of("groups", name).Numbers() : Datasets.Values(name));
}
