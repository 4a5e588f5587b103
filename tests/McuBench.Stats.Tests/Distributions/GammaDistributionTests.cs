using FsCheck;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class GammaDistributionTests
{
    [Fact]
    public void TailsAndDensity_ShapeTwo_AreTheClosedForm()
    {
        var gamma = GammaDistribution.Of(2, 10);
        foreach (var x in new[] { 1e-3, 1.0, 19.99, 20, 20.01, 500, 6000 })
        {
            AssertClose((1 + (x / 10)) * Math.Exp(-x / 10), gamma.UpperTail(x), 1e-13, $"x {x}");
            AssertClose(x / 100 * Math.Exp(-x / 10), gamma.Density(x), 1e-13, $"x {x}");
        }
    }

    [Fact]
    public void DensityAndTails_AtAndBelowZero_AreTheEnds()
    {
        Assert.Equal(0, GammaDistribution.Of(3, 2).Density(0));
        Assert.Equal(0.25, GammaDistribution.Of(1, 4).Density(0));
        Assert.Equal(0, GammaDistribution.Of(0.5, 4).Density(-1));
        Assert.Equal(0, GammaDistribution.Of(0.5, 4).Cdf(0));
        Assert.Equal(1, GammaDistribution.Of(0.5, 4).UpperTail(-1));
        // 1e300 of scale 1e-300 is beyond a double, and beyond the distribution.
        Assert.Equal(1, GammaDistribution.Of(3, 1e-300).Cdf(1e300));
        Assert.Equal(0, GammaDistribution.Of(3, 1e-300).Density(1e300));
    }

    [Fact]
    public void Density_Unbounded_Refuses() =>
        Refusal.Of(
            () => GammaDistribution.Of(0.5, 1).Density(0),
            "x",
            "Value must be one at which the density is bounded; was 0."
        );

    [Fact]
    public void Quantile_TooLargeForADouble_Refuses() =>
        Refusal.Of(
            () => GammaDistribution.Of(3, 1e308).Quantile(0.5),
            "probability",
            "Probability must be far enough from 0 and 1 that a double can hold its quantile; was 0.5."
        );

    [Fact]
    public void Of_ParametersOutOfRange_Refuses()
    {
        Refusal.Of(() => GammaDistribution.Of(0, 1), "shape", "Shape must be between 0.001 and 1E+15; was 0.");
        Refusal.Of(
            () => GammaDistribution.Of(1, -1),
            "scale",
            "Scale must be a finite number above 0 and not denormal; was -1."
        );
    }

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => GammaDistribution.Of(2, 3).Quantile(p), "probability", message);
        Refusal.Of(() => GammaDistribution.Of(2, 3).UpperQuantile(p), "probability", message);
    }

    [Fact]
    public void Tails_OfNoFiniteValue_Refuse()
    {
        const string message = "Value must be a finite number; was -Infinity.";
        Refusal.Of(() => GammaDistribution.Of(2, 3).Cdf(double.NegativeInfinity), "x", message);
        Refusal.Of(() => GammaDistribution.Of(2, 3).UpperTail(double.NegativeInfinity), "x", message);
        Refusal.Of(() => GammaDistribution.Of(2, 3).Density(double.NegativeInfinity), "x", message);
    }

    [Property]
    public void Tails_OfAScaledValue_AreThoseOfTheScale(PositiveInt shape, PositiveInt x, PositiveInt power)
    {
        // A power of two scales without rounding.
        var scale = Math.Pow(2, (power.Get % 40) - 20);
        var (a, b) = (GammaDistribution.Of(shape.Get / 4.0, 1), GammaDistribution.Of(shape.Get / 4.0, scale));
        Assert.Equal(a.Cdf(x.Get / 8.0), b.Cdf(x.Get / 8.0 * scale));
        Assert.Equal(a.UpperTail(x.Get / 8.0), b.UpperTail(x.Get / 8.0 * scale));
    }

    [Property]
    public void Cdf_OfALargerValue_IsNoSmaller(PositiveInt shape, PositiveInt first, PositiveInt second)
    {
        var law = GammaDistribution.Of(shape.Get / 4.0, 1);
        var (low, high) = (Math.Min(first.Get, second.Get) / 8.0, Math.Max(first.Get, second.Get) / 8.0);
        // Where two ways of computing meet, the last places may differ.
        Assert.True(law.Cdf(low) <= law.Cdf(high) * (1 + 1e-14));
        Assert.True(law.UpperTail(low) * (1 + 1e-14) >= law.UpperTail(high));
    }
}
