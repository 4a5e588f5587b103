using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class WelchPowerTests
{
    [Fact]
    public void Power_Grid_AgreesWithRAndSciPy() =>
        PlanningReference.Holds(
            "welch_n_n_difference_sd_sd_power",
            5,
            // The two programs differ by 3e-11, each by another integral.
            1e-9,
            row => [WelchPower.Power((int)row[0], (int)row[1], row[2], new TwoSpreads(row[3], row[4]))]
        );

    [Fact]
    public void Power_ManyValues_NearsThatOfKnownSpreads()
    {
        // Two-sided z test: difference 0.05 at a standard error of √(2/2000).
        double power = WelchPower.Power(2000, 2000, 0.05, new TwoSpreads(1, 1));

        Assert.Equal(TwoSampleTPower.Power(2000, 2000, 0.05), power, 1e-6);
    }

    [Fact]
    public void Power_Swapped_IsTheSame()
    {
        double forth = WelchPower.Power(4, 9, 1.2, new TwoSpreads(1, 0.3));

        Agree.Relative(forth, WelchPower.Power(9, 4, -1.2, new TwoSpreads(0.3, 1)), 1e-11);
    }

    [Fact]
    public void Count_AnyDifference_IsTheSmallestThatDoes()
    {
        var spreads = new TwoSpreads(1, 2);

        PlannedCount plan = WelchPower.Count(1.5, spreads, 0.9);

        Assert.True(WelchPower.Power(plan.PerSample, plan.PerSample, 1.5, spreads) >= 0.9);
        Assert.True(WelchPower.Power(plan.PerSample - 1, plan.PerSample - 1, 1.5, spreads) < 0.9);
    }

    [Fact]
    public void SmallestDifference_PutBackIn_GivesThePower()
    {
        var spreads = new TwoSpreads(0.02, 0.05);

        double difference = WelchPower.SmallestDifference(5, 8, spreads, 0.8);

        Agree.Relative(0.8, WelchPower.Power(5, 8, difference, spreads), 1e-10);
    }

    [Fact]
    public void Power_HugeDifference_IsOne() =>
        Assert.Equal(1, WelchPower.Power(3, 3, 1e12, new TwoSpreads(1, 1)), 1e-9);

    [Fact]
    public void TwoSpreads_OfLogarithms_AreThoseOfLognormalPopulations()
    {
        // By hand: √log(1.25); and next to nothing taken off a small one.
        Agree.Relative(Math.Sqrt(Math.Log(1.25)), TwoSpreads.OfLogarithms(0.5, 1).First, 1e-15);
        Agree.Relative(Math.Sqrt(Math.Log(2)), TwoSpreads.OfLogarithms(0.5, 1).Second, 1e-15);
        Agree.Relative(1e-10, TwoSpreads.OfLogarithms(1e-10, 1).First, 1e-15);
        Assert.True(TwoSpreads.OfLogarithms(1e300, 1).First > 37);
    }

    [Fact]
    public void Arguments_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => new TwoSpreads(1, 0),
            "second",
            "Standard deviation must be a finite number above 0; was 0."
        );
        Assert.Throws<ArgumentNullException>(() => WelchPower.Power(2, 2, 1, null!));
        Assert.Equal(
            "second",
            Assert.Throws<ArgumentException>(() => WelchPower.Power(2, 1, 1, new TwoSpreads(1, 1))).ParamName
        );
    }
}
