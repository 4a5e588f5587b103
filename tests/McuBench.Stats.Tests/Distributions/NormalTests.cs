using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class NormalTests
{
    // The promise is 1e-12; what is held here is what was measured, with room for another platform's exp and log.
    private const double Tolerance = 5e-13;

    [Fact]
    public void DensityAndTails_AgainstHighPrecision_HoldTwelveDigits()
    {
        foreach (var c in Cases("distributions-t.json", "normal"))
        {
            var z = c.Number("z");
            AssertClose(c.Number("density"), Normal.Standard.Density(z), Tolerance, c.ToString());
            AssertClose(c.Number("upperTail"), Normal.Standard.UpperTail(z), Tolerance, c.ToString());
            AssertClose(c.Number("upperTail"), Normal.Standard.Cdf(-z), Tolerance, c.ToString());
            AssertClose(1 - c.Number("upperTail"), Normal.Standard.Cdf(z), 1e-15, c.ToString());
        }
    }

    [Fact]
    public void Quantiles_AgainstHighPrecision_HoldTwelveDigits()
    {
        foreach (var c in Cases("distributions-t.json", "normal"))
        {
            var p = c.Number("probability");
            AssertClose(c.Number("quantile"), Normal.Standard.UpperQuantile(p), Tolerance, c.ToString());
            AssertClose(-c.Number("quantile"), Normal.Standard.Quantile(p), Tolerance, c.ToString());
        }
    }

    [Fact]
    public void Quantile_OfMeanAndStandardDeviation_IsShiftedAndScaled()
    {
        var normal = Normal.Of(10, 2);
        AssertClose(10 + (2 * 1.959963984540054), normal.Quantile(0.975), 1e-15, "0.975");
        Assert.Equal(10, normal.Quantile(0.5));
        Assert.Equal(0.5, normal.Cdf(10));
        AssertClose(Normal.Standard.UpperTail(1.5), normal.UpperTail(13), 1e-15, "upper tail");
        AssertClose(Normal.Standard.Density(1.5) / 2, normal.Density(13), 1e-15, "density");
    }

    [Fact]
    public void Tails_ValueBeyondWhatADoubleHolds_AreZeroAndOne()
    {
        var normal = Normal.Of(-1e308, 1);
        Assert.Equal(0, normal.UpperTail(1.7e308));
        Assert.Equal(1, normal.Cdf(1.7e308));
        Assert.Equal(0, normal.Density(1.7e308));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1e-310)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Of_NoUsableStandardDeviation_Refuses(double sd) =>
        Refusal.Of(
            () => Normal.Of(0, sd),
            "standardDeviation",
            FormattableString.Invariant(
                $"Standard deviation must be a finite number above 0 and not denormal; was {sd}."
            )
        );

    [Fact]
    public void Of_NoFiniteMean_Refuses() =>
        Refusal.Of(() => Normal.Of(double.NaN, 1), "mean", "Mean must be a finite number; was NaN.");

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => Normal.Standard.Quantile(p), "probability", message);
        Refusal.Of(() => Normal.Standard.UpperQuantile(p), "probability", message);
    }

    [Fact]
    public void Quantile_TooLargeForADouble_Refuses() =>
        Refusal.Of(
            () => Normal.Of(0, 1e308).Quantile(1e-10),
            "probability",
            "Probability must be far enough from 0 and 1 that a double can hold its quantile; was 1E-10."
        );

    [Fact]
    public void Tails_OfNoFiniteValue_Refuse()
    {
        const string message = "Value must be a finite number; was NaN.";
        Refusal.Of(() => Normal.Standard.Cdf(double.NaN), "x", message);
        Refusal.Of(() => Normal.Standard.UpperTail(double.NaN), "x", message);
        Refusal.Of(() => Normal.Standard.Density(double.NaN), "x", message);
    }
}
