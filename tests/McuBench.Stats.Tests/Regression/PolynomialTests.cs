using FsCheck.Xunit;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class PolynomialTests
{
    // Half a certified digit of the coefficients is lost to the rounding of x and y to binary64 already.
    [Theory]
    [InlineData("pontius", 2, 1e-11)]
    [InlineData("filip", 10, 1e-11)]
    public void Fit_CalibrationData_HoldsTheCertifiedDigits(string set, int degree, double tolerance)
    {
        ReferenceCase reference = NistLinear.Case(set);
        PolynomialFit fit = Polynomial.Fit(reference.Numbers("input", "x"), reference.Numbers("input", "y"), degree);

        Agree.Relative(reference.Numbers("recomputed", "estimate"), [.. fit.Coefficients], tolerance);
        Agree.Relative(reference.Numbers("recomputed", "sd_of_estimate"), Errors(fit), tolerance);
        Agree.Relative(reference.Number("recomputed", "residual_sd"), fit.ResidualStandardDeviation!.Value, tolerance);
        Agree.Relative(reference.Number("recomputed", "r_squared"), fit.RSquared!.Value, 1e-13);
        Agree.Relative(reference.Number("recomputed", "F"), fit.FStatistic!.Value, 1e-9);
    }

    // The residuals of sets 3 to 5 are 1e-3 to 1e7 times the smallest terms, whose coefficients lose as many digits.
    [Theory]
    [InlineData(1, 1e-9)]
    [InlineData(2, 1e-12)]
    [InlineData(3, 1e-8)]
    [InlineData(4, 1e-7)]
    [InlineData(5, 1e-5)]
    public void Fit_Wampler_HoldsTheCertifiedDigits(int number, double tolerance)
    {
        string set = $"Wampler{number}";
        ReferenceCase reference = NistLinear.Case("wampler1-5");
        (double[] x, double[] y) = NistLinear.Wampler(number);
        PolynomialFit fit = Polynomial.Fit(x, y, 5);

        Agree.Relative(reference.Numbers("recomputed", set, "estimate"), [.. fit.Coefficients], tolerance);
        Agree.Relative(reference.Numbers("recomputed", set, "sd_of_estimate"), Errors(fit), 1e-11);
        Agree.Relative(reference.Number("recomputed", set, "residual_sd"), fit.ResidualStandardDeviation!.Value, 1e-11);
        Agree.Relative(reference.Number("recomputed", set, "r_squared"), fit.RSquared!.Value, 1e-11);
    }

    [Fact]
    public void ValueAt_Filip_IsThePolynomialWithoutItsCancellation()
    {
        // The terms of the polynomial in powers of x reach 1e5 here and would leave the residuals, of 1e-3, few digits.
        ReferenceCase filip = NistLinear.Case("filip");
        double[] x = filip.Numbers("input", "x");
        double[] y = filip.Numbers("input", "y");
        PolynomialFit fit = Polynomial.Fit(x, y, 10);
        double sum = x.Select((value, i) => Math.Pow(y[i] - fit.ValueAt(value), 2)).Sum();

        Agree.Relative(filip.Number("expected", "ss_residual"), sum, 1e-11);
    }

    [Fact]
    public void MeanAtAndPredictionAt_DegreeOne_AreTheStraightLines()
    {
        double[] x = [1, 2, 3, 5, 8];
        double[] y = [2, 3, 7, 8, 12];
        PolynomialFit fit = Polynomial.Fit(x, y, 1);
        LineFit line = StraightLine.Fit(x, y);

        Agree.Relative(line.MeanAt(4).Interval!.Lower, fit.MeanAt(4).Interval!.Lower, 1e-13);
        Agree.Relative(line.PredictionAt(9).Interval!.Upper, fit.PredictionAt(9).Interval!.Upper, 1e-13);
        Agree.Relative(line.SlopeStandardError!.Value, fit.StandardErrorOf(1)!.Value, 1e-13);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Fit_XShifted_IsTheSameCurve(Dyadic data)
    {
        double[] y = [.. data.Values, 1, 5, 2, 8];
        double[] x = [.. y.Select((_, i) => (double)i)];
        PolynomialFit fit = Polynomial.Fit(x, y, 2);
        PolynomialFit shifted = Polynomial.Fit([.. x.Select(value => value + 1024)], y, 2);

        Assert.Equal(fit.ValueAt(0.5), shifted.ValueAt(1024.5), 1e-8);
        Assert.Equal(fit.Coefficients[2], shifted.Coefficients[2], 1e-8);
    }

    [Fact]
    public void Fit_TooFewPointsOrDifferentX_AreRefused()
    {
        Assert.StartsWith(
            "Count of values must be at least 4; was 3.",
            Assert.Throws<ArgumentException>(() => Polynomial.Fit([1, 2, 3], [1, 2, 3], 3)).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Count of different x must be at least 3 for degree 2; was 2.",
            Assert.Throws<ArgumentException>(() => Polynomial.Fit([1, 2, 1, 2], [1, 2, 3, 4], 2)).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(21)]
    public void Fit_DegreeOutOfRange_IsRefused(int degree) =>
        Assert.StartsWith(
            $"Degree must be from 1 to 20; was {degree}.",
            Assert.Throws<ArgumentOutOfRangeException>(() => Polynomial.Fit([1, 2], [1, 2], degree)).Message,
            StringComparison.Ordinal
        );

    private static double[] Errors(PolynomialFit fit) =>
        [.. Enumerable.Range(0, fit.Degree + 1).Select(power => fit.StandardErrorOf(power)!.Value)];
}
