using McuBench.Core.Conclusions;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Expected tails from mpmath at 30 digits (tests/reference/scripts/f_tails.py).</summary>
public class FTailTests
{
    [Theory]
    [InlineData(4.1, 1, 7.5, 0.079836159628684498)]
    [InlineData(0.3, 2, 4, 0.75614366729678639)]
    [InlineData(2.5, 2, 33.3, 0.09737263022396435)]
    [InlineData(3.3, 3, 12, 0.057692640822611486)]
    [InlineData(9.7, 3, 2, 0.094895133592407251)]
    [InlineData(1.7, 4, 50, 0.16475417551843303)]
    [InlineData(6.2, 5, 8.25, 0.011378066403623893)]
    [InlineData(12.5, 6, 30, 5.0342850554179819e-7)]
    [InlineData(2.1, 1, double.PositiveInfinity, 0.14729913862267606)]
    [InlineData(2.1, 2, double.PositiveInfinity, 0.12245642825298191)]
    [InlineData(3.9, 3, double.PositiveInfinity, 0.008484778864305092)]
    [InlineData(5.5, 6, double.PositiveInfinity, 1.0485833186894444e-5)]
    public void Upper_AgreesWithMpmath(double ratio, int numerator, double denominator, double expected) =>
        Assert.Equal(expected, FTail.Upper(ratio, numerator, denominator), expected * 1e-12);

    /// <summary>The 5 % points of the F table (nist-handbook, 1.3.6.7.3), printed to three decimals.</summary>
    [Theory]
    [InlineData(4.965, 1, 10)]
    [InlineData(4.103, 2, 10)]
    [InlineData(3.708, 3, 10)]
    [InlineData(2.711, 5, 20)]
    public void Upper_AtTheTablesPoints_IsFivePercent(double ratio, int numerator, double denominator) =>
        Assert.Equal(0.05, FTail.Upper(ratio, numerator, denominator), 2e-5);

    [Fact]
    public void Upper_OfNothing_IsOne()
    {
        Assert.Equal(1, FTail.Upper(0, 1, 5));
        Assert.Equal(1, FTail.Upper(0, 4, 5));
    }
}
