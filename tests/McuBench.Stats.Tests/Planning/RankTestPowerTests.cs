using McuBench.Stats.Hypotheses;
using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class RankTestPowerTests
{
    [Fact]
    public void CountMannWhitney_ByNoethersFormula_AgreesWithHand()
    {
        // N = (z₀.₀₅ + z₀.₁)²/(12·¼·(0.7 − 0.5)²) = 8.563847/0.12 = 71.4, so 36 a side; z from tables.
        var options = new PowerOptions { Alternative = Alternative.Greater };

        Assert.Equal(36, RankTestPower.CountMannWhitney(0.7, 0.9, options).PerSample);
    }

    [Fact]
    public void CountSignedRank_ByNoethersFormula_AgreesWithHand()
    {
        // N = (z₀.₀₅ + z₀.₁)²/(3·(0.7 − 0.5)²) = 8.563847/0.12 = 71.4.
        var options = new PowerOptions { Alternative = Alternative.Less };

        Assert.Equal(72, RankTestPower.CountSignedRank(0.3, 0.9, options).PerSample);
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(4, 1)]
    public void MannWhitney_FewerThanTheExactTestNeeds_NeverRejects(int count, double power) =>
        // Of 3 a side the least two-sided p is 2/20, of 4 a side 2/70.
        Assert.Equal(power, Math.Ceiling(RankTestPower.MannWhitney(count, count, 1)));

    [Theory]
    [InlineData(5, 0)]
    [InlineData(6, 1)]
    public void SignedRank_FewerThanTheExactTestNeeds_NeverRejects(int count, double power) =>
        // Of 5 the least two-sided p is 2/32, of 6 2/64.
        Assert.Equal(power, Math.Ceiling(RankTestPower.SignedRank(count, 1)));

    [Fact]
    public void CountMannWhitney_GreatestEffect_IsWhatTheExactTestNeeds() =>
        Assert.Equal(4, RankTestPower.CountMannWhitney(1, 0.5).PerSample);

    [Theory]
    // Φ(1/√2) and Φ(√2), DLMF 7.17 tables and mpmath.
    [InlineData(1, 0.7602499389065233, 0.9213503964748574)]
    [InlineData(0, 0.5, 0.5)]
    public void Shift_OfNormalPopulations_GivesTheProbabilities(double shift, double superiority, double positiveSum)
    {
        Agree.Relative(superiority, RankTestPower.SuperiorityOfShift(shift), 1e-14);
        Agree.Relative(positiveSum, RankTestPower.PositiveSumOfShift(shift), 1e-14);
    }

    [Fact]
    public void Power_NoEffect_IsTheSignificance()
    {
        Agree.Relative(0.05, RankTestPower.MannWhitney(10, 20, 0.5), 1e-13);
        Agree.Relative(0.05, RankTestPower.SignedRank(12, 0.5), 1e-13);
    }

    [Fact]
    public void Arguments_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => RankTestPower.CountMannWhitney(0.5, 0.9),
            "superiority",
            "Probability must be off 0.5 in the direction of the alternative; was 0.5."
        );
        Distributions.Refusal.Of(
            () => RankTestPower.SignedRank(5, 1.5),
            "positiveSum",
            "Probability must be between 0 and 1, ends included; was 1.5."
        );
    }
}
