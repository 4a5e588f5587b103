using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class MomentAccumulatorTests
{
    [Theory]
    [InlineData("Lew", 1e-14)]
    [InlineData("Lottery", 1e-14)]
    [InlineData("Mavro", 1e-12)]
    [InlineData("Michelso", 2e-14)]
    [InlineData("NumAcc1", 0)]
    [InlineData("NumAcc2", 1e-14)]
    [InlineData("NumAcc3", 4e-10)]
    [InlineData("NumAcc4", 6e-9)]
    [InlineData("PiDigits", 1e-13)]
    public void Add_NistData_HoldsTheCertifiedDigits(string set, double tolerance)
    {
        var moments = new MomentAccumulator();
        moments.Add(NistUnivariate.Values(set));

        Agree.Relative(NistUnivariate.Certified(set).Mean, moments.Mean, 1.5e-15);
        Agree.Relative(NistUnivariate.Certified(set).StandardDeviation, moments.StandardDeviation, tolerance);
    }

    [Fact]
    public void Add_NumAcc4_IsExactArithmeticsToThirteenDigits()
    {
        var moments = new MomentAccumulator();
        moments.Add(NistUnivariate.Values("NumAcc4"));

        Agree.Relative(0.100000000558793545, moments.StandardDeviation, 1e-13);
    }

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void Moments_DataSets_AgreeWithRAndSciPy(string set)
    {
        var moments = new MomentAccumulator();
        moments.Add(Datasets.Values(set));

        RobustReference.AgreeWithBoth(set, "mean", moments.Mean, 1e-15);
        RobustReference.AgreeWithBoth(set, "variance", moments.Variance, 1e-13);
        Assert.Equal(RobustReference.R(set).Number("skewness"), moments.Skewness, ShapeTests.Tolerance(set));
        Assert.Equal(RobustReference.R(set).Number("kurtosis"), moments.ExcessKurtosis, ShapeTests.Tolerance(set));
        Assert.Equal(Datasets.Values(set).Min(), moments.Minimum);
        Assert.Equal(Datasets.Values(set).Max(), moments.Maximum);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Merge_PartsInAnyOrder_AgreesWithTheWhole(Dyadic data, int seed)
    {
        double[] values = [.. data.Shuffled(seed).Select(value => value + 1e6), 1e6, 1e6 + 60];
        var whole = new MomentAccumulator();
        whole.Add(values);
        var random = new Random(seed);
        MomentAccumulator[] parts = [new(), new(), new(), new()];
        foreach (double value in values)
        {
            parts[random.Next(4)].Add(value);
        }

        random.Shuffle(parts);
        var merged = new MomentAccumulator();
        foreach (MomentAccumulator part in parts)
        {
            merged.Merge(part);
        }

        Assert.Equal(whole.Count, merged.Count);
        Assert.Equal(whole.Minimum, merged.Minimum);
        Assert.Equal(whole.Maximum, merged.Maximum);
        Agree.Relative(whole.Mean, merged.Mean, 3e-16);
        Agree.Relative(whole.Variance, merged.Variance, 1e-12);
        Assert.Equal(whole.Skewness, merged.Skewness, 1e-11);
        Assert.Equal(whole.ExcessKurtosis, merged.ExcessKurtosis, 1e-10);
    }

    [Fact]
    public void Merge_WithItself_DoublesEachValue()
    {
        var moments = new MomentAccumulator();
        moments.Add([1, 2, 4]);
        moments.Merge(moments);

        Assert.Equal(6, moments.Count);
        Agree.Relative(Scale.Variance([1, 1, 2, 2, 4, 4]), moments.Variance, 1e-14);
    }

    [Fact]
    public void Add_AMillionValuesFarFromZero_KeepsTheSpread()
    {
        var moments = new MomentAccumulator();
        for (int i = 0; i < 1_000_000; i++)
        {
            moments.Add(1e9 + i % 2);
        }

        Agree.Relative(0.25 * 1e6 / (1e6 - 1), moments.Variance, 1e-12);
        Assert.Equal(-2, moments.ExcessKurtosis, 1e-11);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1e301)]
    public void Add_OutOfRange_IsRefusedAndAddsNothing(double value)
    {
        var moments = new MomentAccumulator();
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => moments.Add(value));

        Assert.Equal("value", refusal.ParamName);
        Assert.StartsWith(
            "Value must be a finite number from -1E300 to 1E300; was ",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Value at index 1 must be a finite number from -1E300 to 1E300; was ",
            Assert.Throws<ArgumentOutOfRangeException>(() => moments.Add([1, value])).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(0, moments.Count);
    }

    [Fact]
    public void Properties_TooFewValues_SayHowManyWouldDo()
    {
        var moments = new MomentAccumulator();

        Assert.Equal(
            "Count of values must be at least 1; was 0.",
            Assert.Throws<InvalidOperationException>(() => moments.Mean).Message
        );
        Assert.Throws<InvalidOperationException>(() => moments.Minimum);
        moments.Add(3);
        Assert.Equal(3, moments.Mean);
        Assert.Equal(
            "Count of values must be at least 2; was 1.",
            Assert.Throws<InvalidOperationException>(() => moments.Variance).Message
        );
        moments.Add(3);
        Assert.Equal(0, moments.Variance);
        Assert.Equal(
            "Values must differ for a measure of shape; all were equal.",
            Assert.Throws<InvalidOperationException>(() => moments.Skewness).Message
        );
    }

    [Fact]
    public void Variance_AboveTheGreatestNumber_IsRefused()
    {
        var moments = new MomentAccumulator();
        moments.Add([-1e200, 1e200, 1e200]);

        Assert.StartsWith(
            "Moments of the values must be below 1.8E308",
            Assert.Throws<InvalidOperationException>(() => moments.Variance).Message,
            StringComparison.Ordinal
        );
    }
}
