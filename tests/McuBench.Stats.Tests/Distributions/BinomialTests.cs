using System.Numerics;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class BinomialTests
{
    [Fact]
    public void MassAndTails_FairTrials_AreTheExactCounts()
    {
        const int n = 60;
        var law = Binomial.Of(n, 0.5);
        BigInteger ways = 1;
        BigInteger atMost = 0;
        for (var k = 0; k <= n; k++)
        {
            atMost += ways;
            var all = Math.Pow(2, n);
            AssertClose((double)ways / all, law.Mass(k), 1e-14, $"k {k}");
            AssertClose((double)atMost / all, law.Cdf(k), 1e-14, $"k {k}");
            AssertClose((double)((BigInteger)all - atMost) / all, law.UpperTail(k), 1e-14, $"k {k}");
            ways = ways * (n - k) / (k + 1);
        }
    }

    [Fact]
    public void Quantile_FairTrials_IsTheMedian()
    {
        // P(X ≤ 0) = ½ exactly; P(X ≤ 4) = ½ exactly.
        Assert.Equal(0, Binomial.Of(1, 0.5).Quantile(0.5));
        Assert.Equal(4, Binomial.Of(9, 0.5).Quantile(0.5));
        Assert.Equal(4, Binomial.Of(9, 0.5).UpperQuantile(0.5));
    }

    [Fact]
    public void Everything_CertainOutcome_IsCertain()
    {
        foreach (
            var (law, outcome) in new[] { (Binomial.Of(7, 0), 0), (Binomial.Of(7, 1), 7), (Binomial.Of(0, 0.3), 0) }
        )
        {
            Assert.Equal(1, law.Mass(outcome));
            Assert.Equal(0, law.Mass(outcome + 1));
            Assert.Equal(0, law.Mass(outcome - 1));
            Assert.Equal(1, law.Cdf(outcome));
            Assert.Equal(0, law.Cdf(outcome - 1));
            Assert.Equal(0, law.UpperTail(outcome));
            Assert.Equal(1, law.UpperTail(outcome - 1));
            Assert.Equal(outcome, law.Quantile(0.01));
            Assert.Equal(outcome, law.UpperQuantile(0.01));
        }
    }

    [Fact]
    public void Mass_CertainOutcomeInside_IsZero()
    {
        Assert.Equal(0, Binomial.Of(7, 0).Mass(3));
        Assert.Equal(0, Binomial.Of(7, 1).Mass(3));
    }

    [Fact]
    public void Of_ParametersOutOfRange_Refuses()
    {
        Refusal.Of(() => Binomial.Of(-1, 0.5), "trials", "Trials must be between 0 and 9007199254740992; was -1.");
        Refusal.Of(
            () => Binomial.Of(3, 1.5),
            "successProbability",
            "Probability must be between 0 and 1, ends included; was 1.5."
        );
    }

    [Theory]
    [InlineData(0, "Probability must be above 0 and below 1; was 0.")]
    [InlineData(1, "Probability must be above 0 and below 1; was 1.")]
    [InlineData(double.NaN, "Probability must be above 0 and below 1; was NaN.")]
    public void Quantile_OutsideTheOpenUnitInterval_Refuses(double p, string message)
    {
        Refusal.Of(() => (object)Binomial.Of(4, 0.2).Quantile(p), "probability", message);
        Refusal.Of(() => (object)Binomial.Of(4, 0.2).UpperQuantile(p), "probability", message);
    }

    [Property]
    public void Quantile_IsTheSmallestCountThatReachesTheProbability(ushort trials, ushort chance, ushort pStep)
    {
        var law = Binomial.Of(trials % 3000, chance / (double)ushort.MaxValue);
        var p = Math.Pow(10, -9.0 * (pStep + 1) / (ushort.MaxValue + 2.0));
        var lower = law.Quantile(p);
        Assert.True(law.Cdf(lower) >= p * (1 - 1e-12));
        Assert.True(law.Cdf(lower - 1) < p);
        var upper = law.UpperQuantile(p);
        Assert.True(law.UpperTail(upper) <= p * (1 + 1e-12));
        Assert.True(law.UpperTail(upper - 1) > p);
    }
}
