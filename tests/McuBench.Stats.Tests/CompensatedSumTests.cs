namespace McuBench.Stats.Tests;

public sealed class CompensatedSumTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(1001)]
    public void Of_TermsThatCancel_IsTheExactRest(int count)
    {
        double[] terms = [.. Enumerable.Range(1, count).SelectMany(i => new[] { i * 1e15, i, -i * 1e15 })];

        Assert.Equal(count * (count + 1.0) / 2, CompensatedSum.Of(terms));
    }

    [Fact]
    public void Of_TenMillionTenths_IsRightToTheLastDigit()
    {
        double[] terms = new double[10_000_000];
        terms.AsSpan().Fill(0.1);

        // 0.1 in binary64 is above a tenth by 5.55e-18, which ten million of them bring to 5.55e-11 of a million.
        Agree.Relative(1e6 * (1 + 5.55e-17), CompensatedSum.Of(terms), 1.2e-16);
    }
}
