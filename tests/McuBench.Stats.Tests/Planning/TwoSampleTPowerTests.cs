using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class TwoSampleTPowerTests
{
    [Fact]
    public void Power_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "pooled_n_n_effect_alpha_sides_power",
            5,
            // SciPy's noncentral t leaves 9e-9.
            1e-8,
            row =>
                [TwoSampleTPower.Power((int)row[0], (int)row[1], row[2], OneSampleTPowerTests.Options(row[3], row[4]))]
        );

    [Fact]
    public void Count_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "pooled_effect_power_count",
            2,
            0,
            row => [TwoSampleTPower.Count(row[0], row[1]).PerSample]
        );

    [Fact]
    public void SmallestEffect_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "pooled_n_power_effect",
            2,
            1e-10,
            row => [TwoSampleTPower.SmallestEffect((int)row[0], (int)row[0], row[1])]
        );

    [Fact]
    public void Count_TwoSamples_CountsBoth()
    {
        PlannedCount plan = TwoSampleTPower.Count(1, 0.9);

        Assert.Equal(2 * plan.PerSample, plan.Total);
        Assert.True(TwoSampleTPower.Power(plan.PerSample - 1, plan.PerSample - 1, 1) < 0.9);
        Assert.Equal(TwoSampleTPower.Power(plan.PerSample, plan.PerSample, 1), plan.Attained);
    }

    [Fact]
    public void Power_TooFewValues_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => TwoSampleTPower.Power(1, 1, 1));

        Assert.Equal("second", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 3; was 2.", refusal.Message, StringComparison.Ordinal);
    }
}
