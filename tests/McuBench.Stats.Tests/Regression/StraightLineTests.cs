using FsCheck.Xunit;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class StraightLineTests
{
    [Fact]
    public void Fit_Norris_HoldsTheCertifiedDigits()
    {
        var norris = ReferenceCase.Of("nist-strd", "strd-lin-norris");
        LineFit line = StraightLine.Fit(norris.Numbers("input", "x"), norris.Numbers("input", "y"));

        Agree.Relative(norris.Numbers("recomputed", "estimate"), [line.Intercept, line.Slope], 1e-12);
        Agree.Relative(
            norris.Numbers("recomputed", "sd_of_estimate"),
            [line.InterceptStandardError!.Value, line.SlopeStandardError!.Value],
            1e-12
        );
        Agree.Relative(norris.Number("recomputed", "residual_sd"), line.ResidualStandardDeviation!.Value, 1e-12);
        Agree.Relative(norris.Number("recomputed", "r_squared"), line.RSquared!.Value, 1e-15);
        Agree.Relative(norris.Number("expected", "ss_residual"), line.SumOfSquaredResiduals, 1e-12);
        Assert.Equal(norris.Number("expected", "df_residual"), line.DegreesOfFreedom);
        Assert.Equal(36, line.Count);
    }

    // statsmodels takes its t quantiles from SciPy 1.10, which has them to 5e-9 only.
    [Theory]
    [InlineData("lines-r", 1e-12)]
    [InlineData("lines-statsmodels", 1e-8)]
    public void FitAndFitWeighted_EightPoints_AgreeWithRAndStatsmodels(string file, double tolerance)
    {
        var data = ReferenceCase.Of("lines-r", "data");
        double[] x = data.Numbers("x");
        double[] y = data.Numbers("y");
        double[] u = data.Numbers("u");
        LineFit plain = StraightLine.Fit(x, y);
        LineFit relative = StraightLine.FitWeighted(x, y, u, WeightMeaning.Relative);
        foreach ((string name, LineFit line) in new[] { ("plain", plain), ("relative", relative) })
        {
            var expected = ReferenceCase.Of(file, name);

            Agree.Relative(expected.Number("sd"), line.ResidualStandardDeviation!.Value, tolerance);
            Agree.Relative(expected.Number("r_squared"), line.RSquared!.Value, tolerance);
            Agree.Relative(expected.Numbers("mean_at_5"), ValueAndEnds(line.MeanAt(5)), tolerance);
            AgreeOnParameters(expected, line, tolerance);
        }

        Agree.Relative(
            ReferenceCase.Of(file, "plain").Numbers("prediction_at_5"),
            ValueAndEnds(plain.PredictionAt(5)),
            tolerance
        );
        LineFit absolute = StraightLine.FitWeighted(x, y, u);
        var known = ReferenceCase.Of(file, "absolute");

        AgreeOnParameters(known, absolute, tolerance);
        Agree.Relative(known.Number("chi_squared"), absolute.SumOfSquaredResiduals, tolerance);
        Assert.Equal(double.PositiveInfinity, absolute.DegreesOfFreedom);
    }

    [Fact]
    public void WeightedPredictionAt_EightPoints_AgreesWithR()
    {
        var data = ReferenceCase.Of("lines-r", "data");
        LineFit line = StraightLine.FitWeighted(
            data.Numbers("x"),
            data.Numbers("y"),
            data.Numbers("u"),
            WeightMeaning.Relative
        );

        Agree.Relative(
            ReferenceCase.Of("lines-r", "relative").Numbers("prediction_at_5_u_0.2"),
            ValueAndEnds(line.WeightedPredictionAt(5, 0.2)),
            1e-12
        );
    }

    [Fact]
    public void Fit_TwoPoints_HasTheLineAndNoUncertainty()
    {
        LineFit line = StraightLine.Fit([1, 3], [10, 20]);

        Assert.Equal(5, line.Intercept);
        Assert.Equal(5, line.Slope);
        Assert.Null(line.InterceptStandardError);
        Assert.Null(line.SlopeStandardError);
        Assert.Null(line.Covariance);
        Assert.Null(line.DegreesOfFreedom);
        Assert.Null(line.ResidualStandardDeviation);
        Assert.Null(line.IntervalOfSlope());
        Assert.Equal("Two points show no scatter: no interval.", Assert.Single(line.MeanAt(2).Notes));
    }

    [Fact]
    public void FitWeighted_TwoPointsOfKnownUncertainty_HasIntervals()
    {
        LineFit line = StraightLine.FitWeighted([1, 3], [10, 20], [0.3, 0.4]);

        // By hand: slope = (y2 - y1)/2 with variance (0.09 + 0.16)/4.
        Agree.Relative(0.25, line.SlopeStandardError!.Value, 1e-15);
        Assert.Equal(double.PositiveInfinity, line.DegreesOfFreedom);
        Assert.NotNull(line.IntervalOfSlope());
    }

    [Fact]
    public void Fit_PointsOnALine_HasNoIntervalThatPretendsScatter()
    {
        double[] x = [0.1, 0.2, 0.3, 0.7, 1.1];
        LineFit line = StraightLine.Fit(x, [.. x.Select(value => 0.3 + 0.1 * value)]);

        Assert.Equal(0, line.SumOfSquaredResiduals);
        Assert.Equal(0, line.SlopeStandardError);
        Assert.Null(line.IntervalOfSlope());
        Assert.Null(line.PredictionAt(1).StandardError);
        Assert.Equal("The points lie on the line: no interval.", Assert.Single(line.PredictionAt(1).Notes));
    }

    [Fact]
    public void Fit_EqualOrdinates_HasNoRSquared() => Assert.Null(StraightLine.Fit([1, 2, 3], [5, 5, 5]).RSquared);

    [Fact]
    public void Fit_EqualAbscissas_AreRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => StraightLine.Fit([2, 2, 2], [1, 2, 3]));

        Assert.Equal("x", refusal.ParamName);
        Assert.StartsWith(
            "Values of x must not all be equal; all 3 were 2.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Fit_CountsDiffer_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => StraightLine.Fit([1, 2, 3], [1, 2]));

        Assert.Equal("y", refusal.ParamName);
        Assert.StartsWith("Count of y must be 3, one for each x; was 2.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_OnePoint_IsRefused() =>
        Assert.StartsWith(
            "Count of values must be at least 2; was 1.",
            Assert.Throws<ArgumentException>(() => StraightLine.Fit([1], [1])).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(1e-200)]
    public void FitWeighted_UncertaintyWithoutAWeight_IsRefusedWithItsIndex(double uncertainty)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            StraightLine.FitWeighted([1, 2, 3], [1, 2, 3], [1, 1, uncertainty])
        );

        Assert.Equal("standardUncertainties", refusal.ParamName);
        Assert.StartsWith("Value at index 2 must be ", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_SquaresOutOfRange_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StraightLine.Fit([-1e200, 0, 1e200], [1, 2, 4]));

    [Fact]
    public void PredictionAt_WeightedFit_AsksForTheUncertainty() =>
        Assert.Contains(
            "WeightedPredictionAt",
            Assert
                .Throws<InvalidOperationException>(() =>
                    StraightLine.FitWeighted([1, 2, 3], [1, 2, 4], [1, 1, 1]).PredictionAt(2)
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void WeightedPredictionAt_PlainFit_IsRefused() =>
        Assert.Throws<InvalidOperationException>(() =>
            StraightLine.Fit([1, 2, 3], [1, 2, 4]).WeightedPredictionAt(2, 1)
        );

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Fit_YShiftedAndScaled_FollowsTheData(Dyadic data)
    {
        double[] y = [.. data.Values, 1, 2, 4];
        double[] x = [.. Enumerable.Range(0, y.Length).Select(i => (double)i * i)];
        LineFit before = StraightLine.Fit(x, y);
        LineFit after = StraightLine.Fit(x, [.. y.Select(value => -4 * value + 16)]);

        Assert.Equal(-4 * before.Slope, after.Slope, 1e-10);
        Assert.Equal(-4 * before.Intercept + 16, after.Intercept, 1e-10);
        Assert.Equal(4 * before.SlopeStandardError!.Value, after.SlopeStandardError!.Value, 1e-9);
        Assert.Equal(16 * before.Covariance!.Value, after.Covariance!.Value, 1e-8);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void FitWeighted_EqualUncertainties_IsThePlainFit(Dyadic data)
    {
        double[] y = [.. data.Values, 1, 2, 4];
        double[] x = [.. Enumerable.Range(0, y.Length).Select(i => (double)i)];
        LineFit plain = StraightLine.Fit(x, y);
        LineFit weighted = StraightLine.FitWeighted(
            x,
            y,
            [.. Enumerable.Repeat(0.5, x.Length)],
            WeightMeaning.Relative
        );

        Assert.Equal(plain.Slope, weighted.Slope, 1e-10);
        Assert.Equal(plain.Intercept, weighted.Intercept, 1e-10);
        Assert.Equal(plain.InterceptStandardError!.Value, weighted.InterceptStandardError!.Value, 1e-9);
    }

    private static void AgreeOnParameters(ReferenceCase expected, LineFit line, double tolerance)
    {
        Agree.Relative(expected.Numbers("coefficients"), [line.Intercept, line.Slope], tolerance);
        Agree.Relative(
            expected.Numbers("errors"),
            [line.InterceptStandardError!.Value, line.SlopeStandardError!.Value],
            tolerance
        );
        Agree.Relative(expected.Number("covariance"), line.Covariance!.Value, tolerance);
        Agree.Relative(expected.Numbers("interval_intercept"), Ends(line.IntervalOfIntercept(0.9)), tolerance);
        Agree.Relative(expected.Numbers("interval_slope"), Ends(line.IntervalOfSlope(0.9)), tolerance);
    }

    private static double[] Ends(Interval? interval) => [interval!.Lower, interval.Upper];

    private static double[] ValueAndEnds(Estimate estimate) => [estimate.Value, .. Ends(estimate.Interval)];
}
