using McuBench.Stats.Hypotheses;
using McuBench.Stats.Resampling;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>The tests, each on data for which what it takes to be true is true.</summary>
internal static class TestProcedures
{
    private static readonly Promise OfMean = new(
        Shapes.Normal | Shapes.Tied,
        Exact: Shapes.Normal,
        Elsewhere: "skew and outliers: rejects more often than said until the count is large beside the skewness"
    );

    private static readonly Promise OfSeveralMeans = OfMean with
    {
        Exact = Shapes.None,
        Elsewhere = "skew and outliers: as the t tests that gave the p-values",
    };

    private static readonly Promise OfNormal = new(
        Shapes.Normal,
        Exact: Shapes.Normal,
        Elsewhere: "for normal populations only, at any count"
    );

    private static readonly Promise OfAny = new(Shapes.Alike);

    private static readonly Promise OfAlike = new(
        Shapes.Alike,
        Elsewhere: "where spreads differ, and counts are small or differ too"
    );

    private static readonly Promise OfOnePopulation = new(
        Shapes.Alike,
        Elsewhere: "where spreads differ: the null hypothesis is one population, spread included"
    );

    private static readonly Promise OfUnequal = new(Shapes.All);

    private static readonly EquivalenceMargin Margin = EquivalenceMargin.Of(-Scene.Shift, Scene.Shift);
    private static readonly EquivalenceMargin FactorMargin = EquivalenceMargin.WithinFactor(Scene.Factor);

    private static readonly PermutationOptions RandomSplits = new() { Mode = PermutationMode.Random, Resamples = 999 };
    private static readonly TwoSampleStatistic MedianDifference = TwoSampleStatistic.DifferenceOf(Statistic.Median);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        Test(
            "OneSample.StudentT",
            "the mean is as given",
            s => OneSample.StudentT(s.First, new() { NullValue = s.Population.Mean }).PValue,
            OfMean
        ),
        Test("Paired.StudentT", "no difference of means", s => Paired.StudentT(s.First, s.Second).PValue, OfAny),
        Test(
            "TwoSample.Welch",
            "no difference of means",
            s => TwoSample.Welch(s.First, s.Second).PValue,
            OfUnequal
        ) with
        {
            Tried = Shapes.All,
        },
        Test(
            "TwoSample.Pooled",
            "no difference of means",
            s => TwoSample.Pooled(s.First, s.Second).PValue,
            OfAlike
        ) with
        {
            Tried = Shapes.All,
        },
        Test(
            "TwoSample.YuenWelch",
            "no difference of trimmed means",
            s => TwoSample.YuenWelch(s.First, s.Second).PValue,
            OfUnequal
        ) with
        {
            Tried = Shapes.All,
        },
        Test(
            "Equivalence.Welch",
            "the difference of means is the margin",
            s => Equivalence.Welch(s.Shifted, s.Second, Margin).PValue,
            OfUnequal
        ) with
        {
            Tried = Shapes.All,
        },
        Test(
            "Equivalence.Pooled",
            "the difference of means is the margin",
            s => Equivalence.Pooled(s.Shifted, s.Second, Margin).PValue,
            OfAlike
        ) with
        {
            Tried = Shapes.All,
        },
        Test(
            "Equivalence.WelchOnLogs",
            "the ratio is the margin",
            s => Equivalence.WelchOnLogs(s.Scaled, s.Second, FactorMargin).PValue,
            OfAny
        ),
        Test("Spread.VarianceRatio", "equal variances", s => Spread.VarianceRatio(s.First, s.Second).PValue, OfNormal),
        Test(
            "Spread.Levene, from medians",
            "four equal variances",
            s => Spread.Levene(s.Groups).PValue,
            new(Shapes.Alike, From: 5)
        ),
        Test(
            "Spread.Levene, from means",
            "four equal variances",
            s => Spread.Levene(s.Groups, SpreadCentre.Mean).PValue,
            new(Shapes.Normal, From: 30, Elsewhere: "skew, outliers and fewer than 30 values: take medians")
        ),
        Test(
            "MultipleComparisons.Adjust, Holm",
            "three null hypotheses: any rejected",
            s => Adjusted(s, AdjustmentMethod.Holm),
            OfSeveralMeans
        ),
        Test(
            "MultipleComparisons.Adjust, Bonferroni",
            "three null hypotheses: any rejected",
            s => Adjusted(s, AdjustmentMethod.Bonferroni),
            OfSeveralMeans
        ),
        Test(
            "MultipleComparisons.Adjust, Hochberg",
            "three null hypotheses: any rejected",
            s => Adjusted(s, AdjustmentMethod.Hochberg),
            OfSeveralMeans
        ),
        Test(
            "MultipleComparisons.Adjust, Benjamini-Hochberg",
            "three null hypotheses: any rejected",
            s => Adjusted(s, AdjustmentMethod.BenjaminiHochberg),
            OfSeveralMeans
        ),
        Test(
            "PermutationTest.MeanDifference",
            "one population",
            s =>
                PermutationTest
                    .MeanDifference(s.First.Values, s.Second.Values, new() { Resamples = 999, Seed = s.Seed })
                    .PValue,
            OfOnePopulation
        ) with
        {
            Tried = Shapes.All,
            OneIn = 10,
        },
        Test(
            "PermutationTest.Of, difference of medians",
            "one population",
            s => PermutationTest.Of(s.First, s.Second, MedianDifference, RandomSplits with { Seed = s.Seed }).PValue,
            OfOnePopulation
        ) with
        {
            Tried = Shapes.All,
            OneIn = 10,
        },
    ];

    /// <summary>The least of three adjusted p-values, of independent tests that each group has the population's mean.</summary>
    private static double Adjusted(Scene scene, AdjustmentMethod method)
    {
        var options = new TTestOptions { NullValue = scene.Population.Mean };
        double[] pValues = new double[3];
        for (int i = 0; i < pValues.Length; i++)
        {
            pValues[i] = OneSample.StudentT(scene.Groups[i], options).PValue;
        }

        return MultipleComparisons.Adjust(pValues, method).Values.Min();
    }
}
