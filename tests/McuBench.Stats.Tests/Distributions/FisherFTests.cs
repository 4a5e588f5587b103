using System.Globalization;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class FisherFTests
{
    [Fact]
    public void Quantile_HandbookTable_AgreesWithPrintAndRecomputation()
    {
        var table = Cases("handbook-distributions.json", "cases")
            .Single(c => c.GetProperty("id").ValueEquals("hb-table-f"));
        var rows = table.GetProperty("recomputed").GetProperty("rows");
        var printed = table.GetProperty("expected").GetProperty("rows");
        var df = table.GetProperty("input").GetProperty("df");
        var p = table.GetProperty("input").GetProperty("p");
        for (var i = 0; i < df.GetArrayLength(); i++)
        {
            for (var j = 0; j < p.GetArrayLength(); j++)
            {
                var quantile = FisherF.Of(df[i][0].GetDouble(), df[i][1].GetDouble()).Quantile(p[j].GetDouble());
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
    public void UpperTail_OneDegreeOfFreedomOfTheNumerator_IsBothTailsOfStudentT()
    {
        foreach (var df in new[] { 0.1, 1, 3.5, 40, 1e4, 1e8 })
        {
            foreach (var t in new[] { 1e-5, 0.4, 1, 2.5, 20 })
            {
                var expected = 2 * StudentT.Of(df).UpperTail(t);
                if (expected > 1e-300)
                {
                    AssertClose(expected, FisherF.Of(1, df).UpperTail(t * t), 3e-13, $"df {df}, t {t}");
                }
            }
        }
    }

    [Fact]
    public void Tails_TwoAndTwo_AreTheClosedForm()
    {
        var f = FisherF.Of(2, 2);
        foreach (var x in new[] { 1e-300, 1e-9, 0.3, 1, 7, 1e9, 1e300 })
        {
            // exp(−690) alone costs 700 roundings of its argument.
            AssertClose(1 / (1 + x), f.UpperTail(x), 2e-13, $"x {x}");
            AssertClose(x / (1 + x), f.Cdf(x), 2e-13, $"x {x}");
        }
    }

    [Fact]
    public void DensityAndTails_AtTheEnds_AreZeroAndOne()
    {
        var f = FisherF.Of(3, 5);
        Assert.Equal(0, f.Density(-1));
        Assert.Equal(0, f.Density(0));
        Assert.Equal(1, FisherF.Of(2, 5).Density(0));
        Assert.Equal(0, f.Cdf(0));
        Assert.Equal(1, f.UpperTail(-1));
        Assert.Equal(0, FisherF.Of(3, 500).UpperTail(1e300));
        Assert.Equal(1, FisherF.Of(1e8, 500).Cdf(1e308));
        Assert.Equal(0, FisherF.Of(1e8, 500).Density(1e308));
    }

    [Fact]
    public void Density_Unbounded_Refuses() =>
        Refusal.Of(() => FisherF.Of(1, 5).Density(0), "x", "Value must be one at which the density is bounded; was 0.");

    [Fact]
    public void Quantile_TooLargeForADouble_Refuses() =>
        Refusal.Of(
            () => FisherF.Of(3, 0.1).UpperQuantile(1e-40),
            "probability",
            "Probability must be far enough from 0 and 1 that a double can hold its quantile; was 1E-40."
        );

    [Fact]
    public void Of_DegreesOfFreedomOutOfRange_Refuses()
    {
        Refusal.Of(
            () => FisherF.Of(0, 1),
            "numeratorDegreesOfFreedom",
            "Degrees of freedom of the numerator must be between 0.001 and 1E+15; was 0."
        );
        Refusal.Of(
            () => FisherF.Of(1, double.PositiveInfinity),
            "denominatorDegreesOfFreedom",
            "Degrees of freedom of the denominator must be between 0.001 and 1E+15; was Infinity."
        );
    }

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => FisherF.Of(4, 5).Quantile(p), "probability", message);
        Refusal.Of(() => FisherF.Of(4, 5).UpperQuantile(p), "probability", message);
    }

    [Fact]
    public void Tails_OfNoFiniteValue_Refuse()
    {
        const string message = "Value must be a finite number; was -Infinity.";
        Refusal.Of(() => FisherF.Of(4, 5).Cdf(double.NegativeInfinity), "x", message);
        Refusal.Of(() => FisherF.Of(4, 5).UpperTail(double.NegativeInfinity), "x", message);
        Refusal.Of(() => FisherF.Of(4, 5).Density(double.NegativeInfinity), "x", message);
    }

    [Property]
    public void Quantile_OfTheReciprocal_IsTheReciprocal(ushort first, ushort second, ushort pStep)
    {
        var (a, b) = (0.5 + (first / 100.0), 0.5 + (second / 100.0));
        var p = Math.Pow(10, -0.31 - (12.0 * pStep / ushort.MaxValue));
        AssertClose(1 / FisherF.Of(b, a).UpperQuantile(p), FisherF.Of(a, b).Quantile(p), 1e-13, $"{a} {b} {p}");
    }

    [Property]
    public void Quantile_ThenTail_GivesTheProbabilityBack(ushort first, ushort second, ushort pStep)
    {
        var law = FisherF.Of(
            Math.Pow(10, -1 + (7.0 * first / ushort.MaxValue)),
            Math.Pow(10, -1 + (7.0 * second / ushort.MaxValue))
        );
        var p = Math.Pow(10, -0.31 - (12.0 * pStep / ushort.MaxValue));
        var x = law.Quantile(p);
        if (x > 1e-300)
        {
            // One unit in the last place of x moves the tail by x f(x)/tail units of its own.
            AssertClose(p, law.Cdf(x), 1e-12 + (x * law.Density(x) / p * 4e-16), $"{law} {p}");
        }
    }
}
