using FsCheck.Xunit;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class LinearModelTests
{
    [Fact]
    public void Fit_Longley_HoldsTheCertifiedDigits()
    {
        ReferenceCase longley = NistLinear.Case("longley");
        double[][] rows = longley.Rows("input", "rows");
        double[][] regressors = [.. Enumerable.Range(1, 6).Select(j => rows.Select(row => row[j]).ToArray())];
        LinearFit fit = LinearModel.Fit(regressors, [.. rows.Select(row => row[0])]);

        // The set is collinear: its coefficients lose five digits of sixteen.
        Agree.Relative(longley.Numbers("recomputed", "estimate"), [.. fit.Coefficients], 2e-11);
        Agree.Relative(longley.Numbers("recomputed", "sd_of_estimate"), Errors(fit), 2e-11);
        Agree.Relative(longley.Number("recomputed", "residual_sd"), fit.ResidualStandardDeviation!.Value, 1e-12);
        Agree.Relative(longley.Number("recomputed", "r_squared"), fit.RSquared!.Value, 1e-14);
        Agree.Relative(longley.Number("recomputed", "F"), fit.FStatistic!.Value, 1e-11);
        Assert.Equal(9, fit.DegreesOfFreedom);
    }

    [Theory]
    [InlineData("noint1")]
    [InlineData("noint2")]
    public void Fit_NoIntercept_HoldsTheCertifiedDigits(string set)
    {
        ReferenceCase reference = NistLinear.Case(set);
        LinearFit fit = LinearModel.Fit(
            [reference.Numbers("input", "x")],
            reference.Numbers("input", "y"),
            intercept: false
        );

        Agree.Relative(reference.Numbers("recomputed", "estimate"), [.. fit.Coefficients], 1e-14);
        Agree.Relative(reference.Numbers("recomputed", "sd_of_estimate"), Errors(fit), 1e-13);
        Agree.Relative(reference.Number("recomputed", "residual_sd"), fit.ResidualStandardDeviation!.Value, 1e-13);
        Agree.Relative(reference.Number("recomputed", "r_squared"), fit.RSquared!.Value, 1e-14);
        Agree.Relative(reference.Number("recomputed", "F"), fit.FStatistic!.Value, 1e-12);
    }

    [Fact]
    public void Fit_OneRegressor_IsTheStraightLine()
    {
        ReferenceCase norris = NistLinear.Case("norris");
        double[] x = norris.Numbers("input", "x");
        double[] y = norris.Numbers("input", "y");
        LineFit line = StraightLine.Fit(x, y);
        LinearFit fit = LinearModel.Fit([x], y);

        Agree.Relative([line.Intercept, line.Slope], [.. fit.Coefficients], 1e-12);
        Agree.Relative([line.InterceptStandardError!.Value, line.SlopeStandardError!.Value], Errors(fit), 1e-12);
        Agree.Relative(line.Covariance!.Value, fit.CovarianceOf(0, 1)!.Value, 1e-12);
        foreach (double at in (double[])[0, 500, 2000])
        {
            Agree.Relative(line.MeanAt(at).StandardError!.Value, fit.MeanAt([at]).StandardError!.Value, 1e-12);
            Agree.Relative(line.PredictionAt(at).Interval!.Upper, fit.PredictionAt([at]).Interval!.Upper, 1e-12);
        }

        Agree.Relative(line.IntervalOfSlope(0.9)!.Lower, fit.IntervalOf(1, 0.9)!.Lower, 1e-12);
        Agree.Relative(line.IntervalOfIntercept(0.9)!.Upper, fit.IntervalOf(0, 0.9)!.Upper, 1e-12);
    }

    [Fact]
    public void Fit_AsManyPointsAsCoefficients_HasNoUncertainty()
    {
        LinearFit fit = LinearModel.Fit(
            [
                [1, 2, 4],
                [1, 0, 3],
            ],
            [5, 6, 9]
        );

        Assert.Null(fit.DegreesOfFreedom);
        Assert.Null(fit.StandardErrorOf(0));
        Assert.Null(fit.IntervalOf(1));
        Assert.Null(fit.FStatistic);
        Assert.Equal(
            "As many coefficients as points show no scatter: no interval.",
            Assert.Single(fit.MeanAt([1, 1]).Notes)
        );
    }

    [Fact]
    public void Fit_PointsOnTheSurface_HasNoIntervalThatPretendsScatter()
    {
        double[] a = [0.1, 0.7, 0.3, 0.9, 0.2];
        double[] b = [1.1, 0.3, 0.8, 0.5, 2.1];
        LinearFit fit = LinearModel.Fit([a, b], [.. a.Zip(b, (x, z) => 0.3 + 0.1 * x - 0.7 * z)]);

        Assert.Equal(0, fit.SumOfSquaredResiduals);
        Assert.Null(fit.IntervalOf(1));
        Assert.Equal("The points lie on the fit: no interval.", Assert.Single(fit.PredictionAt([1, 1]).Notes));
    }

    [Fact]
    public void Fit_DependentRegressor_IsRefusedByItsIndex()
    {
        double[] a = [1, 2, 4, 8, 16];
        double[] b = [3, 1, 4, 1, 5];
        var refusal = Assert.Throws<ArgumentException>(() =>
            LinearModel.Fit([a, b, [.. a.Zip(b, (x, z) => x - 2 * z + 7)]], [1, 2, 3, 4, 5])
        );

        Assert.Equal("regressors", refusal.ParamName);
        Assert.StartsWith(
            "Regressor at index 2 must not be a combination of those before it and a constant; was, to within rounding.",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() =>
            LinearModel.Fit(
                [
                    [2, 2, 2],
                ],
                [1, 2, 3]
            )
        );
    }

    [Fact]
    public void Fit_CountsThatDoNotFit_AreRefused()
    {
        Assert.StartsWith(
            "Count of values of a regressor must be 3, one for each y; was 2.",
            Assert
                .Throws<ArgumentException>(() =>
                    LinearModel.Fit(
                        [
                            [1, 2],
                        ],
                        [1, 2, 3]
                    )
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Count of values must be at least 3; was 2.",
            Assert
                .Throws<ArgumentException>(() =>
                    LinearModel.Fit(
                        [
                            [1, 2],
                            [2, 5],
                        ],
                        [1, 2]
                    )
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Count of regressors must be at least 1; was 0.",
            Assert.Throws<ArgumentException>(() => LinearModel.Fit([], [1, 2])).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Fit_IndexOutOfRange_IsRefused() =>
        Assert.StartsWith(
            "Index of a coefficient must be from 0 to 1; was 2.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    LinearModel
                        .Fit(
                            [
                                [1, 2, 4],
                            ],
                            [1, 2, 3]
                        )
                        .StandardErrorOf(2)
                )
                .Message,
            StringComparison.Ordinal
        );

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Fit_RegressorsInAnotherOrderAndUnit_FollowTheData(Dyadic data)
    {
        double[] y = [.. data.Values, 1, 5, 2, 8];
        double[] a = [.. y.Select((_, i) => (double)i)];
        double[] b = [.. y.Select((_, i) => (double)(i * i % 7))];
        LinearFit fit = LinearModel.Fit([a, b], y);
        LinearFit other = LinearModel.Fit(
            [
                [.. b.Select(value => value / 8)],
                a,
            ],
            y
        );

        Assert.Equal(fit.Coefficients[0], other.Coefficients[0], 1e-8);
        Assert.Equal(fit.Coefficients[1], other.Coefficients[2], 1e-8);
        Assert.Equal(8 * fit.Coefficients[2], other.Coefficients[1], 1e-7);
    }

    private static double[] Errors(LinearFit fit) =>
        [.. Enumerable.Range(0, fit.Coefficients.Length).Select(i => fit.StandardErrorOf(i)!.Value)];
}
