using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class ShapeTests
{
    // Deviations of the offset data have nine digits in R and SciPy, whose mean is rounded to a double.
    internal static double Tolerance(string set) => set is "offset" ? 1e-8 : 1e-12;

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void SkewnessAndKurtosis_AsTheyAre_AgreeWithRAndSciPy(string set)
    {
        double[] values = Datasets.Values(set);
        foreach (ReferenceCase reference in new[] { RobustReference.R(set), RobustReference.SciPy(set) })
        {
            Assert.Equal(reference.Number("skewness"), Shape.Skewness(values, Bias.Kept), Tolerance(set));
            Assert.Equal(reference.Number("kurtosis"), Shape.ExcessKurtosis(values, Bias.Kept), Tolerance(set));
        }
    }

    [Theory]
    [InlineData("ties")]
    [InlineData("offset")]
    [InlineData("skewed")]
    [InlineData("outliers")]
    [InlineData("odd")]
    public void SkewnessAndKurtosis_Adjusted_AgreeWithSciPy(string set)
    {
        double[] values = Datasets.Values(set);
        ReferenceCase scipy = RobustReference.SciPy(set);

        Assert.Equal(scipy.Number("skewness_adjusted"), Shape.Skewness(values), Tolerance(set));
        Assert.Equal(scipy.Number("kurtosis_adjusted"), Shape.ExcessKurtosis(values), Tolerance(set));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void SkewnessAndKurtosis_MirroredShiftedAndScaled_TurnOnlyTheSign(Dyadic data)
    {
        double[] values = [.. data.Values, 0, 1, 2, 4];
        double[] moved = [.. values.Select(value => -4 * (value + 8))];

        Assert.Equal(-Shape.Skewness(values), Shape.Skewness(moved), 1e-10);
        Assert.Equal(Shape.ExcessKurtosis(values), Shape.ExcessKurtosis(moved), 1e-10);
    }

    [Theory]
    [InlineData(1e200)]
    [InlineData(1e-200)]
    public void SkewnessAndKurtosis_PowersOutOfRange_AreRight(double unit)
    {
        double[] values = [1, 2, 4, 8];
        double[] scaled = [.. values.Select(value => value * unit)];

        Assert.Equal(Shape.Skewness(values), Shape.Skewness(scaled), 1e-13);
        Assert.Equal(Shape.ExcessKurtosis(values), Shape.ExcessKurtosis(scaled), 1e-13);
    }

    [Fact]
    public void SkewnessAndKurtosis_TooFewOrEqualValues_AreRefused()
    {
        Assert.StartsWith(
            "Count of values must be at least 3; was 2.",
            Assert.Throws<ArgumentException>(() => Shape.Skewness([1, 2])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Count of values must be at least 4; was 3.",
            Assert.Throws<ArgumentException>(() => Shape.ExcessKurtosis([1, 2, 3])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Values must differ for a measure of shape; all 4 were 7.",
            Assert.Throws<ArgumentException>(() => Shape.Skewness([7, 7, 7, 7])).Message,
            StringComparison.Ordinal
        );
    }
}
