using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>The intervals of one and of two samples.</summary>
internal static class IntervalProcedures
{
    private static readonly ToleranceOptions UpperTolerance = new() { Side = ToleranceSide.Upper };
    private static readonly ToleranceOptions LowerTolerance = new() { Side = ToleranceSide.Lower };

    private static readonly Promise OfMean = new(
        Shapes.Normal | Shapes.Tied,
        Exact: Shapes.Normal,
        Elsewhere: "skew and outliers: held less often than said until the count is large beside the skewness"
    );

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

    private static readonly Promise OfUnequal = new(Shapes.All);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        Interval("MeanInterval.StudentT", "mean", s => MeanInterval.StudentT(s.First), s => s.Population.Mean, OfMean),
        Interval(
            "TrimmedMeanInterval.Yuen",
            "mean of the middle six tenths",
            s => TrimmedMeanInterval.Yuen(s.First),
            s => s.Population.TrimmedMean,
            new(
                Shapes.Normal | Shapes.Contaminated | Shapes.Tied,
                From: 10,
                Elsewhere: "fewer than 10 values, and skew: held a few percent less often than said"
            )
        ),
        Interval(
            "QuantileInterval.Exact, median",
            "median",
            s => QuantileInterval.Exact(s.First),
            s => s.Population.Median,
            OfAny
        ),
        Interval(
            "QuantileInterval.Exact, 0.9",
            "quantile at 0.9",
            s => QuantileInterval.Exact(s.First, 0.9),
            s => s.Population.Quantile(0.9),
            OfAny
        ),
        Interval(
            "QuantileInterval.Interpolated, median",
            "median",
            s => QuantileInterval.Interpolated(s.First),
            s => s.Population.Median,
            OfAny
        ),
        Interval(
            "QuantileInterval.Interpolated, 0.9",
            "quantile at 0.9",
            s => QuantileInterval.Interpolated(s.First, 0.9),
            s => s.Population.Quantile(0.9),
            OfAny
        ),
        Interval(
            "SpreadInterval.Variance",
            "variance",
            s => SpreadInterval.Variance(s.First),
            s => s.Population.Variance,
            OfNormal
        ),
        Interval(
            "SpreadInterval.StandardDeviation",
            "standard deviation",
            s => SpreadInterval.StandardDeviation(s.First),
            s => Math.Sqrt(s.Population.Variance),
            OfNormal
        ),
        Interval(
            "RatioInterval.WelchOnLogs",
            "ratio under a common shape",
            s => RatioInterval.WelchOnLogs(s.Scaled, s.Second),
            _ => Scene.Factor,
            OfAny
        ),
        IntervalOrNoBounds(
            "RatioInterval.Fieller, separate variances",
            "ratio of means",
            s => RatioInterval.Fieller(s.Scaled, s.Second),
            _ => Scene.Factor,
            OfAny
        ),
        IntervalOrNoBounds(
            "RatioInterval.Fieller, equal variances",
            "ratio of means",
            s => RatioInterval.Fieller(s.Scaled, s.Second, variances: VarianceAssumption.Equal),
            _ => Scene.Factor,
            OfAny
        ),
        Interval(
            "RatioInterval.Medians",
            "ratio of medians",
            s => RatioInterval.Medians(s.Scaled, s.Second),
            _ => Scene.Factor,
            new(Shapes.Continuous, From: 5, Elsewhere: "fewer than 5 values, and steps about as large as the spread")
        ),
        Interval(
            "ProportionInterval.Wilson",
            "a proportion, any as likely as another",
            s => ProportionInterval.Wilson(s.Successes, s.First.Count),
            s => s.Probability,
            OfAny
        ) with
        {
            Tried = Shapes.Normal,
        },
        Interval(
            "ProportionInterval.ClopperPearson",
            "a proportion, any as likely as another",
            s => ProportionInterval.ClopperPearson(s.Successes, s.First.Count),
            s => s.Probability,
            OfAny
        ) with
        {
            Tried = Shapes.Normal,
        },
        Interval(
            "PredictionInterval.Normal",
            "one further value",
            s => PredictionInterval.Normal(s.First),
            s => s.Further,
            OfNormal
        ),
        Interval(
            "PredictionInterval.DistributionFree",
            "one further value",
            s => PredictionInterval.DistributionFree(s.First),
            s => s.Further,
            OfAny
        ),
        IntervalThat(
            "ToleranceInterval.Normal, both sides",
            "95 % of the population",
            s => ToleranceInterval.Normal(s.First).Interval,
            HoldsContent,
            OfNormal
        ),
        IntervalThat(
            "ToleranceInterval.Normal, upper",
            "95 % of the population",
            s => ToleranceInterval.Normal(s.First, UpperTolerance).Interval,
            HoldsContent,
            OfNormal
        ),
        IntervalThat(
            "ToleranceInterval.DistributionFree, both sides",
            "95 % of the population",
            s => ToleranceInterval.DistributionFree(s.First).Interval,
            HoldsContent,
            OfAny
        ),
        IntervalThat(
            "ToleranceInterval.DistributionFree, lower",
            "95 % of the population",
            s => ToleranceInterval.DistributionFree(s.First, LowerTolerance).Interval,
            HoldsContent,
            OfAny
        ),
        Interval(
            "OneSample.StudentT",
            "mean",
            s => OneSample.StudentT(s.First).Estimate,
            s => s.Population.Mean,
            OfMean
        ),
        Interval(
            "Paired.StudentT",
            "mean of differences",
            s => Paired.StudentT(s.Shifted, s.Second).Estimate,
            _ => Scene.Shift,
            OfAny
        ),
        Interval(
            "TwoSample.Welch",
            "difference of means",
            s => TwoSample.Welch(s.Shifted, s.Second).Estimate,
            _ => Scene.Shift,
            OfUnequal
        ) with
        {
            Tried = Shapes.All,
        },
        Interval(
            "TwoSample.Pooled",
            "difference of means",
            s => TwoSample.Pooled(s.Shifted, s.Second).Estimate,
            _ => Scene.Shift,
            OfAlike
        ) with
        {
            Tried = Shapes.All,
        },
        Interval(
            "TwoSample.YuenWelch",
            "difference of trimmed means",
            s => TwoSample.YuenWelch(s.Shifted, s.Second).Estimate,
            _ => Scene.Shift,
            OfUnequal
        ) with
        {
            Tried = Shapes.All,
        },
        Interval(
            "Spread.VarianceRatio",
            "ratio of variances",
            s => Spread.VarianceRatio(s.Scaled, s.Second).Estimate,
            _ => Scene.Factor * Scene.Factor,
            OfNormal
        ),
    ];

    private static bool HoldsContent(Scene scene, Interval ends)
    {
        // What lies on the lower end is inside.
        double below = double.IsInfinity(ends.Lower) ? 0 : scene.Population.Cdf(Math.BitDecrement(ends.Lower));
        double upTo = double.IsInfinity(ends.Upper) ? 1 : scene.Population.Cdf(ends.Upper);
        return upTo - below >= Confidence;
    }
}
