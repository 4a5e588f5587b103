using System.Globalization;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Resampling;

/// <summary>Permutation tests of two independent samples: whether a statistic is farther out than chance splits of the same
/// values into two groups of the same sizes make it (fisher-1935, section 21).</summary>
/// <remarks>The null hypothesis is that both populations are one and the same, spread and shape included; where spreads
/// differ and counts too, the size of a test of means is not what it says. Statistics that differ from the one seen by
/// rounding alone count as equal to it.</remarks>
public static class PermutationTest
{
    /// <summary>The most splits that are listed for a statistic of one's own: 2,000,000, such as of 12 and 11 values.</summary>
    public const int MostListedSplits = 2_000_000;

    /// <summary>The most values, of both samples together, for which the exact test of a mean difference is taken:
    /// 36.</summary>
    public const int MostValuesForExactMeans = 36;

    /// <summary>The permutation test of the difference of means, exact for up to <see cref="MostValuesForExactMeans"/> values
    /// together.</summary>
    /// <remarks>The exact test counts splits without listing them, by sums of half the values that are met with sums of the
    /// other half (horowitz-sahni-1974): O(N·2^(N/2)), 20 values take some tens of microseconds, 36 some tens of
    /// milliseconds. Scratch space is pooled; nothing but the result is allocated.</remarks>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample.</param>
    /// <param name="options">What is asked; <see cref="PermutationOptions.Default"/> where null.</param>
    /// <returns>The test of first mean less second mean against 0.</returns>
    /// <exception cref="ArgumentException">A sample is empty, or an exact test is asked of more values than
    /// <see cref="MostValuesForExactMeans"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite; or so large that sums
    /// overflow.</exception>
    public static PermutationResult MeanDifference(
        ReadOnlySpan<double> first,
        ReadOnlySpan<double> second,
        PermutationOptions? options = null
    )
    {
        Check.Finite(first);
        Check.Finite(second);
        options ??= PermutationOptions.Default;
        var sums = MeanSplits.Of(first, second);
        bool exact = IsExact(
            options.Mode,
            sums.Count <= MostValuesForExactMeans,
            "Count of values",
            sums.Count,
            MostValuesForExactMeans
        );
        double splits = exact ? SplitCount(first.Length, second.Length) : options.Resamples;
        double pValue = exact
            ? sums.ExactShare(first, second, options.Alternative)
            : sums.RandomShare(first, second, options);
        return new PermutationResult(
            sums.Difference,
            pValue,
            exact,
            splits,
            exact ? "difference of means, exact permutation" : RandomMethod("difference of means", options),
            options
        );
    }

    /// <summary>The permutation test of any statistic, exact where there are at most <see cref="MostListedSplits"/>
    /// splits. One statistic for each split.</summary>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample.</param>
    /// <param name="statistic">The statistic, near 0 (for a two-sided test) or low or high (for a one-sided one) under the
    /// null hypothesis; a ratio is better given as a logarithm.</param>
    /// <param name="options">What is asked; <see cref="PermutationOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample or the statistic is null.</exception>
    /// <exception cref="ArgumentException">The statistic isn't finite for a split, or an exact test is asked of more splits
    /// than <see cref="MostListedSplits"/>.</exception>
    public static PermutationResult Of(
        Sample first,
        Sample second,
        TwoSampleStatistic statistic,
        PermutationOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(statistic);
        options ??= PermutationOptions.Default;
        double splits = SplitCount(first.Count, second.Count);
        bool exact = IsExact(options.Mode, splits <= MostListedSplits, "Count of splits", splits, MostListedSplits);
        var listed = new ListedSplits(first, second, statistic, options.Alternative);
        double pValue = exact ? listed.ExactShare() : listed.RandomShare(options.Seed, options.Resamples);
        return new PermutationResult(
            listed.Observed,
            pValue,
            exact,
            exact ? splits : options.Resamples,
            exact ? $"{statistic.Name}, exact permutation" : RandomMethod(statistic.Name, options),
            options
        );
    }

    private static bool IsExact(PermutationMode mode, bool feasible, string what, double was, double most)
    {
        if (mode == PermutationMode.Exact && !feasible)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{what} must be at most {most} for an exact permutation test; was {was}. Random splits have no limit."
                ),
                "options"
            );
        }

        return feasible && mode != PermutationMode.Random;
    }

    /// <summary>The binomial coefficient, exact as long as a double counts it.</summary>
    private static double SplitCount(int first, int second)
    {
        double count = 1;
        int smaller = Math.Min(first, second);
        for (int i = 1; i <= smaller && double.IsFinite(count); i++)
        {
            // Every intermediate value is a binomial coefficient, so the division leaves no rest.
            count = count * (first + second - smaller + i) / i;
        }

        return count;
    }

    private static string RandomMethod(string statistic, PermutationOptions options) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{statistic}, {options.Resamples} random permutations, seed {options.Seed}"
        );
}
