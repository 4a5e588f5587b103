using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

/// <summary>The data and expected values that the tests of hypotheses share.</summary>
internal static class HypothesisReference
{
    internal static readonly TTestOptions Ninety = new() { Confidence = 0.9 };

    /// <summary>Samples of the first and second name of a pair written "first/second".</summary>
    internal static (Sample First, Sample Second) Pair(string pair)
    {
        string[] names = pair.Split('/');
        return (Sample.Of(Datasets.Values(names[0])), Sample.Of(Datasets.Values(names[1])));
    }

    /// <summary>The groups whose names are a set's and a number from 1.</summary>
    internal static Sample[] Groups(string set)
    {
        var groups = new List<Sample>();
        for (int i = 1; i <= (set == "skewed" ? 4 : 3); i++)
        {
            groups.Add(Sample.Of(ReferenceCase.Of("groups", $"{set}{i}").Numbers()));
        }

        return [.. groups];
    }

    /// <summary>Asserts agreement with R, and with SciPy or statsmodels.</summary>
    internal static void AgreeWithBoth(string part, string name, double[] actual, double r, double scipy)
    {
        Agree.Relative(ReferenceCase.Of("hypotheses-r", part).Numbers(name), actual, r);
        Agree.Relative(ReferenceCase.Of("hypotheses-scipy", part).Numbers(name), actual, scipy);
    }

    /// <summary>Estimate, t, degrees of freedom, p and both ends.</summary>
    internal static double[] All(TTestResult test) =>
        [
            test.Estimate.Value,
            test.Statistic,
            test.Estimate.DegreesOfFreedom!.Value,
            test.PValue,
            test.Estimate.Interval!.Lower,
            test.Estimate.Interval.Upper,
        ];
}
