using System.Globalization;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class NoncentralTTests
{
    [Fact]
    public void Tails_WithoutNoncentrality_AreStudentT()
    {
        foreach (var df in new[] { 0.5, 1, 3, 30, 1e4, 1e8 })
        {
            var (law, student) = (NoncentralT.Of(df, 0), StudentT.Of(df));
            foreach (var t in new[] { -9.0, -2, 0, 0.3, 2, 9, 20 })
            {
                AssertClose(student.Cdf(t), law.Cdf(t), 2e-13, $"cdf {df} {t}");
                AssertClose(student.UpperTail(t), law.UpperTail(t), 2e-13, $"upper tail {df} {t}");
                AssertClose(student.Density(t), law.Density(t), 2e-13, $"density {df} {t}");
            }

            AssertClose(student.UpperQuantile(1e-4), law.UpperQuantile(1e-4), 1e-13, $"quantile {df}");
            AssertClose(student.Quantile(0.3), law.Quantile(0.3), 1e-13, $"quantile {df}");
        }
    }

    [Fact]
    public void Cdf_AtZero_IsTheNormalTailOfTheNoncentrality()
    {
        foreach (var delta in new[] { -8.0, -1, 0.3, 5, 30 })
        {
            // Only the sign of the numerator counts there.
            AssertClose(Normal.Standard.Cdf(-delta), NoncentralT.Of(4.5, delta).Cdf(0), 2e-13, $"{delta}");
        }
    }

    [Fact]
    public void Quantile_OneSidedToleranceFactors_AgreeWithThePublishedTable()
    {
        var table = Table("critical-values.json", "cv-tolerance-one-sided");
        var counts = table.GetProperty("input").GetProperty("n");
        var contents = table.GetProperty("input").GetProperty("content_p");
        var rows = table.GetProperty("recomputed").GetProperty("confidence_0.95");
        for (var i = 0; i < counts.GetArrayLength(); i++)
        {
            for (var j = 0; j < contents.GetArrayLength(); j++)
            {
                var root = Math.Sqrt(counts[i].GetInt32());
                var z = Normal.Standard.Quantile(contents[j].GetDouble());
                var factor = NoncentralT.Of(counts[i].GetInt32() - 1, z * root).Quantile(0.95) / root;
                // The table's quadrature holds 2e-8: for n 4 and content 0.95 it says 5.1438748, where R 4.2 and SciPy 1.10
                // both have 5.143874861, as the test below.
                var expected = double.Parse(rows[i][j].GetString()!, CultureInfo.InvariantCulture);
                AssertClose(expected, factor, 2e-8, $"n {counts[i]}, content {contents[j]}");
            }
        }
    }

    [Fact]
    public void Quantile_ToleranceFactorOfFour_IsThatOfTwoOtherTools()
    {
        var factor = NoncentralT.Of(3, Normal.Standard.Quantile(0.95) * 2).Quantile(0.95) / 2;

        // R 4.2.2: qt(0.95, 3, ncp = 2 * qnorm(0.95)) / 2 is 5.143874861009; SciPy 1.10 has 5.143874860989.
        AssertClose(5.143874861, factor, 1e-11, "n 4, content 0.95");
    }

    [Fact]
    public void Density_IsTheSlopeOfTheCdf()
    {
        var law = NoncentralT.Of(7, 3);
        foreach (var t in new[] { -1.0, 1, 3, 4, 8 })
        {
            const double h = 1e-4;
            // Five-point difference, of an error of h⁴.
            var slope =
                (8 * (law.Cdf(t + h) - law.Cdf(t - h)) - (law.Cdf(t + (2 * h)) - law.Cdf(t - (2 * h)))) / (12 * h);
            Assert.Equal(slope, law.Density(t), 1e-10);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.49)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Of_DegreesOfFreedomOutOfRange_Refuses(double df) =>
        Refusal.Of(
            () => NoncentralT.Of(df, 1),
            "degreesOfFreedom",
            FormattableString.Invariant($"Degrees of freedom must be between 0.5 and 1E+15; was {df}.")
        );

    [Theory]
    [InlineData(201)]
    [InlineData(double.NaN)]
    public void Of_NoncentralityOutOfRange_Refuses(double delta) =>
        Refusal.Of(
            () => NoncentralT.Of(4, delta),
            "noncentrality",
            FormattableString.Invariant(
                $"Noncentrality must be of a magnitude of at most 100 times the root of the degrees of freedom; was {delta}."
            )
        );

    [Fact]
    public void Questions_OfNoFiniteValueOrProbability_Refuse()
    {
        var law = NoncentralT.Of(4, 1);
        const string message = "Value must be a finite number; was NaN.";
        Refusal.Of(() => law.Density(double.NaN), "t", message);
        Refusal.Of(() => law.Cdf(double.NaN), "t", message);
        Refusal.Of(() => law.UpperTail(double.NaN), "t", message);
        Refusal.Of(() => law.Quantile(0), "probability", "Probability must be above 0 and below 1; was 0.");
        Refusal.Of(() => law.UpperQuantile(1), "probability", "Probability must be above 0 and below 1; was 1.");
    }

    [Property(MaxTest = 100)]
    public void Quantile_ThenTail_GivesTheProbabilityBack(ushort dfStep, short deltaStep, ushort pStep)
    {
        var df = Math.Pow(10, -0.3 + (6.0 * dfStep / ushort.MaxValue));
        var delta = 20.0 * deltaStep / short.MaxValue;
        var p = Math.Pow(10, -0.02 - (10.0 * pStep / ushort.MaxValue));
        var law = NoncentralT.Of(df, delta);
        var upper = law.UpperQuantile(p);
        // One unit in the last place of t moves the tail by t f(t)/tail units of its own.
        AssertClose(p, law.UpperTail(upper), 1e-12 + (Math.Abs(upper) * law.Density(upper) / p * 4e-16), "upper tail");
        var lower = law.Quantile(p);
        AssertClose(p, law.Cdf(lower), 1e-12 + (Math.Abs(lower) * law.Density(lower) / p * 4e-16), "lower tail");
    }

    [Property(MaxTest = 100)]
    public void Tails_OfTheMirroredDistribution_AreExchanged(short deltaStep, short place)
    {
        var (delta, t) = (deltaStep / 2000.0, place / 1000.0);
        AssertClose(NoncentralT.Of(6, delta).Cdf(t), NoncentralT.Of(6, -delta).UpperTail(-t), 1e-15, $"{delta} {t}");
    }
}
