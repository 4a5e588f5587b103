using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>The tests by ranks and the intervals that belong to them.</summary>
internal static class RankProcedures
{
    private static readonly RankTestOptions ByNormal = new() { Distribution = NullDistribution.Normal };

    private static readonly EquivalenceMargin Margin = EquivalenceMargin.Of(-Scene.Shift, Scene.Shift);
    private static readonly EquivalenceMargin FactorMargin = EquivalenceMargin.WithinFactor(Scene.Factor);

    private static readonly Promise OfSymmetric = new(Shapes.Normal, Elsewhere: "populations that are not symmetric");

    private static readonly Promise OfOneShape = new(Shapes.Alike, Elsewhere: "where shapes or spreads differ");

    private static readonly Promise OfCommonShape = new(Shapes.Alike);

    private static readonly Promise OfAnyShape = new(Shapes.All, From: 10, Elsewhere: "fewer than 10 values a sample");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        Interval(
            "HodgesLehmannInterval.Location",
            "median of the mean of two values",
            s => HodgesLehmannInterval.Location(s.First),
            s => s.Population.PseudoMedian,
            OfSymmetric
        ),
        Interval(
            "HodgesLehmannInterval.Location, normal ranks",
            "median of the mean of two values",
            s => HodgesLehmannInterval.Location(s.First, distribution: NullDistribution.Normal),
            s => s.Population.PseudoMedian,
            OfSymmetric
        ),
        OnAll(
            Interval(
                "HodgesLehmannInterval.Shift",
                "shift",
                s => HodgesLehmannInterval.Shift(s.Shifted, s.Second),
                _ => Scene.Shift,
                OfOneShape
            )
        ),
        OnAll(
            Interval(
                "HodgesLehmannInterval.Shift, normal ranks",
                "shift",
                s => HodgesLehmannInterval.Shift(s.Shifted, s.Second, distribution: NullDistribution.Normal),
                _ => Scene.Shift,
                OfOneShape
            )
        ),
        Interval(
            "HodgesLehmannInterval.Ratio",
            "ratio under a common shape",
            s => HodgesLehmannInterval.Ratio(s.Scaled, s.Second),
            _ => Scene.Factor,
            OfCommonShape
        ),
        Interval(
            "EffectSize.HedgesG",
            "difference of means in standard deviations",
            s => EffectSize.HedgesG(s.Shifted, s.Second),
            s => Scene.Shift / Math.Sqrt(s.Population.Variance),
            new(Shapes.Normal, Exact: Shapes.Normal, Elsewhere: "for normal populations only")
        ),
        OnAll(
            Interval(
                "TwoSample.BrunnerMunzel",
                "probability of superiority",
                s => TwoSample.BrunnerMunzel(s.First, s.Second).Estimate,
                _ => 0.5,
                OfAnyShape
            )
        ),
        OnAll(
            Interval(
                "EffectSize.Superiority",
                "probability of superiority",
                s => EffectSize.Superiority(s.First, s.Second),
                _ => 0.5,
                OfAnyShape
            )
        ),
        OnAll(
            Interval(
                "EffectSize.CliffDelta",
                "Cliff's delta",
                s => EffectSize.CliffDelta(s.First, s.Second),
                _ => 0,
                OfAnyShape
            )
        ),
        Test(
            "OneSample.SignedRank",
            "the median of the mean of two values is as given",
            s => OneSample.SignedRank(s.First, options: new() { NullValue = s.Population.PseudoMedian }).PValue,
            OfSymmetric
        ),
        Test(
            "Paired.SignedRank",
            "no shift between pairs",
            s => Paired.SignedRank(s.First, s.Second).PValue,
            OfCommonShape
        ),
        Test(
            "Paired.SignedRank, normal ranks",
            "no shift between pairs",
            s => Paired.SignedRank(s.First, s.Second, options: ByNormal).PValue,
            OfCommonShape
        ),
        OnAll(
            Test(
                "TwoSample.MannWhitney",
                "one population",
                s => TwoSample.MannWhitney(s.First, s.Second).PValue,
                OfOneShape
            )
        ),
        OnAll(
            Test(
                "TwoSample.MannWhitney, normal ranks",
                "one population",
                s => TwoSample.MannWhitney(s.First, s.Second, ByNormal).PValue,
                OfOneShape
            )
        ),
        OnAll(
            Test(
                "TwoSample.BrunnerMunzel",
                "neither tends to be larger",
                s => TwoSample.BrunnerMunzel(s.First, s.Second).PValue,
                OfAnyShape
            )
        ),
        OnAll(Test("OneWay.KruskalWallis", "one population", s => OneWay.KruskalWallis(s.Groups).PValue, OfOneShape)),
        OnAll(
            Test(
                "Equivalence.MannWhitney",
                "the shift is the margin",
                s => Equivalence.MannWhitney(s.Shifted, s.Second, Margin).PValue,
                OfOneShape
            )
        ),
        Test(
            "Equivalence.MannWhitneyOnLogs",
            "the ratio is the margin",
            s => Equivalence.MannWhitneyOnLogs(s.Scaled, s.Second, FactorMargin).PValue,
            OfCommonShape
        ),
    ];

    private static Procedure OnAll(Procedure procedure) => procedure with { Tried = Shapes.All };
}
