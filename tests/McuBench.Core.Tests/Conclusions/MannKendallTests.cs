using FsCheck.Xunit;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Expected values from R's cor.test (tests/reference/scripts/mann_kendall.R).</summary>
public class MannKendallTests
{
    [Fact]
    public void Of_EightValuesWithoutTies_IsExact()
    {
        var test = MannKendall.Of([2.41, 2.43, 2.40, 2.44, 2.46, 2.45, 2.47, 2.42]);

        Assert.Equal(12, test.S);
        Assert.True(test.IsExact);
        Assert.Equal(0.178869047619048, test.PValue, 1e-14);
    }

    [Fact]
    public void Of_TwentyValuesWithoutTies_IsExact()
    {
        var test = MannKendall.Of([5, 3, 8, 1, 9, 12, 7, 15, 11, 2, 14, 17, 6, 19, 10, 20, 13, 16, 4, 18]);

        Assert.Equal(76, test.S);
        Assert.Equal(0.0135323737069015, test.PValue, 1e-14);
    }

    [Fact]
    public void Of_Ties_UsesTheNormalDistributionWithCorrections()
    {
        var test = MannKendall.Of([2.4, 2.4, 2.5, 2.4, 2.5, 2.5, 2.6, 2.5, 2.6, 2.6]);

        Assert.Equal(29, test.S);
        Assert.False(test.IsExact);
        Assert.Equal(0.00732023633574467, test.PValue, 1e-13);
    }

    [Fact]
    public void Of_FiveRisingValues_HasTwiceOneOrderInAHundredAndTwenty() =>
        Assert.Equal(2.0 / 120, MannKendall.Of([1, 2, 3, 4, 5]).PValue, 1e-16);

    [Fact]
    public void Of_EqualValues_ShowsNothing()
    {
        var test = MannKendall.Of([7, 7, 7, 7]);

        Assert.Equal(0, test.S);
        Assert.Equal(1, test.PValue);
    }

    [Property]
    public void Of_S_IsTheCountOverAllPairs(sbyte[] values)
    {
        double[] numbers = [.. values.Select(v => (double)v)];
        long expected = 0;
        for (var i = 0; i < numbers.Length; i++)
        {
            for (var j = i + 1; j < numbers.Length; j++)
            {
                expected += Math.Sign(numbers[j] - numbers[i]);
            }
        }

        Assert.Equal(expected, MannKendall.Of(numbers).S);
    }

    [Property]
    public void Of_ReversedOrder_ReversesSAndKeepsP(sbyte[] values)
    {
        double[] numbers = [.. values.Select(v => (double)v)];
        var test = MannKendall.Of(numbers);
        var reversed = MannKendall.Of([.. numbers.Reverse()]);

        Assert.Equal(-test.S, reversed.S);
        Assert.Equal(test.PValue, reversed.PValue, 1e-12);
    }
}
