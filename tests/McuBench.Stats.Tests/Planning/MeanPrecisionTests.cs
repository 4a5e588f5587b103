using FsCheck.Xunit;
using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class MeanPrecisionTests
{
    [Fact]
    public void Count_ExpectedHalfWidth_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "mean_spread_halfwidth_confidence_count",
            3,
            0,
            row => [MeanPrecision.Count(row[0], row[1], row[2]).PerSample]
        );

    [Fact]
    public void Count_Assured_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "mean_spread_halfwidth_confidence_assurance_count_attained",
            4,
            // R and SciPy differ from one another by 5e-12.
            1e-11,
            row =>
            {
                PlannedCount plan = MeanPrecision.Count(row[0], row[1], row[2], row[3]);
                return [plan.PerSample, plan.Attained];
            }
        );

    [Property]
    public void Count_AnySpread_IsTheSmallestThatDoes(byte spread, byte half)
    {
        double relativeSpread = (spread + 1) / 1000.0;
        double wanted = (half + 5) / 1000.0;

        int count = MeanPrecision.Count(relativeSpread, wanted).PerSample;

        Assert.True(MeanPrecision.HalfWidth(count, relativeSpread) <= wanted);
        Assert.True(count == 2 || MeanPrecision.HalfWidth(count - 1, relativeSpread) > wanted);
    }

    [Fact]
    public void HalfWidth_TwoValues_IsTheClosedForm() =>
        // t at one degree of freedom is cot(πp) for an upper tail of p.
        Agree.Relative(0.1 / Math.Tan(Math.PI * 0.025) / Math.Sqrt(2), MeanPrecision.HalfWidth(2, 0.1), 1e-14);

    [Fact]
    public void HalfWidth_OneValue_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => MeanPrecision.HalfWidth(1, 0.1));

        Assert.Equal("count", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Count_OutOfRange_IsRefused()
    {
        Distributions.Refusal.Of(
            () => MeanPrecision.Count(0, 0.1),
            "relativeSpread",
            "Relative spread must be a finite number above 0; was 0."
        );
        Distributions.Refusal.Of(
            () => MeanPrecision.Count(0.1, double.NaN),
            "relativeHalfWidth",
            "Relative half-width must be a finite number above 0; was NaN."
        );
        Distributions.Refusal.Of(
            () => MeanPrecision.Count(0.1, 0.1, 0.95, 1),
            "assurance",
            "Assurance must be above 0 and below 1; was 1."
        );
        Distributions.Refusal.Of(
            () => MeanPrecision.Count(1, 1e-6),
            "relativeHalfWidth",
            "Count of values must be at most 1E+007 in a sample; this plan needs more, so ask for less."
        );
    }
}
