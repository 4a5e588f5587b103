using System.Globalization;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class StudentizedRangeTests
{
    [Fact]
    public void UpperQuantile_HandbookTable_AgreesWithTwoPrograms()
    {
        var table = Cases("handbook-distributions.json", "cases")
            .Single(c => c.GetProperty("id").ValueEquals("hb-table-studentized-range"));
        var arguments = table.GetProperty("input").GetProperty("k_and_df");
        var p = table.GetProperty("input").GetProperty("p");
        var rows = table.GetProperty("recomputed").GetProperty("rows");
        for (var i = 0; i < arguments.GetArrayLength(); i++)
        {
            var law = StudentizedRange.Of(arguments[i][0].GetInt32(), arguments[i][1].GetDouble());
            for (var j = 0; j < p.GetArrayLength(); j++)
            {
                // Nine digits were written down, seven of them by two programs.
                var expected = double.Parse(rows[i][j].GetString()!, CultureInfo.InvariantCulture);
                AssertClose(expected, law.Quantile(p[j].GetDouble()), 1e-7, $"{law} {p[j]}");
            }
        }
    }

    [Fact]
    public void Tails_TwoMeans_AreBothTailsOfStudentT()
    {
        foreach (var df in new[] { 1, 2, 5.5, 30, 1e4, 1e8, double.PositiveInfinity })
        {
            var (law, student) = (StudentizedRange.Of(2, df), StudentT.Of(df));
            foreach (var q in new[] { 0.5, 2, 4, 9, 20 })
            {
                var t = q / Math.Sqrt(2);
                AssertClose(2 * student.UpperTail(t), law.UpperTail(q), 2e-13, $"upper tail {df} {q}");
                AssertClose(1 - (2 * student.UpperTail(t)), law.Cdf(q), 2e-14, $"cdf {df} {q}");
                AssertClose(Math.Sqrt(2) * student.Density(t), law.Density(q), 2e-13, $"density {df} {q}");
            }

            AssertClose(Math.Sqrt(2) * student.UpperQuantile(0.005), law.UpperQuantile(0.01), 2e-14, $"quantile {df}");
        }
    }

    [Fact]
    public void Cdf_RangeOfThreeNormalValues_HasItsKnownMean()
    {
        // E of the range of three is 3/√π; the mean is the integral of the upper tail.
        var law = StudentizedRange.Of(3, double.PositiveInfinity);
        var sum = 0.0;
        const double h = 1.0 / 64;
        for (var i = 0; i < 1024; i++)
        {
            // Simpson's rule on (0, 16).
            sum += h / 6 * (law.UpperTail(i * h) + (4 * law.UpperTail((i + 0.5) * h)) + law.UpperTail((i + 1) * h));
        }

        AssertClose(3 / Math.Sqrt(Math.PI), sum, 1e-9, "mean range");
    }

    // Of two means the range is √2 times the absolute value of Student's t.
    [Theory]
    [InlineData(2, 19)]
    [InlineData(2, 21)]
    [InlineData(2, 1e4)]
    [InlineData(2, 1e15)]
    [InlineData(2, 1e100)]
    [InlineData(7.5, 25)]
    [InlineData(7.5, 1e8)]
    [InlineData(7.5, 1e30)]
    [InlineData(40, 25)]
    [InlineData(40, 1e5)]
    [InlineData(300, 21)]
    public void UpperTail_OfTwoMeansFarOut_IsThatOfStudentsT(double df, double q)
    {
        double wanted = 2 * StudentT.Of(df).UpperTail(q / Math.Sqrt(2));
        AssertClose(wanted, StudentizedRange.Of(2, df).UpperTail(q), 2e-12, $"{df} {q}");
    }

    [Theory]
    [InlineData(3, 2)]
    [InlineData(10, 12)]
    public void UpperTail_BeyondAllNumbers_IsZero(int means, double df) =>
        Assert.InRange(StudentizedRange.Of(means, df).UpperTail(1e300), 0, 1e-300);

    [Fact]
    public void DensityAndTails_AtAndBelowZero_AreZeroAndOne()
    {
        var law = StudentizedRange.Of(4, 9);
        Assert.Equal((0, 1, 0), (law.Cdf(0), law.UpperTail(0), law.Density(0)));
        Assert.Equal((0, 1, 0), (law.Cdf(-2), law.UpperTail(-2), law.Density(-2)));
        Assert.Equal((1, 0), (StudentizedRange.Of(4, 1e21).Cdf(60), StudentizedRange.Of(4, 1e21).UpperTail(60)));
    }

    [Fact]
    public void Of_ParametersOutOfRange_Refuses()
    {
        Refusal.Of(() => StudentizedRange.Of(1, 9), "means", "Means must be between 2 and 1000; was 1.");
        Refusal.Of(() => StudentizedRange.Of(1001, 9), "means", "Means must be between 2 and 1000; was 1001.");
        const string rule = "Degrees of freedom must be at least 1; was ";
        Refusal.Of(() => StudentizedRange.Of(3, 0.9), "degreesOfFreedom", rule + "0.9.");
        Refusal.Of(() => StudentizedRange.Of(3, double.NaN), "degreesOfFreedom", rule + "NaN.");
    }

    [Fact]
    public void Questions_OfNoFiniteValueOrProbability_Refuse()
    {
        var law = StudentizedRange.Of(4, 9);
        const string message = "Value must be a finite number; was NaN.";
        Refusal.Of(() => law.Density(double.NaN), "q", message);
        Refusal.Of(() => law.Cdf(double.NaN), "q", message);
        Refusal.Of(() => law.UpperTail(double.NaN), "q", message);
        Refusal.Of(() => law.Quantile(0), "probability", "Probability must be above 0 and below 1; was 0.");
        Refusal.Of(() => law.UpperQuantile(1), "probability", "Probability must be above 0 and below 1; was 1.");
    }

    [Property(MaxTest = 60)]
    public void Quantile_ThenTail_GivesTheProbabilityBack(byte meansStep, ushort dfStep, ushort pStep)
    {
        var law = StudentizedRange.Of(2 + (meansStep % 40), Math.Pow(10, 0.4 + (5.0 * dfStep / ushort.MaxValue)));
        var p = Math.Pow(10, -0.01 - (8.0 * pStep / ushort.MaxValue));
        AssertClose(p, law.UpperTail(law.UpperQuantile(p)), 1e-12, $"{law} {p}");
    }
}
