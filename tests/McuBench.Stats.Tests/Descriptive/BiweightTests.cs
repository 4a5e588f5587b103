using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class BiweightTests
{
    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void LocationAndMidvariance_DataSets_AgreeWithRAndNumPy(string set)
    {
        double[] values = Datasets.Values(set);
        double[] actual = [Biweight.Location(values), Biweight.Midvariance(values)];

        Agree.Relative(RobustReference.R(set).Numbers("biweight"), actual, 1e-13);
        Agree.Relative(RobustReference.SciPy(set).Numbers("biweight"), actual, 1e-13);
    }

    [Fact]
    public void LocationAndMidvariance_MostValuesEqual_AreTheMedianAndZero()
    {
        Assert.Equal(5, Biweight.Location([5, 5, 5, 9, -40]));
        Assert.Equal(0, Biweight.Midvariance([5, 5, 5, 9, -40]));
    }

    [Fact]
    public void LocationAndMidvariance_WildValue_IsLeftOut()
    {
        double[] values = [1, 2, 3, 4, 5, 6];

        // Each value beyond 6 or 9 deviations has no weight, so it does not matter how wild it is.
        Assert.Equal(Biweight.Location([.. values, 1e3]), Biweight.Location([.. values, 1e6]));
        Assert.Equal(Biweight.Midvariance([.. values, 1e3]), Biweight.Midvariance([.. values, 1e6]));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void LocationAndMidvariance_ShiftedScaledAndPermuted_FollowTheData(Dyadic data, int seed)
    {
        double[] moved = [.. data.Shuffled(seed).Select(value => -2 * (value + 32))];

        Assert.Equal(-2 * (Biweight.Location(data.Values) + 32), Biweight.Location(moved), 1e-11);
        Assert.Equal(4 * Biweight.Midvariance(data.Values), Biweight.Midvariance(moved), 1e-9);
    }

    [Fact]
    public void LocationAndMidvariance_TuningOutOfRange_AreRefused()
    {
        Assert.Equal("tuning", Assert.Throws<ArgumentOutOfRangeException>(() => Biweight.Location([1], 0)).ParamName);
        Assert.StartsWith(
            "Tuning must be a finite number of 6 or more; was 5.",
            Assert.Throws<ArgumentOutOfRangeException>(() => Biweight.Midvariance([1], 5)).Message,
            StringComparison.Ordinal
        );
    }
}
