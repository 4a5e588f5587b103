using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class OneSampleTPowerTests
{
    // SciPy's noncentral t leaves 6e-9 where the effect is 0 and the answer the significance; R holds 1e-12.
    private const double SciPy = 1e-8;

    [Fact]
    public void Power_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "one_sample_n_effect_alpha_sides_power",
            4,
            SciPy,
            row => [OneSampleTPower.Power((int)row[0], row[1], Options(row[2], row[3]))]
        );

    [Fact]
    public void Count_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "one_sample_effect_power_count",
            2,
            0,
            row => [OneSampleTPower.Count(row[0], row[1]).PerSample]
        );

    [Fact]
    public void Count_HandbookCase_NeedsEleven()
    {
        var reference = ReferenceCase.Of("handbook-planning", "hb-sample-size-mean");
        PowerOptions options = Options(reference.Number("input", "alpha"), 1);
        double effect = reference.Number("input", "delta_over_sigma");

        PlannedCount plan = OneSampleTPower.Count(effect, 1 - reference.Number("input", "beta"), options);

        Assert.Equal(reference.Number("expected", "N_t"), plan.PerSample);
        Assert.Equal(11, plan.Total);
        // Kept to eight digits.
        Assert.Equal(reference.Number("recomputed", "power_of_exact_t_test_N11"), plan.Attained, 5e-9);
        Assert.Equal(
            reference.Number("recomputed", "power_of_exact_t_test_N10"),
            OneSampleTPower.Power(10, effect, options),
            5e-9
        );
    }

    [Theory]
    [InlineData(2, 0.05)]
    [InlineData(7, 0.01)]
    [InlineData(100, 0.2)]
    public void Power_NoEffect_IsTheSignificance(int count, double significance)
    {
        foreach (Alternative alternative in Enum.GetValues<Alternative>())
        {
            var options = new PowerOptions { Significance = significance, Alternative = alternative };
            Agree.Relative(significance, OneSampleTPower.Power(count, 0, options), 1e-12);
        }
    }

    [Fact]
    public void Power_HugeEffect_IsOneAndAgainstTheAlternativeNothing()
    {
        Assert.Equal(1, OneSampleTPower.Power(5, 1e9), 1e-12);
        Assert.Equal(0, OneSampleTPower.Power(5, -1e9, Options(0.05, 1)));
    }

    [Fact]
    public void Power_EffectFarBeyondTheNoncentralT_FollowsTheSpreadAlone()
    {
        // One degree of freedom: P(χ² < (δ/t)²) = erf(δ/(t·√2)), almost δ/t·√(2/π) where t is large.
        var options = new PowerOptions { Significance = 1e-6 };
        double critical = 1 / Math.Tan(Math.PI * 5e-7);
        double noncentrality = 200 * Math.Sqrt(2);

        double share = noncentrality / critical;

        Agree.Relative(share * Math.Sqrt(2 / Math.PI), OneSampleTPower.Power(2, 200, options), 1e-6);
    }

    [Property]
    public void SmallestEffect_PutBackIn_GivesThePower(byte count, byte power)
    {
        int n = count % 60 + 2;
        double wanted = 0.1 + power / 300.0;
        foreach (Alternative alternative in Enum.GetValues<Alternative>())
        {
            var options = new PowerOptions { Alternative = alternative };

            double effect = OneSampleTPower.SmallestEffect(n, wanted, options);

            Agree.Relative(wanted, OneSampleTPower.Power(n, effect, options), 1e-11);
            Assert.Equal(alternative == Alternative.Less, effect < 0);
        }
    }

    [Fact]
    public void CountAndSmallestEffect_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => OneSampleTPower.Count(0, 0.8),
            "effect",
            "Effect must be in the direction of the alternative and not 0; was 0."
        );
        Distributions.Refusal.Of(
            () => OneSampleTPower.Count(-1, 0.8, Options(0.05, 1)),
            "effect",
            "Effect must be in the direction of the alternative and not 0; was -1."
        );
        Distributions.Refusal.Of(
            () => OneSampleTPower.Count(1, 0.05),
            "power",
            "Power must be above the significance 0.05 and below 1; was 0.05."
        );
        Distributions.Refusal.Of(
            () => OneSampleTPower.SmallestEffect(5, 1),
            "power",
            "Power must be above the significance 0.05 and below 1; was 1."
        );
        Distributions.Refusal.Of(
            () => new PowerOptions { Significance = 0 },
            "Significance",
            "Significance must be above 0 and below 1; was 0."
        );
        Distributions.Refusal.Of(
            () => OneSampleTPower.Power(5, double.PositiveInfinity),
            "effect",
            "Effect must be a finite number; was Infinity."
        );
    }

    internal static PowerOptions Options(double significance, double sides) =>
        new() { Significance = significance, Alternative = sides == 2 ? Alternative.TwoSided : Alternative.Greater };
}
