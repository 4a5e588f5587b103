using FsCheck.Xunit;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Resampling;

public sealed class PermutationTestTests
{
    private static readonly TwoSampleStatistic s_difference = TwoSampleStatistic.DifferenceOf(Statistic.Mean);

    [Fact]
    public void MeanDifference_MouseData_CountsEverySplit()
    {
        var reference = ReferenceCase.Of("resampling-data", "cl-mouse");
        double[] treatment = reference.Numbers("input", "treatment");
        double[] control = reference.Numbers("input", "control");

        PermutationResult greater = PermutationTest.MeanDifference(treatment, control, Asked(Alternative.Greater));
        PermutationResult both = PermutationTest.MeanDifference(treatment, control);

        Assert.True(greater.IsExact);
        Assert.Equal(reference.Number("recomputed", "splits"), greater.Splits);
        Agree.Relative(
            reference.Number("recomputed", "splits_with_difference_at_least_observed") / greater.Splits,
            greater.PValue,
            1e-15
        );
        Assert.Equal(reference.Number("recomputed", "permutation_p_two_sided"), both.PValue, 5e-11);
        Assert.Equal(reference.Number("expected", "difference"), both.Statistic, 0.005);
    }

    [Fact]
    public void MeanDifference_DataSets_AgreesWithSciPy()
    {
        var reference = ReferenceCase.Of("resampling-scipy", "permutation_less_greater_two_sided");
        foreach (string pair in reference.Names())
        {
            double[] first = Datasets.Values(pair.Split('/')[0]);
            double[] second = Datasets.Values(pair.Split('/')[1]);

            Agree.Relative(
                reference.Numbers(pair),
                [
                    PermutationTest.MeanDifference(first, second, Asked(Alternative.Less)).PValue,
                    PermutationTest.MeanDifference(first, second, Asked(Alternative.Greater)).PValue,
                    PermutationTest.MeanDifference(first, second).PValue,
                ],
                1e-12
            );
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 60)]
    public void MeanDifference_AnyData_AgreesWithListingEverySplit(Dyadic a, Dyadic b)
    {
        double[] first = [.. a.Values.Take(6)];
        double[] second = [.. b.Values.Take(5)];
        foreach (Alternative alternative in Enum.GetValues<Alternative>())
        {
            PermutationResult fast = PermutationTest.MeanDifference(first, second, Asked(alternative));
            PermutationResult listed = PermutationTest.Of(
                Sample.Of(first),
                Sample.Of(second),
                // Eighths add up exactly; times both counts the difference has no rounding at all.
                TwoSampleStatistic.Of("sums", (x, y) => y.Length * Sum(x) - x.Length * Sum(y)),
                Asked(alternative)
            );

            Assert.True(listed.IsExact);
            Assert.Equal(listed.Splits, fast.Splits);
            Agree.Relative(listed.PValue, fast.PValue, 1e-14);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 60)]
    public void MeanDifference_SwappedOrShifted_IsTheSame(Dyadic a, Dyadic b)
    {
        double[] first = [.. a.Values.Take(8)];
        double[] second = [.. b.Values.Take(8)];
        PermutationResult forth = PermutationTest.MeanDifference(first, second, Asked(Alternative.Less));

        Assert.Equal(forth.PValue, PermutationTest.MeanDifference(second, first, Asked(Alternative.Greater)).PValue);
        Assert.Equal(
            forth.PValue,
            PermutationTest
                .MeanDifference(
                    [.. first.Select(v => v + 1048576)],
                    [.. second.Select(v => v + 1048576)],
                    Asked(Alternative.Less)
                )
                .PValue
        );
    }

    [Fact]
    public void MeanDifference_AllEqual_IsOne() =>
        Assert.Equal(1, PermutationTest.MeanDifference([0.1, 0.1], [0.1]).PValue);

