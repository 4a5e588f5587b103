using McuBench.Stats.Descriptive;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;
using McuBench.Stats.Regression;
using McuBench.Stats.Resampling;
using McuBench.Stats.Uncertainty;
using static McuBench.Stats.Tests.Edges.EdgeProcedure;

namespace McuBench.Stats.Tests.Edges;

/// <summary>Every public procedure that takes data. To add one, add its line.</summary>
internal static class EdgeProcedures
{
    private static readonly EquivalenceMargin Margin = EquivalenceMargin.Within(1);
    private static readonly EquivalenceMargin FactorMargin = EquivalenceMargin.WithinFactor(1.1);
    private static readonly PermutationOptions RandomSplits = new() { Mode = PermutationMode.Random, Resamples = 99 };
    private static readonly double[] Probabilities = [0, 0.3, 1];

    internal static IReadOnlyList<EdgeProcedure> All { get; } =
    [
        OfOne("Location.Mean", data => Location.Mean(data)),
        OfOne("Location.GeometricMean", data => Location.GeometricMean(data)),
        OfOne("Location.HarmonicMean", data => Location.HarmonicMean(data)),
        OfOne("Location.TrimmedMean", data => Location.TrimmedMean(data, 0.2)),
        OfOne("Location.WinsorizedMean", data => Location.WinsorizedMean(data, 0.2)),
        OfOne("Location.Median", data => Location.Median(data)),
        OfSample("Location.Median, sample", sample => Location.Median(sample)),
        OfOne("Scale.Variance", data => Scale.Variance(data)),
        OfOne("Scale.StandardDeviation", data => Scale.StandardDeviation(data)),
        OfOne("Scale.MedianAbsoluteDeviation", data => Scale.MedianAbsoluteDeviation(data)),
        OfOne("Scale.Sn", data => Scale.Sn(data)),
        OfOne("Scale.Qn", data => Scale.Qn(data)),
        OfOne("Scale.InterquartileRange", data => Scale.InterquartileRange(data)),
        OfOne("Scale.NormalizedInterquartileRange", data => Scale.NormalizedInterquartileRange(data)),
        OfOne("Scale.WinsorizedVariance", data => Scale.WinsorizedVariance(data, 0.2)),
        OfOne("Shape.Skewness", data => Shape.Skewness(data)),
        OfOne("Shape.Skewness, population", data => Shape.Skewness(data, Bias.Kept)),
        OfOne("Shape.ExcessKurtosis", data => Shape.ExcessKurtosis(data)),
        OfOne("Shape.ExcessKurtosis, population", data => Shape.ExcessKurtosis(data, Bias.Kept)),
        OfOne("RelativeSpread.CoefficientOfVariation", data => RelativeSpread.CoefficientOfVariation(data)),
        OfOne("RelativeSpread.FromMedianAbsoluteDeviation", data => RelativeSpread.FromMedianAbsoluteDeviation(data)),
        OfOne("RelativeSpread.FromInterquartileRange", data => RelativeSpread.FromInterquartileRange(data)),
        .. Enum.GetValues<QuantileDefinition>()
            .Select(definition => OfOne($"Quantiles.Of, {definition}", data => Quantiles.Of(data, 0.3, definition))),
        OfOne("Quantiles.Of, several", SeveralQuantiles),
        OfSample("Quantiles.Of, sample", sample => Quantiles.Of(sample, 0.9)),
        OfSample("HarrellDavis.Quantile", sample => HarrellDavis.Quantile(sample, 0.3)),
        OfOne("HodgesLehmann.Location", data => HodgesLehmann.Location(data)),
        OfSample("HodgesLehmann.Location, sample", sample => HodgesLehmann.Location(sample)),
        OfSamples("HodgesLehmann.Shift", (a, b) => HodgesLehmann.Shift(a, b)),
        OfOne("Huber.Location", data => Huber.Location(data)),
        OfOne("Huber.AlgorithmA", data => Huber.AlgorithmA(data)),
        OfOne("Biweight.Location", data => Biweight.Location(data)),
        OfOne("Biweight.Midvariance", data => Biweight.Midvariance(data)),
        OfOne("Ranks.Of", data => Ranks.Of(data)),
        OfSample("MeanInterval.StudentT", sample => MeanInterval.StudentT(sample)),
        OfOne("SteppedMeanInterval.Of", data => SteppedMeanInterval.Of(data, 0.5)),
        OfOne(
            "SteppedMeanInterval.Of, random start",
            data => SteppedMeanInterval.Of(data, 0.5, SteppedReading.RandomStart)
        ),
        OfSample("TrimmedMeanInterval.Yuen", sample => TrimmedMeanInterval.Yuen(sample)),
        OfSample("QuantileInterval.Exact", sample => QuantileInterval.Exact(sample)),
        OfSample("QuantileInterval.Interpolated", sample => QuantileInterval.Interpolated(sample)),
        OfSample("SpreadInterval.Variance", sample => SpreadInterval.Variance(sample)),
        OfSample("SpreadInterval.StandardDeviation", sample => SpreadInterval.StandardDeviation(sample)),
        OfSample("PredictionInterval.Normal", sample => PredictionInterval.Normal(sample)),
        OfSample("PredictionInterval.DistributionFree", sample => PredictionInterval.DistributionFree(sample, 0.5)),
        OfSample("ToleranceInterval.Normal", sample => ToleranceInterval.Normal(sample)),
        OfSample(
            "ToleranceInterval.DistributionFree",
            sample => ToleranceInterval.DistributionFree(sample, new() { Content = 0.5 })
        ),
        OfSamples("RatioInterval.WelchOnLogs", (a, b) => RatioInterval.WelchOnLogs(a, b)),
        OfSamples("RatioInterval.Fieller", (a, b) => RatioInterval.Fieller(a, b)),
        OfSamples(
            "RatioInterval.Fieller, equal variances",
            (a, b) => RatioInterval.Fieller(a, b, variances: VarianceAssumption.Equal)
        ),
        OfSamples("RatioInterval.Medians", (a, b) => RatioInterval.Medians(a, b)),
        OfSample("OneSample.StudentT", sample => OneSample.StudentT(sample)),
        OfPoints("Paired.StudentT", (a, b) => Paired.StudentT(Sample.Of(a), Sample.Of(b))),
        OfSamples("TwoSample.Welch", (a, b) => TwoSample.Welch(a, b)),
        OfSamples("TwoSample.Pooled", (a, b) => TwoSample.Pooled(a, b)),
        OfSamples("TwoSample.YuenWelch", (a, b) => TwoSample.YuenWelch(a, b)),
        OfSamples("Equivalence.Welch", (a, b) => Equivalence.Welch(a, b, Margin)),
        OfSamples("Equivalence.Pooled", (a, b) => Equivalence.Pooled(a, b, Margin)),
        OfSamples("Equivalence.WelchOnLogs", (a, b) => Equivalence.WelchOnLogs(a, b, FactorMargin)),
        OfSamples("Spread.VarianceRatio", (a, b) => Spread.VarianceRatio(a, b)),
        OfSamples("Spread.Levene", (a, b) => Spread.Levene([a, b])),
        OfSample("HodgesLehmannInterval.Location", sample => HodgesLehmannInterval.Location(sample)),
        OfSamples("HodgesLehmannInterval.Shift", (a, b) => HodgesLehmannInterval.Shift(a, b)),
        OfSample("OneSample.SignedRank", sample => OneSample.SignedRank(sample)),
        OfPoints("Paired.SignedRank", (a, b) => Paired.SignedRank(Sample.Of(a), Sample.Of(b))),
        OfSamples("TwoSample.MannWhitney", (a, b) => TwoSample.MannWhitney(a, b)),
        OfSamples("TwoSample.BrunnerMunzel", (a, b) => TwoSample.BrunnerMunzel(a, b)),
        OfSamples("EffectSize.Superiority", (a, b) => EffectSize.Superiority(a, b)),
        OfSamples("EffectSize.CliffDelta", (a, b) => EffectSize.CliffDelta(a, b)),
        OfSamples("OneWay.KruskalWallis", (a, b) => OneWay.KruskalWallis(a, b)),
        OfOne("Autocorrelation.AtLag", data => Autocorrelation.AtLag(data, 2)),
        OfOne("Autocorrelation.LagOne", data => Autocorrelation.LagOne(data)),
        OfSamples("HodgesLehmannInterval.Ratio", (a, b) => HodgesLehmannInterval.Ratio(a, b)),
        OfSamples("EffectSize.HedgesG", (a, b) => EffectSize.HedgesG(a, b)),
        OfSamples("Equivalence.MannWhitney", (a, b) => Equivalence.MannWhitney(a, b, Margin)),
        OfSamples("Equivalence.MannWhitneyOnLogs", (a, b) => Equivalence.MannWhitneyOnLogs(a, b, FactorMargin)),
        OfSample("Trend.MannKendall", sample => Trend.MannKendall(sample)),
        OfSample("Randomness.Runs", sample => Randomness.Runs(sample)),
        OfSample("Randomness.VonNeumann", sample => Randomness.VonNeumann(sample)),
        OfSample("Randomness.LjungBox", sample => Randomness.LjungBox(sample, 2)),
        OfPoints("FeasibleLines.Of", LinesThroughBars),
        OfSamples("NestedAnova.Of", (a, b) => NestedAnova.Of(NestedData.Of(a, b))),
        OfSamples("NestedReml.Of", (a, b) => NestedReml.Of(NestedData.Of(a, b))),
        OfPoints("CrossedAnova.Of", (a, b) => CrossedAnova.Of([Sample.Of(a), Sample.Of(b)])),
        OfSample("Normality.ShapiroWilk", sample => Normality.ShapiroWilk(sample)),
        OfSample("Normality.AndersonDarling", sample => Normality.AndersonDarling(sample)),
        OfSample("Outliers.Grubbs", sample => Outliers.Grubbs(sample)),
        OfSample("Outliers.GeneralizedEsd", sample => Outliers.GeneralizedEsd(sample, 2)),
        OfSample("Outliers.MedianRule", sample => Outliers.MedianRule(sample)),
        OfSamples("OneWay.Anova", (a, b) => OneWay.Anova(a, b)),
        OfSamples("OneWay.Welch", (a, b) => OneWay.Welch(a, b)),
        OfSamples("Pairwise.Tukey", (a, b) => Pairwise.Tukey([a, b])),
        OfSamples("Pairwise.GamesHowell", (a, b) => Pairwise.GamesHowell([a, b])),
        OfSamples("Pairwise.Dunn", (a, b) => Pairwise.Dunn([a, b])),
        OfOne("MultipleComparisons.Adjust", data => MultipleComparisons.Adjust(data)),
        .. Enum.GetValues<BootstrapMethod>().SelectMany(Bootstraps),
        new("PermutationTest.MeanDifference", (a, b) => PermutationTest.MeanDifference(a, b)),
        new("PermutationTest.MeanDifference, random", (a, b) => PermutationTest.MeanDifference(a, b, RandomSplits)),
        OfSamples(
            "PermutationTest.Of",
            (a, b) => PermutationTest.Of(a, b, TwoSampleStatistic.DifferenceOf(Statistic.Median), RandomSplits)
        ),
        OfPoints("StraightLine.Fit", (x, y) => Readings(StraightLine.Fit(x, y))),
        OfPoints("StraightLine.FitWeighted", (x, y) => StraightLine.FitWeighted(x, y, Ones(x))),
        OfPoints("InversePrediction.Of", (x, y) => InversePrediction.Of(StraightLine.Fit(x, y), 1)),
        OfPoints("RobustLine.TheilSen", (x, y) => RobustLine.TheilSen(x, y)),
        OfPoints("RobustLine.Siegel", (x, y) => RobustLine.Siegel(x, y)),
        OfPoints("LackOfFit.OfStraightLine", (x, y) => LackOfFit.OfStraightLine(x, y)),
        OfPoints("LinearModel.Fit", (x, y) => LinearModel.Fit([x], y)),
        OfPoints("Polynomial.Fit", (x, y) => Polynomial.Fit(x, y, 2)),
        OfPoints("ErrorsInVariables.Deming", (x, y) => ErrorsInVariables.Deming(x, y)),
        OfPoints("ErrorsInVariables.York", (x, y) => ErrorsInVariables.York(x, y, Ones(x), Ones(y))),
        OfSample("InputQuantity.FromReadings", sample => InputQuantity.FromReadings("x", sample)),
        OfPoints("Correlation.FromReadings", (a, b) => Correlation.FromReadings("x", Sample.Of(a), "y", Sample.Of(b))),
    ];

