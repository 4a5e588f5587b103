namespace McuBench.Stats.Tests;

public sealed class SampleTests
{
    [Fact]
    public void Of_Values_KeepsOrderAndSortsApart()
    {
        var sample = Sample.Of(3, 1, 2);

        Assert.Equal(3, sample.Count);
        Assert.Equal([3, 1, 2], sample.Values);
        Assert.Equal([1, 2, 3], sample.Sorted);
    }

    [Fact]
    public void Of_Array_IsCopied()
    {
        double[] values = [3, 1];
        var sample = Sample.Of(values);
        values[0] = 99;

        Assert.Equal([3, 1], sample.Values);
    }

    [Fact]
    public void Of_NoValue_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Sample.Of());

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 1; was 0.", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN, "NaN")]
    [InlineData(double.PositiveInfinity, "Infinity")]
    [InlineData(double.NegativeInfinity, "-Infinity")]
    public void Of_ValueNotFinite_IsRefusedWithItsIndex(double value, string word)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Sample.Of(1, 2, value));

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith(
            $"Value at index 2 must be a finite number; was {word}.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }
}