    [Fact]
    public void MeanDifference_DecimalTies_CountAsEqual() =>
        // Means of 0.3 and of 0.1 + 0.2 apart by rounding only: 0.1, 0.5 against 0.2, 0.4 is the least difference there is.
        Assert.Equal(1, PermutationTest.MeanDifference([0.1, 0.5], [0.2, 0.4]).PValue);

    [Fact]
    public void MeanDifference_RandomSplits_NearTheExactValue()
    {
        double[] first = Datasets.Values("ties");
        double[] second = Datasets.Values("triple");
        double exact = PermutationTest.MeanDifference(first, second).PValue;

        PermutationResult random = PermutationTest.MeanDifference(
            first,
            second,
            new PermutationOptions
            {
                Mode = PermutationMode.Random,
                Resamples = 100_000,
                Seed = 8,
            }
        );

        Assert.False(random.IsExact);
        // Four standard deviations of a binomial share.
        Assert.Equal(exact, random.PValue, 4 * Math.Sqrt(exact * (1 - exact) / 100_000) + 1e-5);
    }

    [Fact]
    public void Of_ManyValues_TakesRandomSplitsAndSaysSo()
    {
        var first = Sample.Of(Datasets.Values("odd"));
        var second = Sample.Of(Datasets.Values("outliers"));

        PermutationResult result = PermutationTest.Of(first, second, s_difference);

        Assert.False(result.IsExact);
        // Means 55.7 and 21.1 are never as far apart by chance: the least p that so many splits give.
        Assert.Equal(1.0 / 10_000, result.PValue);
        Assert.Equal("difference of means, 9999 random permutations, seed 0", result.Method);
        Assert.Equal(result, PermutationTest.Of(first, second, s_difference));
    }

    [Fact]
    public void MeanDifference_ThirtySixValues_IsExact()
    {
        double[] first = [.. Enumerable.Range(0, 18).Select(i => (double)i)];
        double[] second = [.. Enumerable.Range(18, 18).Select(i => (double)i)];

        PermutationResult result = PermutationTest.MeanDifference(first, second);

        // Two splits of C(36, 18) are so far out: this one and its mirror image.
        Assert.Equal(9_075_135_300, result.Splits);
        Agree.Relative(2 / 9_075_135_300.0, result.PValue, 1e-14);
    }

    [Fact]
    public void Exact_TooMuch_IsRefusedWithTheMostThatWouldDo()
    {
        double[] values = [.. Enumerable.Range(0, 20).Select(i => (double)i)];
        var exact = new PermutationOptions { Mode = PermutationMode.Exact };
        var means = Assert.Throws<ArgumentException>(() => PermutationTest.MeanDifference(values, values, exact));
        var any = Assert.Throws<ArgumentException>(() =>
            PermutationTest.Of(Sample.Of(values), Sample.Of(values), s_difference, exact)
        );

        Assert.Equal("options", means.ParamName);
        Assert.StartsWith(
            "Count of values must be at most 36 for an exact permutation test; was 40.",
            means.Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Count of splits must be at most 2000000 for an exact permutation test; was 137846528820.",
            any.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Arguments_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => PermutationTest.MeanDifference([1, double.NaN], [2]),
            "first",
            "Value at index 1 must be a finite number; was NaN."
        );
        Distributions.Refusal.Of(
            () => new PermutationOptions { Resamples = 0 },
            "Resamples",
            "Count of resamples must be between 99 and 1E+07; was 0."
        );
        Assert.Equal(
            "statistic",
            Assert
                .Throws<ArgumentException>(() =>
                    PermutationTest.Of(
                        Sample.Of(1, 2),
                        Sample.Of(0, 0, 3),
                        TwoSampleStatistic.RatioOf(Statistic.Of("least", v => Location.Median(v)))
                    )
                )
                .ParamName
        );
    }

    private static PermutationOptions Asked(Alternative alternative) => new() { Alternative = alternative };

    private static double Sum(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values)
        {
            sum += value;
        }

        return sum;
    }
}
