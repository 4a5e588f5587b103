using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class HodgesLehmannTests
{
    [Property(Arbitrary = [typeof(Dyadic)])]
    public void LocationAndShift_AnyValues_IsTheMedianOfAllPairs(Dyadic a, Dyadic b)
    {
        double[] walsh = [.. a.Values.SelectMany((x, i) => a.Values.Skip(i).Select(y => (x + y) / 2))];
        double[] differences = [.. a.Values.SelectMany(x => b.Values.Select(y => x - y))];

        Assert.Equal(Location.Median(walsh), HodgesLehmann.Location(a.Values));
        Assert.Equal(Location.Median(walsh), HodgesLehmann.Location(Sample.Of(a.Values)));
        Assert.Equal(Location.Median(differences), HodgesLehmann.Shift(Sample.Of(a.Values), Sample.Of(b.Values)));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Shift_Swapped_TurnsTheSign(Dyadic a, Dyadic b) =>
        Assert.Equal(
            -HodgesLehmann.Shift(Sample.Of(a.Values), Sample.Of(b.Values)),
            HodgesLehmann.Shift(Sample.Of(b.Values), Sample.Of(a.Values))
        );

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void Location_DataSets_AgreesWithRAndNumPy(string set) =>
        RobustReference.AgreeWithBoth(set, "hodges_lehmann", HodgesLehmann.Location(Datasets.Values(set)), 1e-15);

    [Theory]
    [InlineData("ties", "outliers")]
    [InlineData("triple", "pair")]
    [InlineData("skewed", "odd")]
    [InlineData("odd", "outliers")]
    public void Shift_DataSets_AgreesWithR(string first, string second) =>
        Agree.Relative(
            ReferenceCase.Of("robust-r", "shifts").Number($"{first}/{second}"),
            HodgesLehmann.Shift(Sample.Of(Datasets.Values(first)), Sample.Of(Datasets.Values(second))),
            1e-15
        );

    [Fact]
    public void Location_PassageTimes_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-newcomb");

        Assert.Equal(
            reference.Number("expected", "hodges_lehmann"),
            HodgesLehmann.Location(reference.Numbers("input", "y"))
        );
    }

    [Fact]
    public void Location_NearOverflow_IsRight() =>
        Agree.Relative(1.65e308, HodgesLehmann.Location([1.6e308, 1.7e308]), 1e-15);

    [Fact]
    public void Shift_AboveTheGreatestNumber_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HodgesLehmann.Shift(Sample.Of(1.7e308), Sample.Of(-1.7e308)));
}
