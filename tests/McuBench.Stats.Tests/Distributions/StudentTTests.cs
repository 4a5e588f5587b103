using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class StudentTTests
{
    // The promise is 1e-12; what is held here is what was measured, with room for another platform's exp and log.
    private const double Tolerance = 5e-13;

    [Fact]
    public void Density_AgainstHighPrecision_HoldsTwelveDigits()
    {
        foreach (var c in Cases("distributions-t.json", "studentT"))
        {
            var expected = c.Number("density");
            if (expected > 1e-300)
            {
                AssertClose(expected, StudentT.Of(c.Number("df")).Density(c.Number("t")), Tolerance, c.ToString());
            }
        }
    }

    [Fact]
    public void UpperTail_AgainstHighPrecision_HoldsTwelveDigits()
    {
        foreach (var c in Cases("distributions-t.json", "studentT"))
        {
            var t = StudentT.Of(c.Number("df"));
            AssertClose(c.Number("upperTail"), t.UpperTail(c.Number("t")), Tolerance, c.ToString());
            AssertClose(c.Number("upperTail"), t.Cdf(-c.Number("t")), Tolerance, c.ToString());
            AssertClose(1 - c.Number("upperTail"), t.Cdf(c.Number("t")), 1e-15, c.ToString());
        }
    }

    [Fact]
    public void UpperQuantile_AgainstHighPrecision_HoldsTwelveDigits()
    {
        foreach (var c in Cases("distributions-t.json", "studentT"))
        {
            var t = StudentT.Of(c.Number("df"));
            AssertClose(c.Number("quantile"), t.UpperQuantile(c.Number("probability")), Tolerance, c.ToString());
            AssertClose(-c.Number("quantile"), t.Quantile(c.Number("probability")), Tolerance, c.ToString());
        }
    }

    [Fact]
    public void Quantile_HandbookTable_AgreesWithPrintAndRecomputation()
    {
        var table = Cases("handbook-distributions.json", "cases")
            .Single(c => c.GetProperty("id").ValueEquals("hb-table-t"));
        var rows = table.GetProperty("recomputed").GetProperty("rows");
        var printed = table.GetProperty("expected").GetProperty("rows");
        var df = table.GetProperty("input").GetProperty("df");
        var p = table.GetProperty("input").GetProperty("p");
        for (var i = 0; i < df.GetArrayLength(); i++)
        {
            var t = StudentT.Of(df[i].GetDouble());
            for (var j = 0; j < p.GetArrayLength(); j++)
            {
                var quantile = t.Quantile(p[j].GetDouble());
                var what = $"df {df[i]}, p {p[j]}";
                // Twelve digits were written down.
                AssertClose(double.Parse(rows[i][j].GetString()!, CultureInfo.InvariantCulture), quantile, 1e-11, what);
                // The printed column 0.999 is not correctly rounded at 1 and at 7 to 10 degrees of freedom.
                if (p[j].GetDouble() < 0.999)
                {
                    Assert.Equal(
                        double.Parse(printed[i][j].GetString()!, CultureInfo.InvariantCulture),
                        quantile,
                        0.000501
                    );
                }
            }
        }
    }

    [Fact]
    public void Tails_OneDegreeOfFreedom_AreTheCauchyDistribution()
    {
        var t = StudentT.Of(1);
        foreach (var x in new[] { 1e-9, 0.01, 0.3, 0.99, 1.01, 2, 5, 1e3, 1e9, 1e150, 1e300 })
        {
            AssertClose(Math.Atan2(1, x) / Math.PI, t.UpperTail(x), 1e-14, $"x {x}");
            AssertClose(Math.Atan2(1, x) / Math.PI, t.Cdf(-x), 1e-14, $"x {x}");
        }
    }

    [Fact]
    public void Tails_TwoDegreesOfFreedom_AreTheClosedForm()
    {
        var t = StudentT.Of(2);
        foreach (var x in new[] { 1e-9, 0.01, 0.3, 1.4, 1.5, 2, 5, 1e3, 1e9, 1e140 })
        {
            // (1 − x/√(2 + x²))/2, without the cancellation.
            var root = Math.Sqrt(2 + (x * x));
            AssertClose(1 / (root * (root + x)), t.UpperTail(x), 1e-14, $"x {x}");
        }
    }

    [Fact]
    public void UpperTail_FarOut_IsZeroWhereADoubleHoldsNothing()
    {
        Assert.Equal(0, StudentT.Of(50).UpperTail(1e200));
        Assert.Equal(1, StudentT.Of(50).Cdf(1e200));
        Assert.Equal(0, StudentT.Of(50).Density(1e200));
    }

    [Fact]
    public void Of_InfiniteDegreesOfFreedom_IsTheNormalDistribution()
    {
        var t = StudentT.Of(double.PositiveInfinity);
        foreach (var x in new[] { -5, -0.1, 0, 1.96, 8 })
        {
            Assert.Equal(Normal.Standard.Density(x), t.Density(x));
            Assert.Equal(Normal.Standard.UpperTail(x), t.UpperTail(x));
            Assert.Equal(Normal.Standard.Cdf(x), t.Cdf(x));
        }

        Assert.Equal(Normal.Standard.Quantile(0.975), t.Quantile(0.975));
        AssertClose(Normal.Standard.UpperQuantile(1e-9), StudentT.Of(1e19).UpperQuantile(1e-9), 1e-14, "df 1e19");
    }

    [Fact]
    public void Centre_IsExact()
    {
        var t = StudentT.Of(3.3);
        Assert.Equal(0, t.Quantile(0.5));
        Assert.Equal(0, t.UpperQuantile(0.5));
        Assert.Equal(0.5, t.Cdf(0));
        Assert.Equal(0.5, t.UpperTail(0));
        Assert.Equal(0.5, t.Cdf(-1e-300));
        Assert.Equal(-t.UpperQuantile(0.3), t.Quantile(0.3));
    }

    [Theory]
    [InlineData(0, "Degrees of freedom must be above 0; was 0.")]
    [InlineData(-1.5, "Degrees of freedom must be above 0; was -1.5.")]
    [InlineData(double.NaN, "Degrees of freedom must be above 0; was NaN.")]
    public void Of_NoPositiveDegreesOfFreedom_Refuses(double df, string message) =>
        Refusal.Of(() => StudentT.Of(df), "degreesOfFreedom", message);

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => StudentT.Of(4).Quantile(p), "probability", message);
        Refusal.Of(() => StudentT.Of(4).UpperQuantile(p), "probability", message);
    }

    [Fact]
    public void Quantile_TooLargeForADouble_Refuses()
    {
        const string message =
            "Probability must be far enough from 0 and 1 that a double can hold its quantile; was 1E-40.";
        Refusal.Of(() => StudentT.Of(0.1).UpperQuantile(1e-40), "probability", message);
        Refusal.Of(() => StudentT.Of(0.1).Quantile(1e-40), "probability", message);
    }

    [Theory]
    [InlineData(double.NaN, "Value must be a finite number; was NaN.")]
    [InlineData(double.PositiveInfinity, "Value must be a finite number; was Infinity.")]
    public void Tails_OfNoFiniteValue_Refuse(double t, string message)
    {
        Refusal.Of(() => StudentT.Of(4).Cdf(t), "t", message);
        Refusal.Of(() => StudentT.Of(4).UpperTail(t), "t", message);
        Refusal.Of(() => StudentT.Of(4).Density(t), "t", message);
    }

    [Property]
    public Property UpperQuantile_ThenUpperTail_GivesTheProbabilityBack()
    {
        var cases =
            from logDf in Gen.Choose(-1000, 8000)
            from logP in Gen.Choose(-300_000, -302)
            select (Df: Math.Pow(10, logDf / 1000.0), P: Math.Pow(10, logP / 1000.0));
        return Prop.ForAll(
            cases.ToArbitrary(),
            c =>
            {
                // Below one degree of freedom far quantiles don't fit into a double.
                if (Math.Log10(c.P) < -300 * c.Df)
                {
                    return;
                }

                var t = StudentT.Of(c.Df);
                var x = t.UpperQuantile(c.P);
                // One unit in the last place of x moves the tail by x f(x)/tail units of its own.
                var condition = Math.Max(1, x * t.Density(x) / c.P);
                AssertClose(c.P, t.UpperTail(x), 1e-13 + (condition * 1e-15), c.ToString());
            }
        );
    }

    [Property]
    public void Cdf_OfALargerValue_IsNoSmaller(NormalFloat a, NormalFloat b, PositiveInt df)
    {
        var t = StudentT.Of(df.Get / 10.0);
        var (low, high) = a.Get < b.Get ? (a.Get, b.Get) : (b.Get, a.Get);
        Assert.True(t.Cdf(low) <= t.Cdf(high));
        Assert.True(t.UpperTail(low) >= t.UpperTail(high));
    }
}