    private static IEnumerable<EdgeProcedure> Bootstraps(BootstrapMethod method)
    {
        var options = new BootstrapOptions
        {
            Method = method,
            Resamples = 99,
            InnerResamples = 10,
        };
        var ratio = TwoSampleStatistic.RatioOf(Statistic.Mean);
        var shift = TwoSampleStatistic.DifferenceOf(Statistic.Median);
        return
        [
            OfSample($"Bootstrap.Of, mean, {method}", a => Bootstrap.Of(a, Statistic.Mean, options)),
            OfSample($"Bootstrap.Of, median, {method}", a => Bootstrap.Of(a, Statistic.Median, options)),
            OfSample(
                $"Bootstrap.Of, blocks, {method}",
                a => Bootstrap.Of(a, ResamplingScheme.MovingBlocks(2), Statistic.Mean, options)
            ),
            OfSamples($"Bootstrap.Of, ratio, {method}", (a, b) => Bootstrap.Of(a, b, ratio, options)),
            OfSamples($"Bootstrap.Of, shift, {method}", (a, b) => Bootstrap.Of(a, b, shift, options)),
            OfPoints(
                $"Bootstrap.OfPairs, {method}",
                (a, b) => Bootstrap.OfPairs(Sample.Of(a), Sample.Of(b), shift, options)
            ),
        ];
    }

    /// <summary>Where no line passes through all bars there is nothing more to ask.</summary>
    private static FeasibleLines? LinesThroughBars(double[] x, double[] y)
    {
        var lines = FeasibleLines.Of(x, [.. y.Select(v => v - 1)], [.. y.Select(v => v + 1)]);
        return lines.IsEmpty ? null : lines;
    }

    private static double[] SeveralQuantiles(double[] data)
    {
        double[] results = new double[Probabilities.Length];
        Quantiles.Of(data, Probabilities, results);
        return results;
    }

    private static object?[] Readings(LineFit line) =>
        [line, line.BandAt(1), line.PredictionAt(1), line.IntervalOfSlope(), line.MeanAt(0)];

    private static double[] Ones(double[] values) => [.. values.Select(_ => 1.0)];
}
