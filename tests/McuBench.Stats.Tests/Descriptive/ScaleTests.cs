using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class ScaleTests
{
    // The certified values belong to decimal data; binary64 data are off by up to the second column, which the
    // reference set worked out in exact arithmetic.
    [Theory]
    [InlineData("Lew", 1e-14)]
    [InlineData("Lottery", 1e-14)]
    [InlineData("Mavro", 1e-12)]
    [InlineData("Michelso", 2e-14)]
    [InlineData("NumAcc1", 0)]
    [InlineData("NumAcc2", 1e-14)]
    [InlineData("NumAcc3", 4e-10)]
    [InlineData("NumAcc4", 6e-9)]
    [InlineData("PiDigits", 1e-14)]
    public void StandardDeviation_NistData_HoldsTheCertifiedDigits(string set, double tolerance)
    {
        double expected = NistUnivariate.Certified(set).StandardDeviation;
        double[] values = NistUnivariate.Values(set);

        Agree.Relative(expected, Scale.StandardDeviation(values), tolerance);
        Agree.Relative(expected * expected, Scale.Variance(values), 2 * tolerance + 2e-16);
    }

    [Theory]
    [InlineData("NumAcc3", 0.100000000034924597)]
    [InlineData("NumAcc4", 0.100000000558793545)]
    public void StandardDeviation_NumAccAsRounded_IsExactArithmetics(string set, double expected) =>
        Agree.Relative(expected, Scale.StandardDeviation(NistUnivariate.Values(set)), 1e-14);

    [Fact]
    public void StandardDeviation_AllEqual_IsZero() =>
        Assert.Equal(0, Scale.StandardDeviation(Enumerable.Repeat(0.1, 10).ToArray()));

    [Theory]
    [InlineData(1e300)]
    [InlineData(1e-300)]
    [InlineData(1e-310)]
    public void StandardDeviation_SquaresOutOfRange_IsRight(double unit) =>
        Agree.Relative(unit, Scale.StandardDeviation([1 * unit, 2 * unit, 3 * unit]), 1e-13);

    [Fact]
    public void Variance_AboveTheGreatestNumber_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Scale.Variance([1e200, 2e200]));

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith("Variance of the values must be below 1.8E308", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Variance_OneValue_IsRefusedWithTheNumberThatWouldDo()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Scale.Variance([1]));

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MedianAbsoluteDeviation_ThreeConsistencies_AreThePublishedFactors()
    {
        double[] values = [1, 2, 4, 8, 16];

        Assert.Equal(3, Scale.MedianAbsoluteDeviation(values, Consistency.None));
        Agree.Relative(3 * 1.482602218505602, Scale.MedianAbsoluteDeviation(values), 1e-15);
        Agree.Relative(
            3 * 1.482602218505602 * 1.206,
            Scale.MedianAbsoluteDeviation(values, Consistency.NormalSmallSample),
            1e-15
        );
    }

    [Fact]
    public void MedianAbsoluteDeviation_MoreThanHalfEqual_IsZero() =>
        Assert.Equal(0, Scale.MedianAbsoluteDeviation([5, 5, 5, 9, -400]));

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MedianAbsoluteDeviation_AnyValues_IsTheDefinition(Dyadic data)
    {
        double median = Location.Median(data.Values);

        Assert.Equal(
            Location.Median(data.Map(value => Math.Abs(value - median))),
            Scale.MedianAbsoluteDeviation(data.Values, Consistency.None)
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void EveryScale_ShiftedScaledAndPermuted_FollowsTheData(Dyadic data, int seed)
    {
        double[] moved = [.. data.Shuffled(seed).Select(value => -8 * (value - 512))];

        Assert.Equal(8 * Scale.MedianAbsoluteDeviation(data.Values), Scale.MedianAbsoluteDeviation(moved));
        if (data.Values.Length > 1)
        {
            Agree.Relative(8 * Scale.StandardDeviation(data.Values), Scale.StandardDeviation(moved), 1e-13);
            Agree.Relative(64 * Scale.Variance(data.Values), Scale.Variance(moved), 1e-13);
        }
    }
}
