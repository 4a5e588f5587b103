using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class BetaDistributionTests
{
    [Fact]
    public void Tails_PowerLaws_AreTheClosedForm()
    {
        foreach (var x in new[] { 1e-200, 1e-9, 0.3, 0.5, 0.7, 0.999 })
        {
            // exp(−690) alone costs 700 roundings of its argument.
            AssertClose(x * Math.Sqrt(x), BetaDistribution.Of(1.5, 1).Cdf(x), 2e-13, $"x {x}");
            AssertClose(1 - x, BetaDistribution.Of(1, 1).UpperTail(x), 1e-14, $"x {x}");
            AssertClose(Math.Pow(1 - x, 40), BetaDistribution.Of(1, 40).UpperTail(x), 2e-13, $"x {x}");
        }
    }

    [Fact]
    public void DensityAndTails_AtAndBeyondTheEnds_AreZeroAndOne()
    {
        var beta = BetaDistribution.Of(1, 3);
        Assert.Equal(3, beta.Density(0));
        Assert.Equal(0, beta.Density(1));
        Assert.Equal(0, beta.Density(-0.1));
        Assert.Equal(0, beta.Density(1.1));
        Assert.Equal(0, beta.Cdf(0));
        Assert.Equal(0, beta.Cdf(-5));
        Assert.Equal(1, beta.UpperTail(0));
        Assert.Equal(1, beta.Cdf(1));
        Assert.Equal(0, beta.UpperTail(2));
    }

    [Fact]
    public void Density_Unbounded_Refuses()
    {
        const string rule = "Value must be one at which the density is bounded; was ";
        Refusal.Of(() => BetaDistribution.Of(0.5, 2).Density(0), "x", rule + "0.");
        Refusal.Of(() => BetaDistribution.Of(2, 0.5).Density(1), "x", rule + "1.");
    }

    [Fact]
    public void Quantile_CloserToAnEndThanADoubleShows_IsTheEnd()
    {
        Assert.Equal(1, BetaDistribution.Of(2, 0.05).UpperQuantile(1e-30));
        Assert.Equal(0, BetaDistribution.Of(0.05, 2).Quantile(1e-30));
    }

    [Fact]
    public void Of_ShapesOutOfRange_Refuses()
    {
        Refusal.Of(() => BetaDistribution.Of(0, 1), "alpha", "First shape must be between 0.001 and 1E+15; was 0.");
        Refusal.Of(
            () => BetaDistribution.Of(1, double.NaN),
            "beta",
            "Second shape must be between 0.001 and 1E+15; was NaN."
        );
    }

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => BetaDistribution.Of(4, 5).Quantile(p), "probability", message);
        Refusal.Of(() => BetaDistribution.Of(4, 5).UpperQuantile(p), "probability", message);
    }

    [Fact]
    public void Tails_OfNoFiniteValue_Refuse()
    {
        const string message = "Value must be a finite number; was -Infinity.";
        Refusal.Of(() => BetaDistribution.Of(4, 5).Cdf(double.NegativeInfinity), "x", message);
        Refusal.Of(() => BetaDistribution.Of(4, 5).UpperTail(double.NegativeInfinity), "x", message);
        Refusal.Of(() => BetaDistribution.Of(4, 5).Density(double.NegativeInfinity), "x", message);
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(1)]
    [InlineData(7.3)]
    [InlineData(1e6)]
    public void Tails_InTheMiddleOfASymmetricDistribution_AreOneHalf(double shape)
    {
        var beta = BetaDistribution.Of(shape, shape);

        Assert.Equal((0.5, 0.5), (beta.Cdf(0.5), beta.UpperTail(0.5)));
        // The tail of t at 0, from the same function.
        Assert.Equal(0.5, FisherF.Of(2 * shape, 2 * shape).Cdf(1));
    }

    [Property]
    public void Tails_OfTheMirroredDistribution_AreExchanged(ushort first, ushort second, ushort place)
    {
        var (a, b) = (0.05 + (first / 50.0), 0.05 + (second / 50.0));
        // Sixteenths, so that 1 − x is exact.
        var x = ((place % 15) + 1) / 16.0;
        var (lower, mirrored) = (BetaDistribution.Of(a, b).Cdf(x), BetaDistribution.Of(b, a).UpperTail(1 - x));

        // In the middle one tail is 1 less the other, and may differ from it in the last place.
        Assert.Equal(lower, mirrored, Math.BitIncrement(lower) - lower);
    }
}
