using McuBench.Core.Conclusions;
using McuBench.Stats.Distributions;

namespace McuBench.Core.Tests.Conclusions;

public class PlaceProbabilitiesTests
{
    /// <summary>Four standard errors of a share of the rounds, at most.</summary>
    private static readonly double FourErrors = 4 * 0.5 / Math.Sqrt(PlaceProbabilities.Rounds);

    [Fact]
    public void Of_ThreeAlike_GivesEachPlaceAThird()
    {
        var places = PlaceProbabilities.Of([Of(2, "a", 0.01), Of(2, "b", 0.01), Of(2, "c", 0.01)], 1, 0);

        Assert.All(places, p => Assert.All(p, share => Assert.Equal(1.0 / 3, share, FourErrors)));
        Assert.All(places, p => Assert.Equal(1, p.Sum(), 1e-12));
    }

    [Fact]
    public void Of_ManyDegreesOfFreedom_IsTheNormalDistributions()
    {
        // ln(2.02/2) = 0.00995 against 0.01 · √2: the first is first with Φ(0.7036).
        var places = PlaceProbabilities.Of([Of(2, "a", 0.01), Of(2.02, "b", 0.01)], 1, 0);
        var expected = Normal.Standard.Cdf(Math.Log(1.01) / 0.01 / Math.Sqrt(2));

        Assert.Equal(expected, places[0][0], FourErrors);
        Assert.Equal(expected, places[1][1], FourErrors);
    }

    [Fact]
    public void Of_OneTolerance_IsEvenWithinItsLimits()
    {
        // ±0.01·√3 on the second alone, which is 1 % above the first: it falls below in (√3 − 0.995)/(2√3).
        var tolerance = new Source("t", "t", EvaluationType.TypeB, double.PositiveInfinity, AveragesDown: false);
        var places = PlaceProbabilities.Of(
            [UncertainValue.Exact(2), UncertainValue.Exact(2.02).WithRelative(tolerance, 0.01)],
            1,
            0
        );

        Assert.Equal((Math.Sqrt(3) - Math.Log(1.01) / 0.01) / (2 * Math.Sqrt(3)), places[1][0], FourErrors);
    }

    [Fact]
    public void Of_SharedScale_ChangesNoPlace()
    {
        var scale = new Source("s", "s", EvaluationType.TypeB, double.PositiveInfinity, AveragesDown: false);
        var places = PlaceProbabilities.Of(
            [UncertainValue.Exact(2).WithRelative(scale, 0.1), UncertainValue.Exact(2.0001).WithRelative(scale, 0.1)],
            1,
            0
        );

        Assert.Equal(1, places[0][0]);
    }

    [Fact]
    public void Of_SameSeedAndStream_DrawsTheSame()
    {
        UncertainValue[] values = [Of(2, "a", 0.01), Of(2.01, "b", 0.02)];

        Assert.Equal(PlaceProbabilities.Of(values, 5, 3), PlaceProbabilities.Of(values, 5, 3));
        Assert.NotEqual(PlaceProbabilities.Of(values, 5, 3), PlaceProbabilities.Of(values, 5, 4));
    }

    private static UncertainValue Of(double value, string key, double relative) =>
        UncertainValue
            .Exact(value)
            .WithRelative(new Source(key, key, EvaluationType.TypeA, 1e9, AveragesDown: true), relative);
}
