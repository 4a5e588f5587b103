using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class RanksTests
{
    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void Of_DataSets_AgreesWithRAndSciPy(string set)
    {
        double[] values = Datasets.Values(set);
        foreach (ReferenceCase reference in new[] { RobustReference.R(set), RobustReference.SciPy(set) })
        {
            Assert.Equal(reference.Numbers("ranks"), Ranks.Of(values));
            Assert.Equal(reference.Numbers("ranks_min"), Ranks.Of(values, TieRule.Minimum));
            Assert.Equal(reference.Numbers("ranks_max"), Ranks.Of(values, TieRule.Maximum));
            Assert.Equal(reference.Numbers("ranks_first"), Ranks.Of(values, TieRule.InOrder));
        }

        Assert.Equal(RobustReference.SciPy(set).Numbers("ranks_dense"), Ranks.Of(values, TieRule.Dense));
    }

    [Fact]
    public void Of_BothZeros_AreEqual() => Assert.Equal([1.5, 1.5, 3], Ranks.Of([0.0, -0.0, 1]));

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_AnyValues_SumsToThatOfTheWholeNumbers(Dyadic data)
    {
        double n = data.Values.Length;

        Assert.Equal(n * (n + 1) / 2, Ranks.Of(data.Values).Sum(), 1e-9);
        Assert.Equal(n * (n + 1) / 2, Ranks.Of(data.Values, TieRule.InOrder).Sum());
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Fill_AnyValues_ReturnsTheTieTerm(Dyadic data)
    {
        double expected = data.Values.GroupBy(value => value).Sum(group => Math.Pow(group.Count(), 3) - group.Count());

        Assert.Equal(expected, Ranks.Fill(data.Values, new double[data.Values.Length]));
    }

    [Fact]
    public void Of_UnknownRule_IsRefused() =>
        Assert.Equal("ties", Assert.Throws<ArgumentOutOfRangeException>(() => Ranks.Of([1], (TieRule)9)).ParamName);
}
