using McuBench.Stats.Regression;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>The intervals and tests of straight lines, whose scatter has the population's shape.</summary>
internal static class LineProcedures
{
    private static readonly Promise OfNormal = new(
        Shapes.Normal,
        Exact: Shapes.Normal,
        Elsewhere: "scatter that is not normal: less often than said where points are few"
    );

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        IntervalOnly(
            "StraightLine.Fit, slope",
            "slope",
            s => StraightLine.Fit(s.Abscissas, s.Line).IntervalOfSlope(),
            _ => Scene.Slope,
            OfNormal
        ),
        IntervalOnly(
            "StraightLine.Fit, intercept",
            "mean at 0",
            s => StraightLine.Fit(s.Abscissas, s.Line).IntervalOfIntercept(),
            s => s.Population.Mean,
            OfNormal
        ),
        Interval(
            "LineFit.PredictionAt",
            "one further value",
            s => StraightLine.Fit(s.Abscissas, s.Line).PredictionAt(1),
            s => Scene.Slope + s.Further,
            OfNormal
        ),
        IntervalOrNoBounds(
            "InversePrediction.Of",
            "abscissa of a further value",
            s => InversePrediction.Of(StraightLine.Fit(s.Abscissas, s.Line), Scene.Slope * 2 + s.Further),
            _ => 2,
            OfNormal with
            {
                Exact = Shapes.None,
            }
        ),
        Interval(
            "RobustLine.TheilSen",
            "slope",
            s => RobustLine.TheilSen(s.Abscissas, s.Line).Slope,
            _ => Scene.Slope,
            new(Shapes.Alike, From: 10, Elsewhere: "fewer than 10 points")
        ),
        Test(
            "LackOfFit.OfStraightLine",
            "the line is straight",
            s => LackOfFit.OfStraightLine(s.Abscissas, s.Line).PValue,
            OfNormal
        ),
    ];
}
