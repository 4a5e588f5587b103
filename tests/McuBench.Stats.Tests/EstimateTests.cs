namespace McuBench.Stats.Tests;

public sealed class EstimateTests
{
    private static readonly Estimate Whole = new(1.5, 12, "mean, Student t")
    {
        StandardError = 0.1,
        DegreesOfFreedom = 11,
        Interval = new Interval(1.2, 1.8, 0.95),
        Notes = ["a", "b"],
    };

    [Fact]
    public void Equals_SamePartsInOtherObjects_IsTrue()
    {
        Estimate other = Whole with { Interval = new Interval(1.2, 1.8, 0.95), Notes = ["a", "b"] };

        Assert.Equal(Whole, other);
        Assert.Equal(Whole.GetHashCode(), other.GetHashCode());
    }

    [Fact]
    public void Equals_OnePartDiffers_IsFalse()
    {
        Assert.NotEqual(Whole, Whole with { Notes = ["a", "c"] });
        Assert.NotEqual(Whole, Whole with { StandardError = 0.2 });
        Assert.NotEqual(Whole, Whole with { DegreesOfFreedom = null });
        Assert.NotEqual(Whole, Whole with { Interval = null });
    }

    [Fact]
    public void Notes_Default_AreEmpty() => Assert.Empty((Whole with { Notes = default }).Notes);

    [Fact]
    public void ToString_WithAndWithoutInterval_SaysSo()
    {
        Assert.Equal("1.5 in [1.2, 1.8] (95 %), n = 12, mean, Student t", Whole.ToString());
        Assert.Equal("1.5 no interval, n = 12, mean, Student t", (Whole with { Interval = null }).ToString());
    }

    [Fact]
    public void Constructor_ValueNotFinite_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(double.NaN, 1, "m"));

        Assert.Equal("value", refusal.ParamName);
        Assert.StartsWith("Estimate must be a finite number; was NaN.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Constructor_NoValues_IsRefused() =>
        Assert.Equal("count", Assert.Throws<ArgumentException>(() => new Estimate(1, 0, "m")).ParamName);

    [Fact]
    public void Constructor_BlankMethod_IsRefused() =>
        Assert.Equal("method", Assert.Throws<ArgumentException>(() => new Estimate(1, 1, " ")).ParamName);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void StandardError_NotFiniteAboveZero_IsRefused(double error)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Whole with { StandardError = error });

        Assert.Equal("StandardError", refusal.ParamName);
        Assert.StartsWith(
            "Standard error must be a finite number above 0; was ",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void DegreesOfFreedom_NotAboveZero_AreRefused(double degrees) =>
        Assert.Equal(
            "DegreesOfFreedom",
            Assert.Throws<ArgumentOutOfRangeException>(() => Whole with { DegreesOfFreedom = degrees }).ParamName
        );

    [Fact]
    public void Interval_WithoutWidth_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Whole with
            {
                Interval = new Interval(2, 2, 0.9),
            }
        );

        Assert.Equal("Interval", refusal.ParamName);
        Assert.StartsWith("Width of the interval must be above 0; was 0.", refusal.Message, StringComparison.Ordinal);
    }
}
