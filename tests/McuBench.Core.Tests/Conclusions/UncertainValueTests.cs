using FsCheck.Xunit;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Tests.Conclusions;

public class UncertainValueTests
{
    /// <summary>gum-2008, H.1: the end gauge's six components in nanometres with their degrees of freedom. Recomputed
    /// from unrounded inputs: u = 31.663879111 nm, ν = 16.75 (the GUM prints 32 nm and cuts ν to 16).</summary>
    [Fact]
    public void DegreesOfFreedom_EndGaugeOfTheGum_AreTheGums()
    {
        var length = UncertainValue
            .Exact(50_000_623)
            .Plus(With(0, "standard", 25, 18))
            .Plus(With(215, "mean", 5.8, 24))
            .Plus(With(0, "random", 3.9, 5))
            .Plus(With(0, "systematic", 6.7, 8))
            .Plus(With(0, "expansion", 2.88678731487, 50))
            .Plus(With(0, "temperature", 16.5990270605, 2));

        Assert.Equal(50_000_838, length.Value);
        Assert.Equal(31.663879111, length.StandardUncertainty, 1e-8);
        Assert.Equal(16.7518557376, ByComparator(length), 0.02);
    }

    [Fact]
    public void Times_IndependentFactors_AddRelativeUncertaintiesInQuadrature()
    {
        var product = With(10, "a", 0.3, 9).Times(With(5, "b", 0.2, 4));

        Assert.Equal(50, product.Value);
        Assert.Equal(50 * Math.Sqrt(0.03 * 0.03 + 0.04 * 0.04), product.StandardUncertainty, 1e-13);
        Assert.Equal(
            Math.Pow(0.05, 4) / (Math.Pow(0.03, 4) / 9 + Math.Pow(0.04, 4) / 4),
            product.DegreesOfFreedom,
            1e-9
        );
    }

    [Fact]
    public void Over_SharedScaleError_Cancels()
    {
        var scale = new Source("scale", "scale", EvaluationType.TypeB, double.PositiveInfinity, AveragesDown: false);
        var a = UncertainValue.Exact(3).WithRelative(scale, 0.01);
        var b = UncertainValue.Exact(7).WithRelative(scale, 0.01);

        Assert.Empty(a.Over(b).Contributions);
        Assert.Equal(0.01 * 4, b.Minus(a).StandardUncertainty, 1e-15);
        Assert.Equal(0.01 * 2 * 21, a.Times(b).StandardUncertainty, 1e-13);
    }

    [Fact]
    public void Over_ZeroDivisor_Refuses() =>
        Assert.StartsWith(
            "A result must be a finite number; was Infinity.",
            Assert.Throws<ArgumentOutOfRangeException>(() => With(1, "a", 1, 1).Over(UncertainValue.Exact(0))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void DegreesOfFreedom_NothingFromScatter_AreInfinite() =>
        Assert.Equal(double.PositiveInfinity, With(1, "a", 1, double.PositiveInfinity).DegreesOfFreedom);

    [Fact]
    public void Missing_IsPassedOn() =>
        Assert.Equal("one trial", UncertainValue.Exact(2).Times(With(1, "a", 1, 1).WithMissing("one trial")).Missing);

    [Property]
    public void DegreesOfFreedom_DoNotDependOnTheUnit(byte exponent, ushort a, ushort b)
    {
        var value = With(1, "a", a + 1, 3).Plus(With(1, "b", b + 1, 7));
        var scaled = value.Times(Math.Pow(10, -exponent));

        Assert.Equal(value.DegreesOfFreedom, scaled.DegreesOfFreedom, value.DegreesOfFreedom * 1e-12);
    }

    /// <summary>The GUM takes mean, random and systematic part of the comparator together first (9.68 nm at 25.4).</summary>
    private static double ByComparator(UncertainValue length)
    {
        double[] comparator = [5.8, 3.9, 6.7];
        double[] freedom = [24, 5, 8];
        var variance = comparator.Sum(u => u * u);
        var comparatorFreedom = variance * variance / comparator.Zip(freedom, (u, v) => u * u * u * u / v).Sum();
        var parts = length.Contributions.Where(c => c.Source.Key is "standard" or "expansion" or "temperature");
        return UncertainValue
            .Of(0, [.. parts])
            .Plus(With(0, "comparator", Math.Sqrt(variance), comparatorFreedom))
            .DegreesOfFreedom;
    }

    private static UncertainValue With(double value, string key, double uncertainty, double degreesOfFreedom) =>
        UncertainValue.Of(
            value,
            new Contribution(
                new Source(key, key, EvaluationType.TypeA, degreesOfFreedom, AveragesDown: true),
                uncertainty
            )
        );
}
