using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using McuBench.Stats.Intervals;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Intervals;

public sealed class ConfidenceEllipseTests
{
    [Fact]
    public void SquaredRadius_DegreesOfFreedom_IsTwiceTheQuantileOfF()
    {
        var reference = ReferenceCase.Of("clock", "radii");
        double[] freedom = reference.Numbers("degreesOfFreedom");
        double[] expected = reference.Numbers("squaredRadius");

        Agree.Relative(expected, [.. freedom.Select(df => Of(0.3, df).SquaredRadius)], 1e-13);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5.5)]
    [InlineData(40)]
    public void SquaredRadius_EstimatedCovariance_IsHotellings(double freedom) =>
        Agree.Relative(
            2 * freedom / (freedom - 1) * FisherF.Of(2, freedom - 1).UpperQuantile(0.05),
            ConfidenceEllipse.OfEstimated(3, 5, (2, 1), 0.3, freedom).SquaredRadius,
            1e-12
        );

    [Fact]
    public void OfEstimated_OneDegreeOfFreedom_IsRefused()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() =>
            ConfidenceEllipse.OfEstimated(3, 5, (2, 1), 0.3, 1)
        );

        Assert.Equal("degreesOfFreedom", refused.ParamName);
        Assert.StartsWith(
            "Degrees of freedom of a covariance must be above 1; was 1.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void SquaredRadius_InfiniteFreedom_IsTheQuantileOfChiSquared() =>
        Assert.Equal(ChiSquared.Of(2).UpperQuantile(0.05), Of(0.3, double.PositiveInfinity).SquaredRadius, 1e-12);

    [Fact]
    public void Contains_PairsThatOpposeTheCorrelation_AreOutside()
    {
        ConfidenceEllipse region = Of(-0.95, double.PositiveInfinity);

        // Each two standard errors off; the squared distances are 8/(1 + ρ) and 8/(1 − ρ).
        Assert.Equal(8 / (1 + -0.95), region.SquaredDistance(3 + 4, 5 + 2), 1e-10);
        Assert.Equal(8 / (1 - -0.95), region.SquaredDistance(3 + 4, 5 - 2), 1e-12);
        Assert.False(region.Contains(3 + 4, 5 + 2));
        Assert.True(region.Contains(3 + 4, 5 - 2));
    }

    [Property]
    public bool Edge_AnyEllipse_LiesOnItsRadius(ulong seed)
    {
        var random = RandomStream.Of(seed);
        ConfidenceEllipse region = Of(random.Rectangular(-0.999, 0.999), random.Rectangular(0.5, 50));

        return region
            .Edge(24)
            .All(point => Math.Abs(region.SquaredDistance(point.X, point.Y) / region.SquaredRadius - 1) < 1e-9);
    }

    [Fact]
    public void Contains_NormalEstimates_HoldsTheTruthAsOftenAsItSays()
    {
        const int studies = 20_000;
        var random = RandomStream.Of(4);
        int held = 0;
        for (int i = 0; i < studies; i++)
        {
            double first = random.Normal();
            double second = (-0.9 * first) + (Math.Sqrt(1 - 0.81) * random.Normal());
            var region = ConfidenceEllipse.OfScaled(first, second, (1, 1), -0.9, double.PositiveInfinity);
            held += region.Contains(0, 0) ? 1 : 0;
        }

        Assert.InRange((double)held / studies, 0.945, 0.955);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    public void Of_EstimatesThatAreOne_IsRefused(double correlation)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Of(correlation, 5));

        Assert.Equal("correlation", refused.ParamName);
        Assert.StartsWith(
            "Correlation must be between -1 and 1, ends excluded, and not within 5E-13 of them; was",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Edge_TwoPoints_IsRefused()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Of(0, 5).Edge(2));

        Assert.Equal("count", refused.ParamName);
        Assert.StartsWith("Count of points must be at least 3; was 2.", refused.Message, StringComparison.Ordinal);
    }

    private static ConfidenceEllipse Of(double correlation, double degreesOfFreedom) =>
        ConfidenceEllipse.OfScaled(3, 5, (2, 1), correlation, degreesOfFreedom);
}
