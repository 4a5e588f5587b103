using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class RelativeSpreadTests
{
    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void EachForm_DataSets_AgreesWithSciPy(string set)
    {
        double[] values = Datasets.Values(set);
        ReferenceCase scipy = RobustReference.SciPy(set);

        Agree.Relative(scipy.Number("variation"), RelativeSpread.CoefficientOfVariation(values), 1e-14);
        Agree.Relative(
            scipy.Number("mad") / scipy.Number("median"),
            RelativeSpread.FromMedianAbsoluteDeviation(values),
            1e-14
        );
        Agree.Relative(
            scipy.Number("iqr") / 1.3489795003921634 / scipy.Number("median"),
            RelativeSpread.FromInterquartileRange(values),
            1e-14
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void EachForm_InAnotherUnit_StaysTheSame(Dyadic data)
    {
        double[] values = [.. data.Values.Append(1).Select(value => value + 51)];
        double[] scaled = [.. values.Select(value => 1000 * value)];

        Assert.Equal(
            RelativeSpread.CoefficientOfVariation(values),
            RelativeSpread.CoefficientOfVariation(scaled),
            1e-13
        );
        Assert.Equal(
            RelativeSpread.FromMedianAbsoluteDeviation(values),
            RelativeSpread.FromMedianAbsoluteDeviation(scaled),
            1e-13
        );
        Assert.Equal(
            RelativeSpread.FromInterquartileRange(values),
            RelativeSpread.FromInterquartileRange(scaled),
            1e-13
        );
    }

    [Fact]
    public void EachForm_LocationNotAboveZero_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => RelativeSpread.CoefficientOfVariation([-1, 1]));

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith(
            "Mean of the values must be a finite number above 0; was 0.",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Median of the values must be ",
            Assert.Throws<ArgumentOutOfRangeException>(() => RelativeSpread.FromMedianAbsoluteDeviation([-2])).Message,
            StringComparison.Ordinal
        );
    }
}
