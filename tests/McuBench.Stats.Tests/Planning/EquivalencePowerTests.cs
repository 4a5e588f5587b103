using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class EquivalencePowerTests
{
    [Fact]
    public void OneSample_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "tost_n_margin_difference_power",
            3,
            // The two programs differ by 2.4e-9.
            5e-9,
            row => [EquivalencePower.OneSample((int)row[0], row[1], row[2])]
        );

    [Fact]
    public void Welch_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "welch_tost_n_n_margin_sd_sd_difference_power",
            6,
            // The two programs differ by 2e-10, each by another integral.
            5e-9,
            row => [EquivalencePower.Welch((int)row[0], (int)row[1], row[2], new TwoSpreads(row[3], row[4]), row[5])]
        );

    [Fact]
    public void CountOneSample_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "tost_margin_difference_power_count",
            3,
            0,
            row => [EquivalencePower.CountOneSample(row[0], row[2], row[1]).PerSample]
        );

    [Fact]
    public void OneSample_DifferenceAtTheMargin_NearsTheSignificance() =>
        Assert.Equal(0.05, EquivalencePower.OneSample(100, 3, 3 - 1e-12), 1e-9);

    [Fact]
    public void OneSample_TwoValues_IsNeverNegative() => Assert.InRange(EquivalencePower.OneSample(2, 0.01), 0, 0.01);

    [Fact]
    public void CountWelch_OnePercentApart_IsTheSmallestThatDoes()
    {
        var spreads = TwoSpreads.OfLogarithms(0.02, 0.03);
        double margin = Math.Log(1.03);
        double difference = Math.Log(1.01);

        PlannedCount plan = EquivalencePower.CountWelch(margin, spreads, 0.9, difference);

        double At(int n) => EquivalencePower.Welch(n, n, margin, spreads, difference);
        Assert.True(At(plan.PerSample) >= 0.9);
        Assert.True(At(plan.PerSample - 1) < 0.9);
    }

    [Fact]
    public void SmallestMargin_PutBackIn_GivesThePower()
    {
        var spreads = new TwoSpreads(0.02, 0.01);

        double margin = EquivalencePower.SmallestMargin(6, 6, spreads, 0.8);

        Agree.Relative(0.8, EquivalencePower.Welch(6, 6, margin, spreads), 1e-10);
    }

    [Fact]
    public void Arguments_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => EquivalencePower.OneSample(5, 1, -1),
            "difference",
            "True difference must be within the margin of ±1; was -1."
        );
        Distributions.Refusal.Of(
            () => EquivalencePower.OneSample(5, 1, 0, 0.5),
            "significance",
            "Significance must be above 0 and below 0.5; was 0.5."
        );
        Distributions.Refusal.Of(
            () => EquivalencePower.CountOneSample(0, 0.9),
            "margin",
            "Margin must be a finite number above 0; was 0."
        );
    }
}
