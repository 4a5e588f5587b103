using System.Globalization;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class ChiSquaredTests
{
    [Fact]
    public void Quantile_HandbookTable_AgreesWithPrintAndRecomputation()
    {
        var table = Cases("handbook-distributions.json", "cases")
            .Single(c => c.GetProperty("id").ValueEquals("hb-table-chi2"));
        var rows = table.GetProperty("recomputed").GetProperty("rows");
        var printed = table.GetProperty("expected").GetProperty("rows");
        var df = table.GetProperty("input").GetProperty("df");
        var p = table.GetProperty("input").GetProperty("cumulative_probability");
        for (var i = 0; i < df.GetArrayLength(); i++)
        {
            for (var j = 0; j < p.GetArrayLength(); j++)
            {
                var quantile = ChiSquared.Of(df[i].GetDouble()).Quantile(p[j].GetDouble());
                // Twelve digits were written down.
                var exact = double.Parse(rows[i][j].GetString()!, CultureInfo.InvariantCulture);
                AssertClose(exact, quantile, 1e-11, $"df {df[i]}, p {p[j]}");
                Assert.Equal(
                    double.Parse(printed[i][j].GetString()!, CultureInfo.InvariantCulture),
                    quantile,
                    0.000501
                );
            }
        }
    }

    [Fact]
    public void Tails_TwoDegreesOfFreedom_AreTheExponentialDistribution()
    {
        var chi = ChiSquared.Of(2);
        foreach (var x in new[] { 1e-300, 1e-9, 0.5, 1.99, 2, 2.01, 30, 1400 })
        {
            AssertClose(Math.Exp(-x / 2), chi.UpperTail(x), 1e-13, $"x {x}");
            AssertClose(Math.Exp(-x / 2) / 2, chi.Density(x), 1e-13, $"x {x}");
        }

        AssertClose(5e-301, chi.Cdf(1e-300), 1e-13, "lower tail");
        AssertClose(-2 * Math.Log(1e-300), chi.UpperQuantile(1e-300), 1e-15, "upper quantile");
    }

    [Fact]
    public void DensityAndTails_OutsideTheSupport_AreZeroAndOne()
    {
        var chi = ChiSquared.Of(3);
        Assert.Equal(0, chi.Density(-1));
        Assert.Equal(0, chi.Cdf(-1));
        Assert.Equal(1, chi.UpperTail(-1));
        Assert.Equal(0, chi.Density(0));
        Assert.Equal(0, chi.Cdf(0));
        Assert.Equal(1, chi.UpperTail(0));
        Assert.Equal(0, chi.UpperTail(1e300));
        Assert.Equal(1, chi.Cdf(1e300));
        Assert.Equal(0, chi.Density(1e300));
        Assert.Equal(0.5, ChiSquared.Of(2).Density(0));
    }

    [Fact]
    public void Density_Unbounded_Refuses() =>
        Refusal.Of(
            () => ChiSquared.Of(1.5).Density(0),
            "x",
            "Value must be one at which the density is bounded; was 0."
        );

    [Fact]
    public void Quantile_TooSmallForADouble_IsZero() => Assert.Equal(0, ChiSquared.Of(0.1).Quantile(1e-200));

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(1e16)]
    [InlineData(double.NaN)]
    public void Of_DegreesOfFreedomOutOfRange_Refuses(double df) =>
        Refusal.Of(
            () => ChiSquared.Of(df),
            "degreesOfFreedom",
            FormattableString.Invariant($"Degrees of freedom must be between 0.001 and 1E+15; was {df}.")
        );

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => ChiSquared.Of(4).Quantile(p), "probability", message);
        Refusal.Of(() => ChiSquared.Of(4).UpperQuantile(p), "probability", message);
    }

    [Fact]
    public void Tails_OfNoFiniteValue_Refuse()
    {
        const string message = "Value must be a finite number; was -Infinity.";
        Refusal.Of(() => ChiSquared.Of(4).Cdf(double.NegativeInfinity), "x", message);
        Refusal.Of(() => ChiSquared.Of(4).UpperTail(double.NegativeInfinity), "x", message);
        Refusal.Of(() => ChiSquared.Of(4).Density(double.NegativeInfinity), "x", message);
    }

    [Property]
    public void Quantile_ThenTail_GivesTheProbabilityBack(ushort dfStep, ushort pStep)
    {
        var df = Math.Pow(10, -1 + (9.0 * dfStep / ushort.MaxValue));
        var p = Math.Pow(10, -0.31 - (299.0 * pStep / ushort.MaxValue));
        var chi = ChiSquared.Of(df);
        var upper = chi.UpperQuantile(p);
        // One unit in the last place of x moves the tail by x f(x)/tail units of its own.
        AssertClose(p, chi.UpperTail(upper), 1e-12 + (upper * chi.Density(upper) / p * 4e-16), $"{chi} {p}");
        var lower = chi.Quantile(p);
        if (lower > 1e-300)
        {
            AssertClose(p, chi.Cdf(lower), 1e-12 + (lower * chi.Density(lower) / p * 4e-16), $"{chi} {p}");
        }
    }
}
