using FsCheck.Xunit;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class ErrorsInVariablesTests
{
    [Theory]
    [InlineData("smooth", "1", 1)]
    [InlineData("ties", "0.25", 0.25)]
    public void Deming_DataSets_AgreesWithRAndSciPy(string set, string name, double ratio)
    {
        (double[] x, double[] y) = Points(set);
        ErrorsInVariablesFit line = ErrorsInVariables.Deming(x, y, ratio);
        double[] actual =
        [
            line.Slope.Value,
            line.Intercept.Value,
            line.Slope.StandardError!.Value,
            line.Intercept.StandardError!.Value,
        ];

        Agree.Relative(ReferenceCase.Of("slopes-r", "deming").Numbers($"{set}/{name}"), actual, 1e-11);
        // SciPy's distance regression stops at eight digits.
        Agree.Relative(ReferenceCase.Of("slopes-scipy", "deming").Numbers($"{set}/{name}"), actual, 1e-6);
        Assert.Equal(x.Length - 2, line.Slope.DegreesOfFreedom);
        Assert.Null(line.ChiSquared);
    }

    [Fact]
    public void York_ElevenPoints_AgreesWithRAndSciPy()
    {
        (double[] x, double[] y) = Points("smooth");
        var uncertainties = ReferenceCase.Of("slopes-scipy", "uncertainties");
        double[] ux = uncertainties.Numbers("x");
        double[] uy = uncertainties.Numbers("y");
        double[] r = ReferenceCase.Of("slopes-r", "correlations").Numbers();

        // R finds the least chi-squared by its numerical derivative, to about nine digits.
        Agree.Relative(
            ReferenceCase.Of("slopes-r", "york_plain").Numbers(),
            All(ErrorsInVariables.York(x, y, ux, uy)),
            1e-9
        );
        Agree.Relative(
            ReferenceCase.Of("slopes-r", "york_correlated").Numbers(),
            All(ErrorsInVariables.York(x, y, ux, uy, r)),
            1e-9
        );
        ErrorsInVariablesFit plain = ErrorsInVariables.York(x, y, ux, uy);
        Agree.Relative(
            ReferenceCase.Of("slopes-scipy", "york_slope_intercept_chi2").Numbers(),
            [plain.Slope.Value, plain.Intercept.Value, plain.ChiSquared!.Value],
            1e-6
        );
    }

    [Fact]
    public void York_XAllButExact_IsTheWeightedLine()
    {
        double[] x = [1, 2, 3, 4, 5];
        double[] y = [2.1, 3.8, 6.2, 8.1, 9.7];
        double[] uy = [0.1, 0.2, 0.1, 0.3, 0.2];
        LineFit line = StraightLine.FitWeighted(x, y, uy);
        ErrorsInVariablesFit york = ErrorsInVariables.York(x, y, [1e-9, 1e-9, 1e-9, 1e-9, 1e-9], uy);

        Agree.Relative(line.Slope, york.Slope.Value, 1e-12);
        Agree.Relative(line.SlopeStandardError!.Value, york.Slope.StandardError!.Value, 1e-12);
        Agree.Relative(line.InterceptStandardError!.Value, york.Intercept.StandardError!.Value, 1e-12);
        Agree.Relative(line.IntervalOfSlope()!.Lower, york.Slope.Interval!.Lower, 1e-12);
        Agree.Relative(line.SumOfSquaredResiduals, york.ChiSquared!.Value, 1e-10);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Deming_AxesSwapped_GivesTheReciprocalSlope(Dyadic data)
    {
        double[] y = [.. data.Values, -500, 0, 700];
        double[] x = [.. y.Select((value, i) => value / 2 + i % 5)];
        double slope = ErrorsInVariables.Deming(x, y, 4).Slope.Value;

        Agree.Relative(1 / slope, ErrorsInVariables.Deming(y, x, 0.25).Slope.Value, 1e-11);
    }

    [Fact]
    public void Deming_UncorrelatedPoints_IsFlatOrRefused()
    {
        Assert.Equal(0, ErrorsInVariables.Deming([-2, 2, 2, -2, 0], [-1, 1, -1, 1, 0]).Slope.Value);
        Assert.StartsWith(
            "Points must not make a vertical line; they do.",
            Assert
                .Throws<ArgumentException>(() => ErrorsInVariables.Deming([-1, 1, 1, -1, 0], [-2, 2, -2, 2, 0]))
                .Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void DemingAndYork_ArgumentsOutOfRange_AreRefused()
    {
        Assert.StartsWith(
            "Count of values must be at least 3; was 2.",
            Assert.Throws<ArgumentException>(() => ErrorsInVariables.Deming([1, 2], [1, 2])).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "varianceRatio",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => ErrorsInVariables.Deming([1, 2, 3], [1, 2, 3], 0))
                .ParamName
        );
        Assert.StartsWith(
            "Correlation at index 1 must be above -1 and below 1; was 1.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    ErrorsInVariables.York([1, 2, 3], [1, 2, 4], [1, 1, 1], [1, 1, 1], [0, 1, 0])
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "uncertaintiesOfX",
            Assert
                .Throws<ArgumentException>(() => ErrorsInVariables.York([1, 2, 3], [1, 2, 4], [1, 1], [1, 1, 1]))
                .ParamName
        );
    }

    private static (double[] X, double[] Y) Points(string set)
    {
        var data = ReferenceCase.Of("slopes-scipy", "data");
        return (data.Numbers(set, "x"), data.Numbers(set, "y"));
    }

    private static double[] All(ErrorsInVariablesFit line) =>
        [
            line.Slope.Value,
            line.Intercept.Value,
            line.Slope.StandardError!.Value,
            line.Intercept.StandardError!.Value,
            line.ChiSquared!.Value,
        ];
}
