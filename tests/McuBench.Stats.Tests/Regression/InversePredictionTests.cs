using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class InversePredictionTests
{
    [Theory]
    [InlineData(8, 1)]
    [InlineData(20, 3)]
    public void Of_ReadingOnALine_AgreesWithR(double y, int readings)
    {
        Estimate x = InversePrediction.Of(Line(), y, 0.9, readings);

        // R's limits are the roots of the prediction's test.
        Agree.Relative(
            ReferenceCase.Of("slopes-r", "inverse_90").Numbers($"{y}/{readings}"),
            [x.Value, x.Interval!.Lower, x.Interval.Upper],
            1e-10
        );
    }

    [Fact]
    public void Of_SlopeNotResolved_HasNoBoundsAndSaysWhy()
    {
        Estimate x = InversePrediction.Of(StraightLine.Fit([1, 2, 3, 4], [1, 3, 0, 2.1]), 2);

        Assert.Null(x.Interval);
        Assert.Contains("The slope is not resolved from 0", Assert.Single(x.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NoScatter_HasNoInterval()
    {
        Assert.Equal(
            "Two points show no scatter: no interval.",
            Assert.Single(InversePrediction.Of(StraightLine.Fit([1, 2], [3, 5]), 4).Notes)
        );
        Assert.Equal(
            "The points lie on the line: no interval.",
            Assert.Single(InversePrediction.Of(StraightLine.Fit([1, 2, 3], [3, 5, 7]), 4).Notes)
        );
    }

    [Fact]
    public void Of_LineWithoutAnAnswer_IsRefused()
    {
        Assert.StartsWith(
            "Slope of the line must be other than 0; was 0.",
            Assert
                .Throws<ArgumentException>(() => InversePrediction.Of(StraightLine.Fit([1, 2, 3], [1, 2, 1]), 4))
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Line must have equal weights; was a weighted fit.",
            Assert
                .Throws<ArgumentException>(() =>
                    InversePrediction.Of(StraightLine.FitWeighted([1, 2, 3], [1, 2, 4], [1, 1, 2]), 4)
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "readings",
            Assert.Throws<ArgumentOutOfRangeException>(() => InversePrediction.Of(Line(), 4, 0.9, 0)).ParamName
        );
    }

    [Fact]
    public void BandAt_TwoAbscissas_AgreesWithR()
    {
        foreach (int x in (int[])[0, 5])
        {
            Interval band = Line().BandAt(x, 0.9).Interval!;

            Agree.Relative(ReferenceCase.Of("slopes-r", "band_90").Numbers($"at_{x}"), [band.Lower, band.Upper], 1e-12);
        }
    }

    private static LineFit Line()
    {
        var data = ReferenceCase.Of("slopes-scipy", "data");
        return StraightLine.Fit(data.Numbers("smooth", "x"), data.Numbers("smooth", "y"));
    }
}
